#pragma once

#include "core/bench/benchproblem.h"
#include "core/bench/plannedhands.h"
#include "core/plan/timetable.h"

#include <vector>

namespace mend::bench {

/// What a plan asks of the hands on pieces, in the order of time. Stages that are done are left out.
std::vector<PlannedHands> plannedHands(const BenchProblem& made, const plan::Timetable& table);

} // namespace mend::bench
