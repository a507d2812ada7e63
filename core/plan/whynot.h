#pragma once

#include "core/plan/planner.h"
#include "core/plan/strain.h"

#include <vector>

namespace mend::plan {

/// Some things that cannot hold together, and none of them without need: let any one go, and
/// these no longer stand in the way.
struct Conflict {
    std::vector<Strain> strains;
    std::vector<int> pieces; ///< whose steps meet in it
    /// For each strain a plan of the whole bench with only that one let go; none where something
    /// else stands in the way as well.
    std::vector<std::optional<Timetable>> without;
    bool eachIsEnough() const;
};

/// A change that makes a plan possible, tried out.
struct WayOut {
    enum class Kind {
        AnotherPlace, ///< one slot more of a resource
        HelpingHand,  ///< one person more
        StayOpen,     ///< close an opening later, or open it sooner
        SetAside,     ///< leave a piece that has no window open for another time
        LetLapse,     ///< a window is missed by `minutes`
    };
    Kind kind = Kind::HelpingHand;
    int which = 0;       ///< resource, opening, piece or lag
    Minute minutes = 0;  ///< how many: of help, of staying open, of being late for the window
    Minute at = 0;       ///< from when, of HelpingHand; until when (or from when), of StayOpen
    bool sooner = false; ///< StayOpen: opened sooner rather than closed later
    Problem changed;     ///< the bench with the change made
    Timetable plan;      ///< and a plan for it
};

struct WhyNot {
    std::vector<Conflict> conflicts; ///< the first is the one to tell; more where it is not all
    std::vector<WayOut> waysOut;     ///< least harm first
};

/// Why a bench has no plan and what would help. Whole pieces are left out first, then one
/// thing after the other is let go for as long as there is still no plan (a deletion filter;
/// halves before single ones, after Junker's QuickXplain, AAAI 2004, from memory). What is left
/// is minimal. `problem` must be one that planBench proved to have no plan. Rules of safety,
/// what must be kept apart, and waits are told but never offered as a way out.
WhyNot whyNot(const Problem& problem, const Enough& enough = {});

} // namespace mend::plan
