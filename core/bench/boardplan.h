#pragma once

#include "core/bench/card.h"
#include "core/bench/standingplan.h"

namespace mend::bench {

/// Says on the board what the plan knows: on each card whether the start that it speaks of fits, for everybody when
/// which hands are wanted, and how long these hands are free. Only a whole plan says anything.
void layPlan(Board& board, const StandingPlan& plan);

} // namespace mend::bench
