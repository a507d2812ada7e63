#pragma once

#include "core/bench/benchproblem.h"
#include "core/plan/timetable.h"

#include <vector>

namespace mend::bench {

/// Somebody's hands on one stage, as planned.
struct PlannedHands {
    PieceId piece;
    StageInstance stage;
    Instant from;
    Instant to;
    PersonId person;                ///< unset where nobody was told
    bool running = false;           ///< begun already
    std::optional<Instant> startBy; ///< the latest start of its window, if the rest goes as planned; empty: none closes
    bool operator==(const PlannedHands&) const = default;
};

/// What a plan asks of the hands on pieces, in the order of time. Stages that are done are left out.
std::vector<PlannedHands> plannedHands(const BenchProblem& made, const plan::Timetable& table);

} // namespace mend::bench
