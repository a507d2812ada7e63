#include "core/base/civil.h"

#include "core/base/time.h"

namespace mend {

using namespace std::chrono;

std::string dayText(CivilDay day)
{
    constexpr std::size_t dateLength = 10;
    return toRfc3339(Instant(sys_days(day))).substr(0, dateLength);
}

std::optional<CivilDay> dayFrom(std::string_view text)
{
    const auto midnight = fromRfc3339(std::string(text) + "T00:00:00.000Z");
    return midnight ? std::optional(CivilDay(floor<days>(*midnight))) : std::nullopt;
}

CivilDay plusDays(CivilDay day, int count) { return {sys_days(day) + days(count)}; }

CivilDay plusMonths(CivilDay day, int count)
{
    const CivilDay later = day + months(count);
    return later.ok() ? later : CivilDay(later.year() / later.month() / last);
}

int daysBetween(CivilDay from, CivilDay to) { return static_cast<int>((sys_days(to) - sys_days(from)).count()); }

IsoWeek isoWeekOf(CivilDay day)
{
    const sys_days at(day);
    const sys_days thursday = at - (weekday(at) - Monday) + days(3);
    const CivilDay middle(thursday);
    const auto sinceNewYear = thursday - sys_days(middle.year() / January / 1);
    return {static_cast<int>(middle.year()), static_cast<int>(sinceNewYear.count() / 7) + 1};
}

} // namespace mend
