#pragma once

#include "core/base/civil.h"
#include "core/base/time.h"

#include <iosfwd>
#include <span>
#include <string>

namespace mend::exchange {

/// One day that stands in a calendar: a promise, or from when a piece may be collected.
struct CalendarDay {
    std::string key; ///< what it is, the same whenever it is written again: "2604175-promised"
    CivilDay day;
    std::string words; ///< what the calendar shows; a piece number, never a person's name
    bool operator==(const CalendarDay&) const = default;
};

/// Writes a calendar file (RFC 5545) of whole days. The UID of an entry is its key, so that a calendar that reads
/// the file again moves the entry instead of doubling it. `written`: the moment of writing.
///
/// Own writing, no library: only whole days are written and nothing is read, which takes no more than folding lines
/// and escaping four signs; a library for all of the standard would bring time zones and recurrences that a
/// whole day has not.
void writeCalendar(std::ostream& out, std::span<const CalendarDay> days, Instant written);

} // namespace mend::exchange
