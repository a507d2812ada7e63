#pragma once

#include "core/record/hours.h"

#include <QTimeZone>

#include <vector>

namespace mend::service {

/// When a clock on the wall of that zone shows so many minutes after the midnight of `day`. An hour
/// that comes twice is taken the first time for `first`, else the second; a time that is jumped over
/// is the instant of the jump.
enum class Twice { First, Second };
Instant wallTime(std::chrono::year_month_day day, std::chrono::minutes sinceMidnight, const QTimeZone& zone,
                 Twice twice);

/// The local date of an instant.
std::chrono::year_month_day localDay(Instant at, const QTimeZone& zone);

/// The hours that people keep by the clock on the wall, as UTC, for every local day that `from` to
/// `until` touches; oldest first, parts that adjoin made one (so a bench that is open over midnight is).
/// Days of 23 and 25 hours come out as long as they are.
std::vector<InstantRange> openHours(const record::Hours& hours, const QTimeZone& zone, Instant from, Instant until);

} // namespace mend::service
