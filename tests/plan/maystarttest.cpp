#include "core/plan/maystart.h"

#include "core/plan/planner.h"
#include "tests/plan/judge.h"
#include "tests/plan/problems.h"

#include <gtest/gtest.h>

namespace mend::plan {
namespace {

Planned planned(const Problem& problem)
{
    Effort effort;
    effort.steps = 50'000;
    return planBench(problem, effort);
}

/// The problem with a step held to a minute, for asking the planner itself.
Problem pinned(Problem problem, int step, Minute at)
{
    problem.steps[slot(step)].earliest = at;
    problem.steps[slot(step)].latestEnd = at + problem.steps[slot(step)].duration;
    return problem;
}

TEST(MayStart, AYesIsAPlanAndANoIsProven)
{
    int yes = 0;
    int no = 0;
    int unsure = 0;
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        test::BenchKind kind;
        kind.pieces = 5;
        kind.people = 1 + static_cast<int>(seed % 2);
        kind.midday = true;
        Problem problem = test::inventBench(kind, seed);
        for (const Step& step : problem.steps) {
            // The moment somebody looks up and asks what next.
            problem.now = step.started ? std::max(problem.now, *step.started + step.duration) : problem.now;
        }
        const Planned plan = planned(problem);
        if (!plan.table) {
            continue;
        }
        MayStart may(problem, *plan.table);
        for (const int step : may.nextSteps()) {
            const StartAnswer answer = may.ask(step, MayStart::Depth::Thorough);
            if (answer.may == StartAnswer::May::Yes) {
                ++yes;
                ASSERT_TRUE(answer.plan);
                EXPECT_EQ(answer.plan->start[slot(step)], problem.now);
                EXPECT_EQ(test::judge(problem, *answer.plan), std::vector<std::string>{}) << problem.name;
            } else if (answer.may == StartAnswer::May::No) {
                ++no;
                EXPECT_EQ(planned(pinned(problem, step, problem.now)).verdict, Planned::Verdict::NoPlan)
                    << problem.name << " " << problem.steps[slot(step)].id;
            } else {
                ++unsure;
            }
        }
    }
    EXPECT_GT(yes, 50);
    EXPECT_GT(no, 20);
    EXPECT_LT(unsure * 20, yes + no); // hardly ever left open
}

/// Filler goes stiff in ten minutes; whatever takes the hands for longer has to wait.
Problem fillerOnThePot()
{
    Problem problem;
    problem.now = 600;
    problem.horizon = 3000;
    problem.people = {"A"};
    problem.open = {{540, 1020}, {1980, 2460}};
    problem.pieces = {{"bowl", 1, 2000}, {"jug", 1, 2000}};
    problem.steps.resize(3);
    problem.steps[0] = {"fill", 0, "", 10, true, {}, {}, {}, {}, 588, 0};
    problem.steps[1] = {"wipe", 0, "", 7, true, {}, {}, {}, {}, {}, {}};
    problem.steps[2] = {"sand", 1, "", 20, true, {}, {}, {}, {}, {}, {}};
    problem.lags = {{0, 1, 2, 12}};
    return problem;
}

TEST(MayStart, NamesTheWindowThatWouldCloseAndWhen)
{
    Problem problem = fillerOnThePot();
    MayStart may(problem, *planned(problem).table);
    EXPECT_EQ(may.nextSteps(), (std::vector<int>{1, 2}));
    EXPECT_EQ(may.ask(1).may, StartAnswer::May::Yes);
    const StartAnswer sand = may.ask(2);
    EXPECT_EQ(sand.may, StartAnswer::May::No);
    EXPECT_EQ(sand.window, 0);
    EXPECT_EQ(sand.windowCloses, 610);
    problem.steps[2].duration = 10;
    MayStart quick(problem, *planned(problem).table);
    EXPECT_EQ(quick.ask(2).may, StartAnswer::May::Yes);
    problem.open[0].from = 605;
    MayStart shut(problem, *planned(problem).table);
    EXPECT_EQ(shut.ask(2).may, StartAnswer::May::No);
    EXPECT_EQ(shut.ask(2).notBefore, 605);
}

TEST(MayStart, TheLatestYesIsTheLastMinuteThatWorks)
{
    const Problem problem = fillerOnThePot();
    MayStart may(problem, *planned(problem).table);
    EXPECT_EQ(may.latestYes(1), 610);
    EXPECT_EQ(may.latestYes(2), std::nullopt);
    for (std::uint64_t seed = 0; seed < 10; ++seed) {
        test::BenchKind kind;
        kind.midday = true;
        const Problem bench = test::inventBench(kind, seed);
        const Planned plan = planned(bench);
        ASSERT_TRUE(plan.table);
        MayStart ask(bench, *plan.table);
        for (const int step : ask.nextSteps()) {
            if (const auto latest = ask.latestYes(step)) {
                EXPECT_EQ(ask.ask(step, *latest, MayStart::Depth::Quick).may, StartAnswer::May::Yes);
            }
        }
    }
}

TEST(MayStart, SlowHandsTakeAQuarterLongerRoundedUp)
{
    Problem problem = fillerOnThePot();
    problem.steps[1].duration = 9;
    problem.steps[2].hands = false;
    const Problem slow = slowHands(problem);
    EXPECT_EQ(slow.steps[0].duration, 10); // over
    EXPECT_EQ(slow.steps[1].duration, 12);
    EXPECT_EQ(slow.steps[2].duration, 20); // takes no hands
}

TEST(MayStart, FreeUntilTheOpenWindowNeedsTheHands)
{
    Problem problem = fillerOnThePot();
    const Timetable plan = *planned(problem).table;
    const FreeTime free = freeTime(problem, plan, 0, 1020);
    EXPECT_EQ(free.until, 610);
    EXPECT_EQ(free.window, 0);
    problem.people.push_back("B");
    EXPECT_EQ(freeTime(problem, plan, 0, 1020).until, 1020);
}

} // namespace
} // namespace mend::plan
