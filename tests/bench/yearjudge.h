#pragma once

#include "tests/bench/virtualyear.h"
#include "tests/bench/yearbench.h"

#include <deque>
#include <map>
#include <set>

namespace mend::bench::test {

/// Watches a virtual year by its windows, not by its alerts, and counts what was heard and what was not.
class YearJudge {
public:
    YearJudge(YearBench& bench, YearFigures& figures) : m_bench(bench), m_figures(figures) {}

    /// Before each look, asleep or awake.
    void watch(Instant wall, Span skew, bool awake);
    /// What the desk decided at this look. `now` is true time, for the rates.
    void hear(const Decision& decision, Instant wall, Instant now);
    void handedOver(PieceId piece);
    void finish();
    /// The next latest start that goes by.
    std::optional<Instant> next(Instant wall) const;

private:
    enum class Fate { Open, Acted, Heard, Asleep, Listed, Moved, Missed };
    struct Costly {
        Fate fate = Fate::Open;
        Instant latestStart; ///< by the wall clock of now
        Instant seen;        ///< when it was last looked at, by that clock
    };

    bool isCounted(const Window& window) const;
    void settle(const WindowRun& run, const Costly& window);
    void heardOf(const Alert& alert, Instant wall);
    static int countWithin(std::deque<Instant>& lately, Instant now);
    void countHeard(const Play& play, Instant now);
    void countAlert(const std::string& key, Urgency urgency, Instant now);

    YearBench& m_bench;
    YearFigures& m_figures;
    std::map<WindowRun, Costly> m_costly;
    Span m_skew{0};
    std::set<std::string> m_calls;
    std::set<std::string> m_sounded;
    std::deque<Instant> m_soundedLately;
    std::deque<Instant> m_heardLately;
    std::deque<Instant> m_announcedLately;
    std::map<std::string, std::deque<Instant>> m_announced;
};

} // namespace mend::bench::test
