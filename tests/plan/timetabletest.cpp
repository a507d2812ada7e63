#include "core/plan/timetable.h"

#include <gtest/gtest.h>

namespace mend::plan {
namespace {

Problem twoSteps(int people)
{
    Problem problem;
    problem.horizon = 100;
    problem.people = {"A", "B"};
    problem.people.resize(static_cast<std::size_t>(people));
    problem.pieces = {{"bowl", 3, 20}, {"jug", 1, 50}};
    problem.steps.resize(2);
    problem.steps[0] = {"fill", 0, "", 10, true, {}, {}, {}, {}, {}, {}};
    problem.steps[1] = {"pack", 1, "", 10, true, {}, {}, {}, {}, {}, {}};
    return problem;
}

TEST(Timetable, LateMinutesCountByWeightAndFlowFromNow)
{
    Problem problem = twoSteps(1);
    problem.now = 5;
    const Score score = scoreOf(problem, {15, 30});
    EXPECT_EQ(score.tardiness, 3 * 5); // the bowl is done at 25, promised for 20
    EXPECT_EQ(score.flow, 20 + 35);
    EXPECT_LT((Score{1, 99}), (Score{2, 0})); // promises first
}

TEST(Timetable, GivesEachStepToWhoeverIsFree)
{
    const auto both = staffed(twoSteps(2), {0, 5});
    ASSERT_TRUE(both);
    EXPECT_NE(both->person[0], both->person[1]);
    EXPECT_FALSE(staffed(twoSteps(1), {0, 5}));
    EXPECT_TRUE(staffed(twoSteps(1), {0, 10}));
}

TEST(Timetable, WhoIsStillAtItIsNotFree)
{
    Problem problem = twoSteps(2);
    problem.steps[0].started = 0;
    problem.steps[0].person = 1;
    const auto table = staffed(problem, {0, 3});
    ASSERT_TRUE(table);
    EXPECT_EQ(table->person[0], 1);
    EXPECT_EQ(table->person[1], 0);
}

} // namespace
} // namespace mend::plan
