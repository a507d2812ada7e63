#pragma once

#include "core/plan/whynot.h"

namespace mend::plan {

/// Whether it is proven, within a moment, that a problem has no plan.
bool hasNoPlan(const Problem& problem, const Enough& enough);
/// A plan found within a moment.
std::optional<Timetable> planFor(const Problem& problem, const Enough& enough);

/// Changes to a bench without a plan that give it one, each tried: first what costs nobody
/// anything but help (a place, a hand, an hour), then a piece left for another time, then a
/// window missed by as few minutes as can be.
std::vector<WayOut> waysOut(const Problem& problem, const std::vector<Conflict>& conflicts, const Enough& enough);

} // namespace mend::plan
