#pragma once

#include "tests/bench/yearbench.h"

#include <map>
#include <optional>
#include <set>

namespace mend::bench::test {

/// A mender with one pair of hands who does what a window asks in its first half, nineteen times in twenty, and looks
/// at the clock before beginning what would close unattended. Speaks to the bench in wall clock time.
class YearMender {
public:
    YearMender(YearBench& bench, YearDice& dice) : m_bench(bench), m_dice(dice) {}

    /// Whether the mender is there, and until when.
    struct Day {
        bool atBench = false;
        Instant ends;
        bool canTell = true; ///< the program runs: else what was done is told once it does again
    };
    void live(Instant now, const Day& day);
    /// When the mender will do something next, as things stand.
    std::optional<Instant> next(Instant now, const Day& day);
    /// Something was heard: the mender comes for it a little later.
    void hear(const Alert& alert, Instant now, bool atBench);
    /// The wall clock was moved: what is planned moves with it.
    void moveClock(Span by);
    bool isBusy() const { return m_hands.has_value(); }

private:
    struct Plan {
        double share = 0.25;      ///< where in the window; above 1: not by the mender's own wits
        bool reckless = false;    ///< does not look at the end of the day
        bool notYetFirst = false; ///< the touch test fails once
        Instant seen;
        std::optional<Instant> called; ///< comes then because an alert was heard
        std::optional<Instant> late;   ///< answers for what closed then
        double waits = 0;              ///< minutes, where nothing closes
    };
    struct Hands {
        Window window;
        Instant end;
        MixId mix;
    };

    Plan& planOf(const Window& window, Instant now);
    std::optional<Instant> startOf(const Window& window, const Day& day, Instant now);
    bool mayBegin(const Window& window, const Plan& plan, const Day& day, Instant now) const;
    const Window* choose(const Day& day, Instant now);
    void begin(const Window& window, Instant now);
    void finish(Instant now);
    void answerForClosed(const Window& window, Plan& plan, Instant now);
    MixId mixFor(const rules::Stage& stage, const Window& window, Instant now);
    void tellStage(What what, const Window& window, Instant now, MixId mix = {},
                   std::optional<Instant> happened = std::nullopt);
    Span closesAfter(const Window& window) const;

    YearBench& m_bench;
    YearDice& m_dice;
    std::map<WindowRun, Plan> m_plans;
    std::optional<Hands> m_hands;
    std::map<std::pair<PieceId, std::string>, std::pair<MixId, Instant>> m_mixes;
    std::int64_t m_lastMix = 0;
};

} // namespace mend::bench::test
