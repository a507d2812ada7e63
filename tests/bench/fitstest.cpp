#include "core/bench/fits.h"

#include "tests/bench/planbench.h"
#include "tests/support/rulefiles.h"

using namespace mend;
using namespace mend::bench;
using namespace mend::test;

namespace {

/// A filler that was pressed in `age` minutes ago and has to be wiped back, beside what `others` add.
struct WipeBeside {
    TestBench bench{shippedRules(), 24.0};
    PieceId wiped;
    double now = 0;

    explicit WipeBeside(double age)
    {
        wiped = bench.add(gold, 0, 3, 6).id;
        const double ready = bench.upTo(wiped, "fillRun", 0) + 3000;
        pressIn(bench, wiped, ready, 4);
        now = ready + age;
    }

    std::optional<Fit> fitOf(PieceId piece)
    {
        const BenchProblem made = problemAt(bench, now);
        const plan::Planned found = planned(made);
        if (!found.table) {
            return std::nullopt;
        }
        for (const Fit& fit : fitsOf(made, *found.table)) {
            if (fit.piece == piece) {
                return fit;
            }
        }
        return std::nullopt;
    }
};

} // namespace

// The wipe's hands are 4 minutes and are off 20 minutes after the first touch (handbook, gold-dusted seam, row 10):
// 8 minutes after it there is room for 8 more minutes of other hands, and no more.

TEST(Fits, AStartThatLeavesTimeForTheOpenWindowFits)
{
    WipeBeside at(8);
    const PieceId other = at.bench.add(gold, 0, 0, 6).id;
    at.bench.upTo(other, "pressSet", 0); // two minutes of hands
    const auto fit = at.fitOf(other);
    ASSERT_TRUE(fit.has_value());
    EXPECT_EQ(fit->may, Fit::May::Yes);
    EXPECT_FALSE(fit->clash.piece.isSet());
}

TEST(Fits, AStartThatWouldCostAWindowSaysWhichAndWhenItCloses)
{
    WipeBeside at(8);
    const PieceId other = at.bench.add(gold, 0, 0, 6).id; // to be recorded as found: 25 minutes of hands
    const auto fit = at.fitOf(other);
    ASSERT_TRUE(fit.has_value());
    EXPECT_EQ(fit->may, Fit::May::No);
    EXPECT_EQ(fit->clash, (PlanStep{at.wiped, {"wipeBack", 1}}));
    const auto window = at.bench.window(at.wiped, "wipeBack", at.now);
    ASSERT_TRUE(fit->closes.has_value());
    EXPECT_EQ(*fit->closes, std::chrono::floor<std::chrono::minutes>(*window->closes));
}

TEST(Fits, ASecondPairOfHandsMakesRoom)
{
    WipeBeside at(8);
    at.bench.roster().people.push_back({PersonId(2), "Helper"});
    const PieceId other = at.bench.add(gold, 0, 0, 6).id;
    const auto fit = at.fitOf(other);
    ASSERT_TRUE(fit.has_value());
    EXPECT_EQ(fit->may, Fit::May::Yes);
}

TEST(Fits, WhatIsNotOpenYetIsNoStartNow)
{
    WipeBeside at(5); // last touched a minute ago; opens 2 minutes after
    const auto fit = at.fitOf(at.wiped);
    ASSERT_TRUE(fit.has_value());
    EXPECT_EQ(fit->may, Fit::May::No);
    ASSERT_TRUE(fit->notBefore.has_value());
    EXPECT_GE(*fit->notBefore, TestBench::at(at.now + 1));
}
