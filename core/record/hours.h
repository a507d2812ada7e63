#pragma once

#include "core/base/time.h"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mend::record {

/// A part of a local day, in minutes since its midnight: 0 to 1440.
using DayPart = Range<std::chrono::minutes>;

/// When somebody is at the bench, as people say it: the same every week, but for some dates.
/// Local wall time; service turns it into UTC.
struct Hours {
    std::array<std::vector<DayPart>, 7> week;                               ///< Monday first; no part: not there
    std::map<std::chrono::year_month_day, std::vector<DayPart>> exceptions; ///< stands for the whole date
    bool operator==(const Hours&) const = default;

    /// Whether anything was told at all; nothing told is not the same as never there.
    bool isTold() const;
    const std::vector<DayPart>& on(std::chrono::year_month_day day) const;
};

/// One line a weekday or date: "mon 09:00-12:30 13:00-17:30", "2026-12-24 closed".
std::string hoursText(const Hours& hours);

/// Reads what `hoursText` writes, in any order of lines. Empty where a line makes no sense,
/// comes twice, or its parts overlap or do not rise.
std::optional<Hours> hoursFromText(std::string_view text);

} // namespace mend::record
