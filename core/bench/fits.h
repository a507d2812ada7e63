#pragma once

#include "core/bench/benchproblem.h"
#include "core/plan/exact.h"
#include "core/plan/maystart.h"

#include <optional>
#include <vector>

namespace mend::bench {

/// Whether a stage that could be next may be begun now, with everything else on the bench still done in time.
struct Fit {
    enum class May {
        Yes,    ///< there is a whole plan of the bench in which it is
        No,     ///< proven: there is none
        Unsure, ///< none was found in the moment there was
    };
    PieceId piece;
    StageInstance stage;
    May may = May::Unsure;
    PlanStep clash;                   ///< not yes: whose open window stands in the way; unset piece: none by itself
    std::optional<Instant> closes;    ///< when the hands have to be off there
    std::optional<Instant> notBefore; ///< it may not begin at this minute at all (shut, too early, taken): from when
    std::optional<Instant> until;     ///< yes, asked thoroughly, and not for hours to come: the last minute of the yes
    bool operator==(const Fit&) const = default;
};

/// One answer for each stage that could be next on any piece: quickly enough to be asked before a tap, or thoroughly,
/// which turns more of what is unsure into no and tells how long a yes holds. `current` is a plan of this problem, or
/// one from a little earlier with the same steps. `enough` ends it early; what was not asked by then is left out.
std::vector<Fit> fitsOf(const BenchProblem& made, const plan::Timetable& current,
                        plan::MayStart::Depth depth = plan::MayStart::Depth::Quick, const plan::Enough& enough = {});

} // namespace mend::bench
