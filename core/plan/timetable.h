#pragma once

#include "core/plan/problem.h"

#include <compare>
#include <optional>
#include <vector>

namespace mend::plan {

/// When each step starts and who does it, in the order of Problem::steps.
struct Timetable {
    std::vector<Minute> start;
    std::vector<std::optional<int>> person; ///< index into Problem::people; none for a step without hands
    bool operator==(const Timetable&) const = default;
};

/// How good a timetable is: promises first, then how long pieces lie about. Smaller is better.
struct Score {
    std::int64_t tardiness = 0; ///< sum over pieces of weight x minutes late
    std::int64_t flow = 0;      ///< sum over pieces of minutes from now until it is done
    auto operator<=>(const Score&) const = default;
};

/// The minute the last step of each piece ends.
std::vector<Minute> completions(const Problem& problem, const std::vector<Minute>& start);

Score scoreOf(const Problem& problem, const std::vector<Minute>& start);

/// Gives each step with hands to the first person who is free. Possible whenever never more
/// hands are needed than there are people (colouring of an interval graph); empty otherwise.
std::optional<Timetable> staffed(const Problem& problem, std::vector<Minute> start);

} // namespace mend::plan
