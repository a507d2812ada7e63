#include "core/plan/repair.h"

#include "tests/plan/judge.h"
#include "tests/plan/problems.h"

#include <gtest/gtest.h>

#include <random>

namespace mend::plan {
namespace {

struct Day {
    Problem problem;
    std::vector<std::optional<Minute>> before;
};

Effort someSteps(std::int64_t count)
{
    Effort effort;
    effort.steps = count;
    return effort;
}

/// A planned bench some time later: what was to begin by then has begun, as planned.
std::optional<Day> dayAt(std::uint64_t seed, Minute hours)
{
    test::BenchKind kind;
    kind.pieces = 6;
    kind.people = 1 + static_cast<int>(seed % 2);
    Day day{test::inventBench(kind, seed), {}};
    const Planned plan = planBench(day.problem, someSteps(60'000));
    if (!plan.table) {
        return std::nullopt;
    }
    day.problem.now += hours * 60;
    for (std::size_t i = 0; i < day.problem.steps.size(); ++i) {
        day.before.emplace_back(plan.table->start[i]);
        if (plan.table->start[i] <= day.problem.now) {
            day.problem.steps[i].started = plan.table->start[i];
            day.problem.steps[i].person = plan.table->person[i];
        }
    }
    return day;
}

TEST(Repair, WithoutAnEventNothingMoves)
{
    for (std::uint64_t seed = 0; seed < 30; ++seed) {
        const auto day = dayAt(seed, 3);
        ASSERT_TRUE(day);
        const Repaired repaired = repair(day->problem, day->before, someSteps(100'000));
        ASSERT_TRUE(repaired.table) << seed;
        EXPECT_EQ(repaired.change.shifted, 0) << seed;
        EXPECT_EQ(repaired.change.swapped, 0) << seed;
        EXPECT_TRUE(repaired.change.moved.empty()) << seed;
    }
}

TEST(Repair, AfterOneEventThePlanHoldsAndMostlyStays)
{
    std::mt19937_64 random(9);
    int repairedCount = 0;
    int swapped = 0;
    for (std::uint64_t seed = 0; seed < 80; ++seed) {
        auto day = dayAt(seed, 2 + static_cast<Minute>(seed % 4));
        ASSERT_TRUE(day);
        Problem& problem = day->problem;
        switch (seed % 4) {
        case 0: // one that runs takes longer
            for (Step& step : problem.steps) {
                if (step.started && *step.started + step.duration > problem.now) {
                    step.duration += 12;
                }
            }
            break;
        case 1: { // a rush piece
            problem.pieces.push_back({"rush", 5, problem.now + 60});
            Step step;
            step.id = "rush";
            step.piece = static_cast<int>(problem.pieces.size()) - 1;
            step.duration = 15;
            problem.steps.push_back(step);
            day->before.emplace_back();
            break;
        }
        case 2: // a quarter of an hour lost
            problem.now += 15;
            break;
        default: // something still to do takes longer
            problem.steps[random() % problem.steps.size()].duration += 10;
        }
        const Repaired repaired = repair(problem, day->before, someSteps(200'000));
        if (!repaired.table) {
            continue; // a window may be lost for good
        }
        ++repairedCount;
        swapped += repaired.change.swapped > 0 ? 1 : 0;
        EXPECT_EQ(test::judge(problem, *repaired.table), std::vector<std::string>{}) << seed;
        for (std::size_t i = 0; i < problem.steps.size(); ++i) {
            if (problem.steps[i].started) {
                EXPECT_EQ(repaired.table->start[i], *problem.steps[i].started);
            }
        }
    }
    EXPECT_GT(repairedCount, 60);
    EXPECT_LT(swapped * 3, repairedCount); // order before minutes
}

TEST(Repair, SaysWhichPiecesAreNoLongerInTime)
{
    Problem problem;
    problem.now = 10;
    problem.horizon = 200;
    problem.people = {"A"};
    problem.open = {{0, 200}};
    problem.pieces = {{"bowl", 1, 40}, {"jug", 1, 100}};
    problem.steps.resize(2);
    problem.steps[0] = {"fill", 0, "", 20, true, {}, {}, {}, {}, {}, {}};
    problem.steps[1] = {"pack", 1, "", 20, true, {}, {}, {}, {}, {}, {}};
    const std::vector<std::optional<Minute>> before{20, 50};
    problem.now = 25; // five minutes later than planned
    const Repaired repaired = repair(problem, before, someSteps(1000));
    ASSERT_TRUE(repaired.table);
    EXPECT_EQ(repaired.table->start, (std::vector<Minute>{25, 50}));
    EXPECT_EQ(repaired.change.newlyLate, (std::vector<int>{0}));
    EXPECT_EQ(repaired.change.moved, (std::vector<int>{0}));
}

TEST(Repair, SaysThatThereIsNoPlanOnlyWithProof)
{
    const Problem problem = test::benchmarkProblem("infeasible-01");
    const std::vector<std::optional<Minute>> before(problem.steps.size(), std::nullopt);
    const Repaired repaired = repair(problem, before, someSteps(100'000));
    EXPECT_TRUE(repaired.noPlan);
    EXPECT_FALSE(repaired.table);
}

} // namespace
} // namespace mend::plan
