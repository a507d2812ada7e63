#pragma once

#include "core/bench/benchproblem.h"
#include "core/exchange/planreader.h"
#include "core/plan/planner.h"

#include "tests/plan/judge.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

#include <string>

namespace mend::test {

inline const std::string gold = "goldLacquerSeam";
inline const std::string metal = "metalFilledSeam";
inline const std::string plain = "invisibleMend";

/// Nine to half past five with an hour at noon, for ten weeks from the day of minute 0.
inline void keepHours(TestBench& at)
{
    for (int day = 0; day < 70; ++day) {
        const double midnight = day * 1440.0 - 540;
        at.roster().openHours.push_back({TestBench::at(midnight + 540), TestBench::at(midnight + 720)});
        at.roster().openHours.push_back({TestBench::at(midnight + 780), TestBench::at(midnight + 1050)});
    }
}

/// The same air as ever, in every place.
inline void readAll(TestBench& at, double roomCelsius, double minute)
{
    for (const PlaceId place : {TestBench::benchPlace, TestBench::shelf, TestBench::tray}) {
        at.read(place, roomCelsius, 45, minute);
    }
    at.read(TestBench::humidBox, 23, 75, minute);
    at.read(TestBench::cabinet, 40, 40, minute);
}

inline bench::BenchProblem problemAt(const TestBench& at, double minute, const bench::PlanFacts& facts = {})
{
    return bench::benchProblem(at.fold(), at.book(), facts, TestBench::at(minute));
}

inline int stepOf(const bench::BenchProblem& made, PieceId piece, const std::string& stage, int repetition = 1)
{
    for (std::size_t i = 0; i < made.steps.size(); ++i) {
        if (made.steps[i] == bench::PlanStep{piece, {stage, repetition}}) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

inline const plan::Lag* lagOf(const bench::BenchProblem& made, int from, int to)
{
    for (const plan::Lag& lag : made.problem.lags) {
        if (lag.from == from && lag.to == to) {
            return &lag;
        }
    }
    return nullptr;
}

/// The same problem after the way to a file and back: the format's own reader finds no fault in it.
inline void expectWellFormed(const bench::BenchProblem& made)
{
    const auto read = exchange::readPlanProblem(exchange::planProblemText(made.problem));
    for (const auto& fault : read.faults) {
        ADD_FAILURE() << fault.path << ": " << fault.text;
    }
    ASSERT_TRUE(read.problem.has_value());
    EXPECT_EQ(*read.problem, made.problem);
    EXPECT_EQ(made.steps.size(), made.problem.steps.size());
    EXPECT_EQ(made.pieces.size(), made.problem.pieces.size());
}

inline plan::Planned planned(const bench::BenchProblem& made, std::int64_t steps = 400'000)
{
    plan::Effort effort;
    effort.steps = steps;
    plan::Planned result = plan::planBench(made.problem, effort);
    EXPECT_EQ(result.verdict, plan::Planned::Verdict::Plan);
    if (result.table) {
        EXPECT_TRUE(test::judge(made.problem, *result.table).empty());
    }
    return result;
}

/// Presses filler in: the first touch at `minute`, the last so many minutes later.
inline void pressIn(TestBench& at, PieceId piece, double minute, double hands)
{
    const MixId mix = at.mix("fillerPaste", minute);
    at.begun(piece, "fillRun", minute, 1, mix);
    at.done(piece, "fillRun", minute + hands, 1, mix);
}

} // namespace mend::test
