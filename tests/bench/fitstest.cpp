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

namespace {

/// Something done from minute 0 to 4 whose next hands, 4 minutes of them, have to begin by 16, beside 2 minutes of
/// hands that nothing else hangs on.
BenchProblem wipeAndOther(plan::Minute now)
{
    BenchProblem made;
    made.zero = TestBench::at(0);
    made.people = {PersonId(1)};
    made.pieces = {PieceId(1), PieceId(2)};
    made.steps = {{PieceId(1), {"fill", 1}}, {PieceId(1), {"wipe", 1}}, {PieceId(2), {"trim", 1}}};
    plan::Problem& problem = made.problem;
    problem.now = now;
    problem.horizon = 1000;
    problem.people = {"hands"};
    problem.open = {{0, 1000}};
    problem.pieces = {{"one", 0, 1000}, {"other", 0, 1000}};
    problem.steps.resize(3);
    for (plan::Step& step : problem.steps) {
        step.duration = 4;
    }
    problem.steps[0].id = "fill";
    problem.steps[0].started = 0;
    problem.steps[0].person = 0;
    problem.steps[1].id = "wipe";
    problem.steps[2].id = "trim";
    problem.steps[2].piece = 1;
    problem.steps[2].duration = 2;
    problem.lags = {{0, 1, 2, 12}};
    return made;
}

std::optional<Instant> trimUntil(const BenchProblem& made)
{
    const auto fits = fitsOf(made, *planned(made).table, plan::MayStart::Depth::Thorough);
    const auto trim = std::ranges::find(fits, PieceId(2), &Fit::piece);
    EXPECT_TRUE(trim != fits.end() && trim->may == Fit::May::Yes);
    return trim == fits.end() ? std::nullopt : trim->until;
}

} // namespace

/// At 12 the other hands may begin by 14, and then not before the wipe is done, at 16: that break is what is said. At 8
/// they may begin at any minute, before the wipe or after it.
TEST(Fits, AYesSaysTheLastMinuteBeforeItBreaks)
{
    EXPECT_EQ(trimUntil(wipeAndOther(12)), TestBench::at(14));
    EXPECT_EQ(trimUntil(wipeAndOther(8)), std::nullopt);
}
