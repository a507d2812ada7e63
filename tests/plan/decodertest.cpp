#include "core/plan/decoder.h"

#include "core/plan/firstplan.h"
#include "core/plan/planner.h"
#include "tests/plan/judge.h"
#include "tests/plan/problems.h"

#include <gtest/gtest.h>

#include <random>

namespace mend::plan {
namespace {

TEST(Blocks, AWindowTiesItsStepsTogether)
{
    const Problem problem = test::benchmarkProblem("small-07");
    const Model model = modelOf(problem);
    const auto blocks = blocksOf(model);
    ASSERT_TRUE(blocks);
    for (const Block& block : *blocks) {
        for (const int task : block.tasks) {
            EXPECT_EQ(model.tasks[slot(task)].piece, block.piece);
        }
    }
    // Fill, wipe, load and, held by its cabinet slot, unload.
    const bool together = std::any_of(blocks->begin(), blocks->end(), [&](const Block& block) {
        return block.tasks.size() == 4 && problem.steps[slot(model.tasks[slot(block.tasks[0])].step)].kind == "fill";
    });
    EXPECT_TRUE(together);
}

TEST(Blocks, WindowsThatContradictEachOtherHaveNone)
{
    EXPECT_FALSE(blocksOf(modelOf(test::benchmarkProblem("infeasible-05"))));
}

TEST(Decoder, WhateverTheOrderThePlanHolds)
{
    std::mt19937_64 random(3);
    int made = 0;
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        test::BenchKind kind;
        kind.people = 1 + static_cast<int>(seed % 3);
        kind.midday = seed % 2 == 1;
        kind.crowded = seed % 4 > 1;
        const Problem problem = test::inventBench(kind, seed);
        const Model model = modelOf(problem);
        const auto blocks = blocksOf(model);
        ASSERT_TRUE(blocks);
        Decoder decoder(model, *blocks);
        for (int shuffle = 0; shuffle < 20; ++shuffle) {
            Genes genes{{}, std::vector<Minute>(blocks->size(), 0)};
            for (std::size_t i = 0; i < blocks->size(); ++i) {
                genes.rank.push_back(static_cast<int>(random() % 1000));
                genes.notBefore[i] = random() % 5 == 0 ? problem.now + static_cast<Minute>(random() % 2000) : 0;
            }
            if (!decoder.decode(genes)) {
                EXPECT_GE(decoder.stuck(), 0);
                continue;
            }
            ++made;
            const auto table = staffed(problem, stepStarts(problem, model, decoder.start()));
            ASSERT_TRUE(table) << problem.name;
            ASSERT_EQ(test::judge(problem, *table), std::vector<std::string>{}) << problem.name;
        }
    }
    EXPECT_GT(made, 600);
}

TEST(FirstPlan, IsFoundForMostBenchesByPlainOrders)
{
    int found = 0;
    for (std::uint64_t seed = 0; seed < 100; ++seed) {
        test::BenchKind kind;
        kind.midday = seed % 2 == 1;
        const Problem problem = test::inventBench(kind, seed);
        const Model model = modelOf(problem);
        const auto blocks = blocksOf(model);
        ASSERT_TRUE(blocks);
        Decoder decoder(model, *blocks);
        std::mt19937_64 random(1);
        found += firstPlan(model, *blocks, decoder, 200, random) ? 1 : 0;
    }
    EXPECT_GE(found, 95);
}

} // namespace
} // namespace mend::plan
