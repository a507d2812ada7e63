#pragma once

#include "core/bench/window.h"
#include "core/plan/problem.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace mend::bench {

/// One repetition of one stage that a piece still needs hands for, in whole minutes.
struct AheadStep {
    StageInstance at;
    const rules::Stage* stage = nullptr;
    plan::Minute hands = 1; ///< rounded up
    plan::Minute ready = 0; ///< the part of it before the first touch, rounded down: a mix is made ready
    Window window;          ///< what is known of it so far
    bool operator==(const AheadStep&) const = default;
};

/// What must lie between two steps that are both still to do: from the end of one to the start of the other.
struct AheadLag {
    std::size_t from = 0;
    std::size_t to = 0;
    plan::Minute least = 0;           ///< waits at the slow end of their forecast, rounded up
    std::optional<plan::Minute> most; ///< closings at the fast end, rounded down, hands off before they close
    bool stalled = false; ///< at the present heat the wait would make no progress; `least` is the rule's figure
    bool operator==(const AheadLag&) const = default;
};

/// After `from` has been touched, no step of stage `stage` begins for so long, whichever repetition it is:
/// "20 minutes after the latest set".
struct AheadPause {
    std::size_t from = 0;
    plan::Minute minutes = 0;
    std::string stage;
    bool operator==(const AheadPause&) const = default;
};

/// All the work a piece still needs.
struct PieceAhead {
    std::vector<AheadStep> steps; ///< in the order of the procedure
    std::vector<AheadLag> lags;   ///< at most one for each ordered pair
    std::vector<AheadPause> pauses;
    int moreRuns = 0; ///< runs beyond those reckoned, so that each can be laid and finished in its window
    std::vector<StageInstance> tooTight; ///< no one can be in time for it, even begun at once: its closing is left out
    bool operator==(const PieceAhead&) const = default;
};

/// What is still to do on a piece and how it hangs together, every time at the present heat of the place where the
/// piece will be. A run too long to be laid and finished in its window is made more and shorter runs. `shortestPause`:
/// the shortest stretch for which the bench is shut, for what has to be done on the same day.
PieceAhead pieceAhead(const PieceState& piece, const BenchFold& bench, const rules::RuleBook& book, Instant now,
                      std::optional<Span> shortestPause);

plan::Minute minutesUp(Span span);
plan::Minute minutesDown(Span span);

} // namespace mend::bench
