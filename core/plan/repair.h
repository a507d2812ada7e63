#pragma once

#include "core/plan/planner.h"

#include <optional>
#include <vector>

namespace mend::plan {

/// How much of a plan is another one: the order of hands first, then minutes.
struct PlanChange {
    int swapped = 0;            ///< pairs of steps with hands that now come the other way round
    std::vector<int> moved;     ///< steps whose start is another by `noticed` minutes or more
    Minute shifted = 0;         ///< sum of all shifts, each counted up to an hour
    std::vector<int> newlyLate; ///< pieces that kept their promise before and no longer do
    static constexpr Minute noticed = 5;
};

/// What became of a plan after something happened.
struct Repaired {
    std::optional<Timetable> table; ///< empty: no plan was found within the effort
    bool noPlan = false;            ///< proven that there is none; ask plan::whyNot
    Score score;
    PlanChange change;
};

/// Brings a plan up to date with a bench on which one thing has changed: something began or ran
/// late, a piece came in, a person went. Changes as little as it must. First every step is kept
/// where it stood and moved later only where it has to be; if a window would close so, the same
/// order of blocks is laid out anew, what found no place sooner; last the whole bench is solved,
/// guided by the old order. What is running never moves. `before` has a start for each step of `problem`, empty where
/// it is new.
Repaired repair(const Problem& problem, const std::vector<std::optional<Minute>>& before, const Effort& effort);

PlanChange changeBetween(const Problem& problem, const std::vector<std::optional<Minute>>& before,
                         const std::vector<Minute>& after);

} // namespace mend::plan
