#pragma once

#include "core/plan/problem.h"

#include <string>
#include <vector>

namespace mend::plan {

/// One thing that a plan must keep and that could be let go, in a mender's terms: a window, a
/// wait, the hands there are, a place, two things that never meet, the hours.
struct Strain {
    enum class Kind {
        Window,    ///< the most of a lag: "wipe at most 12 min after filling"
        Minimum,   ///< the least of a lag: "unmask not before 30 min"; the order stays
        Hands,     ///< only so many people
        Place,     ///< only so many slots
        Apart,     ///< two tags that never overlap
        Hours,     ///< the bench is shut between two openings, before the first or after the last
        Earliest,  ///< a step must not start before
        LatestEnd, ///< a step must have ended by
        Horizon,   ///< all must be done by the end of what is planned
        Order,     ///< one step must come before another at all
    };
    Kind kind = Kind::Window;
    /// The lag, resource, pair or step; of Hours the opening before which it is shut (as many as
    /// there are openings: after the last).
    int which = 0;
    bool operator==(const Strain&) const = default;
};

/// Everything in a problem that could be let go, what a mender would rather hear of last.
std::vector<Strain> strainsOf(const Problem& problem);

/// The problem with that one thing let go: no upper limit, the shortest wait that keeps the order,
/// one person or slot more, the bench open.
Problem relaxed(const Problem& problem, const Strain& strain);

/// The problem with only these pieces. Hands and places that others hold now are free, so no plan
/// for it means no plan for all, but not the other way round.
Problem onlyPieces(const Problem& problem, const std::vector<bool>& kept);

/// The pieces a strain speaks of; none for hands, places and hours.
std::vector<int> piecesOf(const Problem& problem, const Strain& strain);

} // namespace mend::plan
