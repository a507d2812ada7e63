#pragma once

#include "core/bench/benchproblem.h"
#include "core/plan/timetable.h"

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
    bool operator==(const Fit&) const = default;
};

/// One answer for each stage that could be next on any piece, quickly enough to be asked before a tap. `current` is a
/// plan of this problem, or one from a little earlier with the same steps.
std::vector<Fit> fitsOf(const BenchProblem& made, const plan::Timetable& current);

} // namespace mend::bench
