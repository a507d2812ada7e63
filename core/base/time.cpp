#include "core/base/time.h"

#include <algorithm>
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

namespace {

constexpr std::string_view rfc3339Shape = "dddd-dd-ddTdd:dd:dd.dddZ";
constexpr int firstYear = 1900;
constexpr int lastYear = 2200;

bool hasRfc3339Shape(std::string_view text)
{
    const auto fits = [](char shape, char read) { return shape == 'd' ? read >= '0' && read <= '9' : shape == read; };
    return text.size() == rfc3339Shape.size() && std::ranges::equal(rfc3339Shape, text, fits);
}

int digitsAt(std::string_view text, std::size_t at, std::size_t count)
{
    int value = 0;
    for (const char digit : text.substr(at, count)) {
        value = value * 10 + (digit - '0');
    }
    return value;
}

} // namespace

std::optional<Instant> fromRfc3339(std::string_view text)
{
    using namespace std::chrono;
    if (!hasRfc3339Shape(text)) {
        return std::nullopt;
    }
    const year_month_day date(year(digitsAt(text, 0, 4)), month(static_cast<unsigned>(digitsAt(text, 5, 2))),
                              day(static_cast<unsigned>(digitsAt(text, 8, 2))));
    const hours hour(digitsAt(text, 11, 2));
    const minutes minute(digitsAt(text, 14, 2));
    const seconds second(digitsAt(text, 17, 2));
    const milliseconds fraction(digitsAt(text, 20, 3));
    const bool dayExists = date.ok() && date.year() >= year(firstYear) && date.year() <= year(lastYear);
    if (!dayExists || hour > hours(23) || minute > minutes(59) || second > seconds(60)) {
        return std::nullopt;
    }
    const milliseconds withinMinute = second == seconds(60) ? milliseconds(59'999) : second + fraction;
    return Instant(sys_days(date)) + hour + minute + withinMinute;
}

} // namespace mend
