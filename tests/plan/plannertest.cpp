#include "core/plan/planner.h"

#include "core/plan/check.h"
#include "tests/plan/judge.h"
#include "tests/plan/problems.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cstdlib>
#include <fstream>
#include <map>

namespace mend::plan {
namespace {

/// Best values known from two constraint solvers and a local search; tests/data/plan/README.md.
struct Known {
    bool exists = true;
    std::int64_t tardiness = 0;
    bool tardinessProven = false;
};

std::map<std::string, Known> knownBest()
{
    std::map<std::string, Known> known;
    std::ifstream file(std::string(MEND_SOURCE_DIR) + "/tests/data/plan/best.csv");
    std::string name;
    std::string exists;
    std::string tardiness;
    std::string rest;
    std::getline(file, rest);
    while (std::getline(file, name, ',') && std::getline(file, exists, ',') && std::getline(file, tardiness, ',') &&
           std::getline(file, rest)) {
        known[name] = {exists == "plan", tardiness.empty() ? 0 : std::stoll(tardiness), rest.ends_with(",yes")};
    }
    return known;
}

Effort steps(std::int64_t count)
{
    Effort effort;
    effort.steps = count;
    return effort;
}

/// 1,000 by itself; MEND_PLAN_RANDOM says otherwise.
std::uint64_t randomCount()
{
    const char* asked = std::getenv("MEND_PLAN_RANDOM");
    return asked != nullptr ? std::strtoull(asked, nullptr, 10) : 1000;
}

/// Benches of every kind, two in three small, so that a thousand take seconds.
Problem anyBench(std::uint64_t seed)
{
    test::BenchKind kind;
    kind.pieces = 2 + static_cast<int>(seed % 5);
    kind.people = 1 + static_cast<int>(seed / 5 % 3);
    kind.midday = seed / 15 % 2 == 1;
    kind.crowded = seed / 30 % 2 == 1;
    return seed % 3 == 0 ? test::inventTiny(seed) : test::inventBench(kind, seed);
}

TEST(Planner, PlansTheBenchmarkSetAsWellAsIsKnown)
{
    int proven = 0;
    for (const auto& [name, known] : knownBest()) {
        if (!known.exists || !(name.starts_with("small") || name.starts_with("midday"))) {
            continue;
        }
        const Problem problem = test::benchmarkProblem(name);
        const Planned planned = planBench(problem, steps(40'000'000));
        ASSERT_EQ(planned.verdict, Planned::Verdict::Plan) << name;
        EXPECT_TRUE(test::judge(problem, *planned.table).empty()) << name;
        EXPECT_EQ(test::judgedScore(problem, *planned.table), planned.score) << name;
        EXPECT_EQ(planned.score.tardiness, known.tardiness) << name;
        proven += planned.promisesProven ? 1 : 0;
    }
    EXPECT_GE(proven, 7);
}

TEST(Planner, SaysOfEveryBenchWithoutAPlanThatThereIsNone)
{
    int found = 0;
    for (const auto& [name, known] : knownBest()) {
        if (!known.exists) {
            EXPECT_EQ(planBench(test::benchmarkProblem(name), steps(2'000'000)).verdict, Planned::Verdict::NoPlan)
                << name;
            ++found;
        }
    }
    EXPECT_EQ(found, 3);
}

TEST(Planner, HasAPlanForEveryBenchOfTheSetAtOnce)
{
    for (const auto& [name, known] : knownBest()) {
        if (known.exists) {
            const Problem problem = test::benchmarkProblem(name);
            const Planned planned = planBench(problem, steps(1));
            ASSERT_EQ(planned.verdict, Planned::Verdict::Plan) << name;
            EXPECT_TRUE(test::judge(problem, *planned.table).empty()) << name;
        }
    }
}

TEST(Planner, EveryPlanOfARandomBenchHolds)
{
    int planned = 0;
    for (std::uint64_t seed = 0; seed < randomCount(); ++seed) {
        const Problem problem = anyBench(seed);
        Effort effort = steps(60'000);
        std::optional<Score> last;
        effort.improved = [&](const Timetable& table, const Score& score) {
            EXPECT_TRUE(test::judge(problem, table).empty()) << problem.name;
            EXPECT_EQ(test::judgedScore(problem, table), score);
            EXPECT_TRUE(!last || score < *last || score.tardiness <= last->tardiness);
            last = score;
        };
        const Planned found = planBench(problem, effort);
        EXPECT_FALSE(found.refused) << problem.name;
        planned += found.verdict == Planned::Verdict::Plan ? 1 : 0;
        if (found.table) {
            ASSERT_TRUE(test::judge(problem, *found.table).empty()) << problem.name << " " << seed;
        }
    }
    EXPECT_GT(planned, static_cast<int>(randomCount() / 2));
}

/// Three pairs of hands and many slots: who overlaps whom is settled late in the search.
TEST(Planner, NoPlanOfItsOwnIsEverRefusedAtTheGate)
{
    for (const std::string& name : test::benchmarkNames("large")) {
        const Planned planned = planBench(test::benchmarkProblem(name), steps(4'000'000));
        EXPECT_FALSE(planned.refused) << name;
        EXPECT_EQ(planned.verdict, Planned::Verdict::Plan) << name;
    }
}

TEST(Planner, TheSameSeedAndStepsGiveTheSamePlan)
{
    for (const char* name : {"medium-03", "large-05"}) {
        const Problem problem = test::benchmarkProblem(name);
        const Planned one = planBench(problem, steps(400'000));
        const Planned other = planBench(problem, steps(400'000));
        EXPECT_EQ(one.table, other.table) << name;
        EXPECT_EQ(one.steps, other.steps) << name;
    }
}

Problem shifted(Problem problem, Minute by)
{
    problem.now += by;
    problem.horizon += by;
    for (Stretch& open : problem.open) {
        open = {open.from + by, open.to + by};
    }
    for (Piece& piece : problem.pieces) {
        piece.promised += by;
    }
    const auto move = [by](std::optional<Minute>& minute) {
        if (minute) {
            *minute += by;
        }
    };
    for (Step& step : problem.steps) {
        move(step.earliest);
        move(step.latestEnd);
        move(step.started);
    }
    return problem;
}

TEST(Planner, ShiftingEveryClockShiftsThePlan)
{
    for (std::uint64_t seed = 0; seed < 100; ++seed) {
        const Problem problem = anyBench(seed);
        const Minute by = 1 + static_cast<Minute>(seed) * 61;
        const Planned here = planBench(problem, steps(30'000));
        const Planned there = planBench(shifted(problem, by), steps(30'000));
        ASSERT_EQ(here.verdict, there.verdict) << problem.name;
        for (std::size_t i = 0; here.table && i < problem.steps.size(); ++i) {
            ASSERT_EQ(here.table->start[i] + by, there.table->start[i]) << problem.name;
        }
        EXPECT_EQ(here.score, there.score) << problem.name;
    }
}

/// The bench without one of its pieces, and which steps are left.
Problem without(const Problem& problem, int piece, std::vector<std::size_t>& kept)
{
    Problem less = problem;
    less.pieces.erase(less.pieces.begin() + piece);
    less.steps.clear();
    less.lags.clear();
    less.waits.clear();
    std::vector<int> place(problem.steps.size(), -1);
    for (std::size_t i = 0; i < problem.steps.size(); ++i) {
        if (problem.steps[i].piece != piece) {
            place[i] = static_cast<int>(kept.size());
            kept.push_back(i);
            less.steps.push_back(problem.steps[i]);
            less.steps.back().piece -= problem.steps[i].piece > piece ? 1 : 0;
        }
    }
    const auto keep = [&](auto one, auto& list) {
        one.from = place[slot(one.from)];
        one.to = place[slot(one.to)];
        if (one.from >= 0 && one.to >= 0) {
            list.push_back(std::move(one));
        }
    };
    for (const Lag& lag : problem.lags) {
        keep(lag, less.lags);
    }
    for (const Wait& wait : problem.waits) {
        keep(wait, less.waits);
    }
    return less;
}

TEST(Planner, WhatIsLeftOfAPlanWithoutAPieceStillHolds)
{
    int tried = 0;
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        const Problem problem = anyBench(seed);
        const Planned planned = planBench(problem, steps(10'000));
        if (!planned.table || problem.pieces.size() < 2) {
            continue;
        }
        std::vector<std::size_t> kept;
        const Problem less = without(problem, static_cast<int>(seed % problem.pieces.size()), kept);
        Timetable table;
        for (const std::size_t i : kept) {
            table.start.push_back(planned.table->start[i]);
            table.person.push_back(planned.table->person[i]);
        }
        EXPECT_TRUE(violations(less, table).empty()) << problem.name;
        EXPECT_NE(planBench(less, steps(10'000)).verdict, Planned::Verdict::NoPlan) << problem.name;
        ++tried;
    }
    EXPECT_GT(tried, 100);
}

TEST(Planner, RelaxingNeverTurnsAPlanIntoNone)
{
    for (std::uint64_t seed = 0; seed < 300; ++seed) {
        Problem problem = anyBench(seed);
        if (planBench(problem, steps(10'000)).verdict != Planned::Verdict::Plan) {
            continue;
        }
        switch (seed % 4) {
        case 0:
            problem.people.push_back("one more");
            break;
        case 1:
            for (Lag& lag : problem.lags) {
                lag.most.reset();
            }
            break;
        case 2:
            problem.incompatible.clear();
            break;
        default:
            for (Resource& resource : problem.resources) {
                ++resource.capacity;
            }
        }
        EXPECT_NE(planBench(problem, steps(10'000)).verdict, Planned::Verdict::NoPlan) << problem.name;
    }
}

TEST(Planner, StopsWithinFiftyMillisecondsOfBeingTold)
{
    const Problem problem = test::benchmarkProblem("large-03");
    using Clock = std::chrono::steady_clock;
    std::optional<Clock::time_point> told;
    const auto begun = Clock::now();
    Effort effort;
    effort.enough = [&] {
        if (Clock::now() - begun < std::chrono::milliseconds(700)) {
            return false;
        }
        told = told.value_or(Clock::now());
        return true;
    };
    // The longest it goes without asking is what a person who taps would wait.
    Clock::time_point last = begun;
    std::chrono::nanoseconds longest{0};
    Effort asking = effort;
    asking.enough = [&] {
        longest = std::max<std::chrono::nanoseconds>(longest, Clock::now() - last);
        last = Clock::now();
        return effort.enough();
    };
    static_cast<void>(planBench(problem, asking));
    ASSERT_TRUE(told);
    EXPECT_LT(Clock::now() - *told, std::chrono::milliseconds(50));
    EXPECT_LT(longest, std::chrono::milliseconds(50));
}

} // namespace
} // namespace mend::plan
