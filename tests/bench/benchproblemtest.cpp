#include "core/bench/benchproblem.h"

#include "tests/bench/planbench.h"
#include "tests/support/rulefiles.h"

using namespace mend;
using namespace mend::bench;
using namespace mend::test;
using namespace std::chrono;

TEST(BenchProblem, OfAnEmptyBenchHasOnlyItsHours)
{
    TestBench bench(shippedRules());
    keepHours(bench);
    const BenchProblem made = problemAt(bench, 0);
    EXPECT_TRUE(made.problem.steps.empty());
    // 2027-03-01 was a Monday; 14 days of work and as many to end it, two stretches a day.
    EXPECT_EQ(made.problem.now, 540);
    EXPECT_EQ(made.problem.open.front(), (plan::Stretch{540, 720}));
    EXPECT_EQ(made.problem.horizon, 540 + 28 * 1440);
    EXPECT_EQ(made.problem.open.size(), 56U);
}

TEST(BenchProblem, GivesEachStageItsHandsAndItsWaits)
{
    TestBench bench(shippedRules(), 24.0);
    keepHours(bench);
    const PieceId bowl = bench.add(gold, 0, 3, 6).id;
    bench.upTo(bowl, "fillRun", 0);
    const BenchProblem made = problemAt(bench, 100);
    expectWellFormed(made);
    const int fill = stepOf(made, bowl, "fillRun");
    const int wipe = stepOf(made, bowl, "wipeBack");
    const int cure = stepOf(made, bowl, "cureFill");
    ASSERT_GE(std::min({fill, wipe, cure}), 0);
    // Handbook, gold-dusted seam, rows 9 to 11: 10 + 2/cm chip + 0.5/cm seam; 3 + 0.1/cm, rounded up.
    EXPECT_EQ(made.problem.steps[plan::slot(fill)].duration, 19);
    EXPECT_EQ(made.problem.steps[plan::slot(wipe)].duration, 4);
    // Opens 2 minutes after the last touch; hands off 20 minutes after the first, which comes after 10 minutes of
    // making ready: 20 - 9 - 4.
    const plan::Lag* lag = lagOf(made, fill, wipe);
    ASSERT_TRUE(lag != nullptr && lag->most.has_value());
    EXPECT_EQ(lag->least, 2);
    EXPECT_EQ(*lag->most, 7);
    EXPECT_EQ(lagOf(made, wipe, cure)->least, 30);
    EXPECT_FALSE(lagOf(made, wipe, cure)->most.has_value());
}

TEST(BenchProblem, AWarmBenchNarrowsTheWindowsAhead)
{
    const auto mostAt = [](double celsius) {
        TestBench bench(shippedRules(), celsius);
        const PieceId bowl = bench.add(gold, 0, 1, 1).id;
        bench.upTo(bowl, "fillRun", 0);
        const BenchProblem made = problemAt(bench, 100);
        return lagOf(made, stepOf(made, bowl, "fillRun"), stepOf(made, bowl, "wipeBack"))->most.value_or(-1);
    };
    // At the law's highest energy, 70 kJ/mol: exp(70000/8.314462618 * (1/297.15 - 1/301.15)) = 1.457 times faster at
    // 28 C, so 20 minutes are 13 whole ones; a cool bench never lengthens them.
    EXPECT_EQ(mostAt(24) - mostAt(28), 7);
    EXPECT_EQ(mostAt(22), mostAt(24));
}

TEST(BenchProblem, ShowsAnOpenWindowAsTheBenchDoes)
{
    TestBench bench(shippedRules(), 24.0);
    keepHours(bench);
    const PieceId bowl = bench.add(gold, 0, 3, 6).id;
    const double ready = bench.upTo(bowl, "fillRun", 0);
    pressIn(bench, bowl, ready + 100, 8);
    const double now = ready + 109;
    const auto window = bench.window(bowl, "wipeBack", now);
    const BenchProblem made = problemAt(bench, now);
    expectWellFormed(made);
    const int wipe = stepOf(made, bowl, "wipeBack");
    const plan::Planned result = planned(made);
    ASSERT_TRUE(result.table.has_value());
    const Instant begins = made.at(result.table->start[plan::slot(wipe)]);
    EXPECT_GE(begins, *window->opens);
    EXPECT_LE(begins, *window->latestStart);
    // The filler that was pressed in is in the problem as what the window hangs on.
    const plan::Lag* lag = lagOf(made, stepOf(made, bowl, "fillRun"), wipe);
    ASSERT_TRUE(lag != nullptr && lag->most.has_value());
    const plan::Step& fill = made.problem.steps[plan::slot(stepOf(made, bowl, "fillRun"))];
    const auto end =
        minutes(*fill.started + fill.duration + *lag->most) + minutes(made.problem.steps[plan::slot(wipe)].duration);
    EXPECT_EQ(made.zero + end, floor<minutes>(*window->closes));
}

TEST(BenchProblem, SaysOfWhatCannotBeInTimeThatItIsLost)
{
    TestBench bench(shippedRules(), 24.0);
    keepHours(bench);
    const PieceId bowl = bench.add(gold, 0, 3, 6).id;
    const double ready = bench.upTo(bowl, "fillRun", 0);
    pressIn(bench, bowl, ready + 100, 8);
    const BenchProblem made = problemAt(bench, ready + 118);
    ASSERT_EQ(made.lost.size(), 1U);
    EXPECT_EQ(made.lost.front(), (PlanStep{bowl, {"wipeBack", 1}}));
    planned(made);
}

TEST(BenchProblem, ALongChipIsFilledInMoreRuns)
{
    TestBench bench(shippedRules(), 24.0);
    const PieceId bowl = bench.add(gold, 0, 40, 0).id;
    bench.upTo(bowl, "fillRun", 0);
    const BenchProblem made = problemAt(bench, 100);
    // 40 cm are six runs at the usual 7.5 cm. Laying, two minutes, wiping, all in whole minutes within 20: a run of
    // 40/6 cm takes 14 + 2 + 4, so six are enough.
    EXPECT_TRUE(made.tooTight.empty());
    EXPECT_GE(stepOf(made, bowl, "fillRun", 6), 0);
    TestBench warm(shippedRules(), 30.0);
    const PieceId dish = warm.add(gold, 0, 40, 0).id;
    warm.upTo(dish, "fillRun", 0);
    const BenchProblem more = problemAt(warm, 100);
    EXPECT_TRUE(more.tooTight.empty());
    EXPECT_GT(more.moreRuns.at(dish), 0);
    EXPECT_GE(stepOf(more, dish, "fillRun", 6 + more.moreRuns.at(dish)), 0);
}

TEST(BenchProblem, WhoIsAwayIsAPairOfHandsLess)
{
    TestBench bench(shippedRules());
    keepHours(bench);
    bench.roster().people.push_back({PersonId(2), "Helper"});
    PlanFacts facts;
    facts.hours[PersonId(2)] = {{TestBench::at(60), TestBench::at(120)}};
    facts.bookings = {{{TestBench::at(150), TestBench::at(400)}, "customer"}};
    const BenchProblem made = problemAt(bench, 0, facts);
    expectWellFormed(made);
    ASSERT_EQ(made.people.size(), 2U);
    const auto takenAt = [&](double minute) {
        const plan::Minute at = made.minuteUp(TestBench::at(minute));
        return std::ranges::count_if(made.problem.steps, [at](const plan::Step& step) {
            return step.hands && *step.earliest <= at && at < *step.latestEnd;
        });
    };
    EXPECT_EQ(takenAt(30), 1);  // the helper is not there yet
    EXPECT_EQ(takenAt(90), 0);  // both are
    EXPECT_EQ(takenAt(160), 2); // the helper has gone, a customer is there
    EXPECT_EQ(takenAt(200), 0); // shut at noon
    EXPECT_EQ(takenAt(300), 2);
    EXPECT_EQ(takenAt(450), 1);
}

TEST(BenchProblem, WhatIsOnHoldOrAskedAboutStaysOut)
{
    TestBench bench(shippedRules());
    const PieceId held = bench.add(gold).id;
    const PieceId asked = bench.add(gold).id;
    Event hold = bench.event(What::HoldBegun, 5);
    hold.piece = held;
    bench.tell(hold);
    Event ask = bench.event(What::WaitingForOwner, 5);
    ask.piece = asked;
    bench.tell(ask);
    EXPECT_TRUE(problemAt(bench, 10).problem.steps.empty());
}

TEST(BenchProblem, APromiseCountsWithTheWaitBeforeHandingOver)
{
    TestBench bench(shippedRules());
    keepHours(bench);
    const PieceId bowl = bench.add(gold).id;
    bench.upTo(bowl, "inspectAndPack", 0);
    PlanFacts facts;
    facts.promised[bowl] = TestBench::at(1440 * 20);
    const BenchProblem made = problemAt(bench, 3000, facts);
    expectWellFormed(made);
    ASSERT_EQ(made.problem.pieces.size(), 1U);
    // Packing is all that is to do, 30 minutes; lacquer wants 7 days from its own last stage, which lies about 3000
    // minutes back: what is left of the week after packing comes off the promise.
    const Instant lineCoat = TestBench::at(0) + 7 * 24h;
    const auto asTold = made.minuteDown(TestBench::at(1440 * 20));
    EXPECT_LT(made.problem.pieces[0].promised, asTold);
    EXPECT_NEAR(asTold - made.problem.pieces[0].promised,
                duration_cast<minutes>(lineCoat - TestBench::at(3030)).count(), 45);
    EXPECT_EQ(made.problem.pieces[0].weight, 1);
}

TEST(BenchProblem, UrushiNeverMakesThePlanImpossible)
{
    TestBench bench(shippedRules(), 22.0);
    keepHours(bench);
    bench.read(TestBench::humidBox, 23, 75, -1);
    const PieceId bowl = bench.add("urushiSeam").id;
    const BenchProblem made = problemAt(bench, 0);
    expectWellFormed(made);
    EXPECT_GE(stepOf(made, bowl, "lacquerEdges"), 0);
    EXPECT_LT(stepOf(made, bowl, "inspectAndPack"), 0);
    EXPECT_FALSE(made.later.empty());
    planned(made);
}

TEST(BenchProblem, OneStateKeepsOthersAwayInThePlanToo)
{
    TestBench bench(shippedRules(), 24.0);
    keepHours(bench);
    // One bowl's line is tacky while another is to be sanded: dust on a tacky film is a blocked start.
    const PieceId line = bench.add(gold, 0, 1, 6).id;
    const double ready = bench.upTo(line, "lineCoat", 0);
    const PieceId sand = bench.add(gold, 0, 1, 6).id;
    bench.upTo(sand, "wetSand", 0);
    const double now = ready + 3000;
    bench.done(line, "lineCoat", now);
    const BenchProblem made = problemAt(bench, now + 1);
    expectWellFormed(made);
    const plan::Planned result = planned(made);
    ASSERT_TRUE(result.table.has_value());
    const auto start = [&](PieceId piece, const std::string& stage) {
        return result.table->start[plan::slot(stepOf(made, piece, stage))];
    };
    EXPECT_GE(start(sand, "wetSand"), start(line, "recoverPowder"));
}
