#pragma once

#include "core/bench/benchproblem.h"

namespace mend::bench {

/// When there are hands: everybody's hours put together, and what takes somebody out of them.
struct Staffing {
    std::vector<PersonId> people;      ///< unset where nobody was told
    std::vector<InstantRange> open;    ///< somebody is there; oldest first, not touching
    std::vector<Booking> taken;        ///< one pair of hands less, each within one stretch of `open`
    std::optional<Span> shortestPause; ///< the shortest stretch between two of `open`; empty: never shut
    bool operator==(const Staffing&) const = default;
};

/// Nobody has told hours: there may be hands at any time.
Staffing staffingOf(const Roster& roster, const PlanFacts& facts, InstantRange within);

} // namespace mend::bench
