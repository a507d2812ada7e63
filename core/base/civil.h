#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace mend {

/// A day of the calendar, without a time or a zone: what is promised is a day.
using CivilDay = std::chrono::year_month_day;

/// "2027-02-28"
std::string dayText(CivilDay day);

/// Reads what `dayText` writes and nothing looser: a day that exists, years 1900 to 2200. Empty otherwise.
std::optional<CivilDay> dayFrom(std::string_view text);

CivilDay plusDays(CivilDay day, int count);

/// The same day so many months later; where that month is shorter, its last day: 31 January and a month is
/// 28 February, or 29 in a leap year.
CivilDay plusMonths(CivilDay day, int count);

/// From one to the other, negative where `to` is before `from`.
int daysBetween(CivilDay from, CivilDay to);

/// The week of ISO 8601: Monday first, the first week is the one with the year's first Thursday.
struct IsoWeek {
    int year = 0;
    int week = 0; ///< 1 to 53
    bool operator==(const IsoWeek&) const = default;
};
IsoWeek isoWeekOf(CivilDay day);

} // namespace mend
