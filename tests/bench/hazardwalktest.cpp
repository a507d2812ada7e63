#include "tests/bench/hazardbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::test;
using mend::bench::HazardFinding;
using mend::bench::Window;

namespace {

/// One mender, one piece, every stage as soon as it may be done, in good air that is read every
/// six hours: the bench must never forbid what its own procedure asks for next.
class LoneWalk {
public:
    explicit LoneWalk(const std::string& procedure) : m_piece(m_bench.add(procedure)) { read(0); }

    /// How many stages were done before nothing was left.
    int go()
    {
        int steps = 0;
        while (steps < 200) {
            const auto window = next();
            if (!window || !window->opens) {
                break;
            }
            waitFor(*window);
            doStage(*window);
            ++steps;
        }
        return steps;
    }

private:
    std::optional<Window> next() const
    {
        const auto folded = m_bench.fold();
        std::optional<Window> first;
        for (const Window& window : bench::windowsOf(folded, m_bench.book(), HazardBench::at(m_minute))) {
            if (!first || opening(window) < opening(*first)) {
                first = window;
            }
        }
        return first;
    }

    /// What stalls here is reached once the piece lies elsewhere.
    static Instant opening(const Window& window) { return window.opens.value_or(Instant::max()); }

    void waitFor(const Window& window)
    {
        const double opens =
            std::chrono::duration<double, std::ratio<60>>(opening(window) - HazardBench::at(0)).count();
        while (m_minute < opens) {
            m_minute = std::min(opens, m_minute + 360);
            read(m_minute);
        }
    }

    void doStage(const Window& window)
    {
        const rules::Stage& stage =
            *m_bench.book().procedure(m_bench.piece(m_piece).procedure)->find(window.stage.stage);
        const PlaceId place = usualPlace(stage);
        for (const HazardFinding& finding :
             m_bench.starting(m_piece, stage.key, m_minute, place, window.stage.repetition)) {
            EXPECT_NE(finding.verdict, rules::Verdict::Block)
                << stage.key << " " << window.stage.repetition << " at minute " << m_minute << ": "
                << testing::PrintToString(finding);
        }
        m_bench.begun(m_piece, stage.key, m_minute, window.stage.repetition);
        if (place != HazardBench::tray) {
            m_bench.put(m_piece, place, m_minute); // powder is issued into a tray, the piece stays where it dries
        }
        m_minute += std::chrono::duration<double, std::ratio<60>>(window.handsOn).count();
        m_bench.done(m_piece, stage.key, m_minute, window.stage.repetition);
    }

    static PlaceId usualPlace(const rules::Stage& stage)
    {
        const std::string kind = stage.places.empty() ? "bench" : stage.places.front();
        return kind == "cabinet"    ? HazardBench::cabinet
               : kind == "humidBox" ? HazardBench::humidBox
               : kind == "shelf"    ? HazardBench::shelf
               : kind == "tray"     ? HazardBench::tray
                                    : HazardBench::table;
    }

    void read(double minute)
    {
        for (const PlaceId place : {HazardBench::table, HazardBench::shelf, HazardBench::tray}) {
            m_bench.read(place, 24, 50, minute);
        }
        m_bench.read(HazardBench::cabinet, 40, 20, minute);
        m_bench.read(HazardBench::humidBox, 23, 75, minute);
    }

    HazardBench m_bench;
    PieceId m_piece;
    double m_minute = 0;
};

} // namespace

TEST(HazardWalk, NoShippedProcedureIsForbiddenByWhatItLeavesItself)
{
    for (const rules::Procedure& procedure : shippedRules().procedures) {
        SCOPED_TRACE(procedure.key);
        const int needed = static_cast<int>(std::ranges::count_if(
            procedure.stages, [](const rules::Stage& stage) { return !stage.optional && !stage.byItself; }));
        EXPECT_GE(LoneWalk(procedure.key).go(), needed) << "the walk came to a stop";
    }
}
