#pragma once

#include "core/plan/timetable.h"

#include <string>
#include <vector>

namespace mend::test {

/// Judges a plan by itself, minute by minute and with nothing of core/plan's own arithmetic: the
/// second opinion that every plan in these tests must pass. One line for each thing that is wrong,
/// its code first, in the words of the plan format.
std::vector<std::string> judge(const plan::Problem& problem, const plan::Timetable& table);

/// Weighted tardiness and flow, added up piece by piece.
plan::Score judgedScore(const plan::Problem& problem, const plan::Timetable& table);

} // namespace mend::test
