#pragma once

#include "core/bench/window.h"

#include <map>
#include <optional>
#include <set>
#include <utility>
#include <vector>

namespace mend::bench {

/// A touch that a time counts from, and the stage whose chemistry it started.
struct TouchPoint {
    Instant at;
    EventId by;
    const rules::Stage* stage = nullptr; ///< null: the mix alone
    MixId mix;
};

/// What one lag of a stage hangs on, as far as it is known.
struct Hanging {
    bool applies = false;           ///< the lag's condition holds and its repetition exists
    bool settled = false;           ///< every repetition it asks for is done or skipped
    bool served = false;            ///< something it hangs on was really done: there is something to wait for
    std::optional<TouchPoint> from; ///< where nothing was done: what the skipped stage hung on
};

/// Finds what stages of one piece hang on.
class Origins {
public:
    Origins(const PieceState& piece, const BenchFold& bench, const rules::RuleBook& book,
            const rules::Procedure& procedure);

    /// What `lag` of repetition `repetition` of `stage` counts from.
    Hanging hangingOf(const rules::Lag& lag, const rules::Stage& stage, int repetition) const;
    /// Whether everything a stage hangs on is done or skipped.
    bool isReached(const rules::Stage& stage, int repetition) const;
    /// Whether a closing of the stage runs already, reached or not: what it counts from is done.
    bool isClosing(const rules::Stage& stage, int repetition) const;
    int repetitions(const rules::Stage& stage) const;
    /// Whose touches a lag counts from, done or still to do. What goes by itself, was passed over or left out is
    /// replaced by what it hangs on itself; `Which::Latest` names every repetition.
    std::vector<StageInstance> sourcesOf(const rules::Lag& lag, const rules::Stage& stage, int repetition) const;
    /// How long a lag is: its own span, or its origin stage's wait for a piece like this one.
    std::optional<rules::SpanFigure> spanOf(const rules::Lag& lag) const;
    /// The upper figure of that wait, where the trade gives a range.
    std::optional<rules::SpanFigure> longestOf(const rules::Lag& lag) const;

private:
    std::vector<int> asked(const rules::Origin& origin, const rules::Stage& stage, const rules::Stage& target,
                           int repetition) const;
    bool isSettled(const rules::Stage& stage, int repetition) const;
    bool isSettledAnew(const rules::Stage& stage, int repetition) const;
    std::optional<TouchPoint> touchOf(const rules::Stage& target, int repetition, rules::Touch touch) const;
    std::optional<TouchPoint> mixingOf(const rules::Stage& target, int repetition) const;
    std::optional<TouchPoint> passedThrough(const rules::Stage& target, int repetition) const;
    void gather(const rules::Lag& lag, const rules::Stage& stage, int repetition, std::set<StageInstance>& seen,
                std::vector<StageInstance>& sources) const;
    const rules::Wait* waitOf(const rules::Lag& lag) const;

    const PieceState& m_piece;
    const BenchFold& m_bench;
    const rules::RuleBook& m_book;
    const rules::Procedure& m_procedure;
    // Stages that were skipped ask those before them, each on several ways: every answer is kept, or a
    // piece with twenty skipped stages would take minutes.
    using At = std::pair<const rules::Stage*, int>;
    mutable std::map<At, bool> m_settled;
    mutable std::map<At, std::optional<TouchPoint>> m_passed;
};

} // namespace mend::bench
