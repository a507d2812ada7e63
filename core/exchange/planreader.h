#pragma once

#include "core/exchange/placedjson.h"
#include "core/plan/timetable.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mend::exchange {

/// A bench plan problem (bench-plan/1) read from JSON, or everything that is wrong with it:
/// syntax, unknown, missing and doubled keys, wrong kinds, and what makes no sense together (a
/// lag to a step that is not there). Each fault has its place in the text and is told once. A
/// whole problem is checked well enough for core/plan to take it. Figures beyond
/// +-plan::farthest minutes, and weights or amounts beyond 1,000,000, are refused.
struct ReadProblem {
    std::optional<plan::Problem> problem; ///< set if and only if there are no faults
    std::vector<JsonFault> faults;        ///< in the order of the text
};
ReadProblem readPlanProblem(std::string_view text);

/// The problem as JSON text; reading it again gives the same problem.
std::string planProblemText(const plan::Problem& problem);

/// A plan as JSON text (bench-plan-solution/1). `status` says what is known of it.
std::string planSolutionText(const plan::Problem& problem, const plan::Timetable& table, const std::string& status);

} // namespace mend::exchange
