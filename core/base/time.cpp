#include "core/base/time.h"

#include <array>
#include <cstdio>

namespace mend {

std::string toRfc3339(Instant instant)
{
    using namespace std::chrono;
    const auto day = floor<days>(instant);
    const year_month_day date(day);
    const hh_mm_ss<milliseconds> time(instant - day);
    std::array<char, 40> text{};
    std::snprintf(text.data(), text.size(), "%04d-%02u-%02uT%02d:%02d:%02d.%03dZ", static_cast<int>(date.year()),
                  static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                  static_cast<int>(time.hours().count()), static_cast<int>(time.minutes().count()),
                  static_cast<int>(time.seconds().count()), static_cast<int>(time.subseconds().count()));
    return text.data();
}

} // namespace mend
