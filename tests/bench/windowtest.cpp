#include "core/bench/window.h"

#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace mend;
using namespace mend::bench;
using namespace mend::test;
using namespace std::chrono;

namespace {

/// A gold seam with its filler pressed in from minute 100 to 103 on a bench of so many degrees.
struct Filled {
    explicit Filled(double celsius = 24) : bench(shippedRules(), celsius)
    {
        piece = bench.add("goldLacquerSeam").id;
        bench.upTo(piece, "fillRun", 1);
        mix = bench.mix("fillerPaste", 98);
        bench.begun(piece, "fillRun", 100, 1, mix);
        bench.done(piece, "fillRun", 103, 1, mix);
    }
    TestBench bench;
    PieceId piece;
    MixId mix;
};

} // namespace

TEST(Window, OpensFromTheLastTouchAndClosesFromTheFirst)
{
    // Wipe back: opens 2 min after the last touch, recommended 5, closes 20 min after the first touch of the
    // run at 24 C (common practice, no source).
    const Filled filled;
    const auto wipe = filled.bench.window(filled.piece, "wipeBack", 104);
    ASSERT_TRUE(wipe);
    EXPECT_DOUBLE_EQ(minuteOf(wipe->opens), 105);
    EXPECT_DOUBLE_EQ(minuteOf(wipe->recommended), 108);
    EXPECT_DOUBLE_EQ(minuteOf(wipe->closes), 120);
    EXPECT_EQ(*wipe->latestStart, *wipe->closes - wipe->handsOn);
    EXPECT_EQ(wipe->miss, rules::Miss::Afternoon);
}

TEST(Window, ClosesEarlierOnAWarmBench)
{
    // 20 min at 24 C are 20 / k at 31 C, k = exp(Ea/R (1/297.15 - 1/304.15)), ASTM C1074 form; a closing takes
    // the fast end of the published band, 70 kJ/mol.
    const Filled filled(31);
    const double factor = std::exp(70000.0 / 8.31446261815324 * (1 / 297.15 - 1 / 304.15));
    const auto wipe = filled.bench.window(filled.piece, "wipeBack", 104);
    ASSERT_TRUE(wipe);
    EXPECT_NEAR(minuteOf(wipe->closes), 100 + 20 / factor, 1.0 / 600);
}

TEST(Window, NeverClosesLaterOnACoolBench)
{
    const Filled filled(16);
    const auto wipe = filled.bench.window(filled.piece, "wipeBack", 104);
    ASSERT_TRUE(wipe);
    EXPECT_DOUBLE_EQ(minuteOf(wipe->closes), 120);
    // Under 21 C the filler's waits are not forecast, but a closing is never hidden behind a stall.
    EXPECT_FALSE(wipe->stalled);
    EXPECT_TRUE(wipe->opens.has_value());
}

TEST(Window, HangingOnTouchAndMixClosesAtTheEarlier)
{
    // The filler went on 24 min after it was mixed; the mix is stiff 30 min after mixing, before the
    // 20 min of the wipe are over (common practice, no source).
    TestBench bench(shippedRules(), 24);
    const PieceId piece = bench.add("goldLacquerSeam").id;
    bench.upTo(piece, "fillRun", 1);
    const MixId mix = bench.mix("fillerPaste", 100);
    bench.begun(piece, "fillRun", 124, 1, mix);
    bench.done(piece, "fillRun", 126, 1, mix);
    const auto wipe = bench.window(piece, "wipeBack", 127);
    ASSERT_TRUE(wipe);
    EXPECT_DOUBLE_EQ(minuteOf(wipe->closes), 130);
}

TEST(Window, MovingToTheCabinetCountsFromThenOn)
{
    // 24 h at 21 C (common practice, no source); ten hours on a shelf at 21 C, then the cabinet at 43 C.
    Filled filled;
    TestBench& bench = filled.bench;
    for (int minute = 90; minute < 790; minute += 200) {
        bench.read(TestBench::shelf, 21, 45, minute);
    }
    bench.read(TestBench::cabinet, 43, 20, 90);
    bench.done(filled.piece, "wipeBack", 110, 1);
    bench.done(filled.piece, "cureFill", 180, 1, {}, TestBench::shelf);
    const auto onShelf = bench.window(filled.piece, "takeOut", 200);
    ASSERT_TRUE(onShelf);
    EXPECT_NEAR(minuteOf(onShelf->opens), 180 + 24 * 60, 1);

    Event moved = bench.event(What::Placed, 780);
    moved.piece = filled.piece;
    moved.place = TestBench::cabinet;
    bench.tell(moved);
    const auto inCabinet = bench.window(filled.piece, "takeOut", 790);
    ASSERT_TRUE(inCabinet);
    EXPECT_LT(*inCabinet->opens, *onShelf->opens - hours(5));
    EXPECT_GT(*inCabinet->opensAtLatest, *inCabinet->opens);
}

TEST(Window, AColdCureStalls)
{
    Filled filled;
    TestBench& bench = filled.bench;
    bench.read(TestBench::shelf, 12, 45, 90);
    bench.done(filled.piece, "wipeBack", 110, 1);
    bench.done(filled.piece, "cureFill", 180, 1, {}, TestBench::shelf);
    const auto out = bench.window(filled.piece, "takeOut", 240);
    ASSERT_TRUE(out);
    EXPECT_TRUE(out->stalled);
    EXPECT_FALSE(out->opens.has_value());
    EXPECT_EQ(phaseOf(*out, TestBench::at(240)), Phase::Stalled);
}

TEST(Window, NextSetWaitsForTheLastOne)
{
    // The next set may be placed 10 min after the last while the work stays in its support, 30 min if it was
    // lifted (common practice, no source).
    TestBench bench(shippedRules(), 23);
    const PieceId piece = bench.add("goldLacquerSeam").id;
    bench.roster().pieces.front().fragments = 8;
    bench.upTo(piece, "glueSet", 1);
    EXPECT_FALSE(bench.window(piece, "glueSet", 40, 2).has_value());
    bench.done(piece, "glueSet", 100, 1);
    const auto second = bench.window(piece, "glueSet", 101, 2);
    ASSERT_TRUE(second);
    EXPECT_DOUBLE_EQ(minuteOf(second->opens), 110);
    Event lifted = bench.event(What::Lifted, 102);
    lifted.piece = piece;
    bench.tell(lifted);
    EXPECT_DOUBLE_EQ(minuteOf(bench.window(piece, "glueSet", 103, 2)->opens), 130);
}

TEST(Window, NothingIsReachedBeforeWhatItHangsOn)
{
    TestBench bench(shippedRules());
    const PieceId piece = bench.add("goldLacquerSeam").id;
    for (const Window& window : bench.windows(1)) {
        EXPECT_EQ(window.stage.stage, "recordAsFound") << "only the first stage can be next";
    }
    bench.upTo(piece, "wetSand", 1);
    EXPECT_FALSE(bench.window(piece, "dustPowder", 200).has_value());
}

TEST(Window, ShowsWhatRunsOutThoughSomethingBeforeItIsNotTold)
{
    // The line is laid but nobody told that the powder was issued: its two hours run all the same.
    TestBench bench(shippedRules(), 23);
    const PieceId piece = bench.add("goldLacquerSeam").id;
    const double line = bench.upTo(piece, "lineCoat", 1);
    bench.begun(piece, "lineCoat", line);
    bench.done(piece, "lineCoat", line + 3);
    const double after = line + 4;
    const auto dust = bench.window(piece, "dustPowder", after);
    ASSERT_TRUE(dust);
    ASSERT_TRUE(dust->closes);
    EXPECT_DOUBLE_EQ(minuteOf(dust->closes), line + 120); // common practice, no source
    EXPECT_TRUE(bench.window(piece, "issuePowder", after));
}

TEST(Window, EveryProcedureCanBeFinishedFromItsWindowsAlone)
{
    const rules::RuleBook book = shippedRules();
    ASSERT_EQ(book.procedures.size(), 5U);
    for (const rules::Procedure& procedure : book.procedures) {
        TestBench bench(book, 24);
        bench.read(TestBench::cabinet, 40, 20, -1);
        bench.read(TestBench::humidBox, 24, 75, -1);
        const PieceId piece = bench.add(procedure.key).id;
        int acts = 0;
        for (double minute = 1; acts < 400; minute += 5, ++acts) {
            const auto windows = bench.windows(minute);
            if (windows.empty()) {
                break;
            }
            bench.done(piece, windows.front().stage.stage, minute, windows.front().stage.repetition);
        }
        EXPECT_LT(acts, 400) << procedure.key;
        const BenchFold folded = bench.fold();
        for (const rules::Stage& stage : procedure.stages) {
            if (!stage.optional && !stage.byItself) {
                const StageRecord* told = folded.piece(piece)->record({stage.key, 1});
                EXPECT_TRUE(told && told->isDone()) << procedure.key << ' ' << stage.key;
            }
        }
    }
}

TEST(Window, ASkippedStageLeavesNothingToWaitFor)
{
    // Without an old mend to clean off, sealing does not wait a day for its solvent to dry.
    TestBench bench(shippedRules(), 23);
    const PieceId piece = bench.add("reversibleJoin").id;
    bench.upTo(piece, "sealEdges", 1);
    const auto seal = bench.window(piece, "sealEdges", 30);
    ASSERT_TRUE(seal);
    EXPECT_LT(minuteOf(seal->opens), 30);
}

TEST(Window, KnowsWhereItStands)
{
    Window window;
    window.opens = window.opensAtLatest = TestBench::at(10);
    window.closes = TestBench::at(20);
    window.latestStart = TestBench::at(17);
    EXPECT_EQ(phaseOf(window, TestBench::at(9)), Phase::Waiting);
    EXPECT_EQ(phaseOf(window, TestBench::at(10)), Phase::Open);
    EXPECT_EQ(phaseOf(window, TestBench::at(20)), Phase::Past);
    window.lost = TestBench::at(25);
    EXPECT_EQ(phaseOf(window, TestBench::at(21)), Phase::Past);
    EXPECT_EQ(phaseOf(window, TestBench::at(25)), Phase::Lost);
    EXPECT_EQ(remaining(window, TestBench::at(15)), Span(minutes(2)));
    EXPECT_EQ(remaining(window, TestBench::at(18)), Span(minutes(-1)));
    window.latestStart.reset();
    EXPECT_FALSE(remaining(window, TestBench::at(15)).has_value());
}
