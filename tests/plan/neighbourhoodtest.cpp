#include "core/plan/neighbourhood.h"

#include "core/plan/firstplan.h"
#include "tests/plan/judge.h"
#include "tests/plan/problems.h"

#include <gtest/gtest.h>

namespace mend::plan {
namespace {

TEST(Neighbourhood, EachStepIsAPlanAndBetterThanTheLast)
{
    const Problem problem = test::benchmarkProblem("medium-11");
    const Model model = modelOf(problem);
    const auto blocks = blocksOf(model);
    ASSERT_TRUE(blocks);
    Decoder decoder(model, *blocks);
    std::mt19937_64 random(1);
    std::vector<Minute> start = firstPlan(model, *blocks, decoder, 50, random).value().start;
    Neighbourhood small(model, CostScale::of(model), 1);
    const Score first = scoreOf(problem, stepStarts(problem, model, start));
    Score last = first;
    for (int i = 0; i < 60; ++i) {
        const bool better = small.improve(start, 20'000, {});
        const auto table = staffed(problem, stepStarts(problem, model, start));
        ASSERT_TRUE(table);
        ASSERT_TRUE(test::judge(problem, *table).empty());
        const Score score = test::judgedScore(problem, *table);
        EXPECT_EQ(better, score < last);
        EXPECT_LE(score, last);
        last = score;
    }
    EXPECT_LT(last.tardiness, first.tardiness);
}

} // namespace
} // namespace mend::plan
