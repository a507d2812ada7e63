#include "core/plan/model.h"

#include "tests/plan/problems.h"

#include <gtest/gtest.h>

namespace mend::plan {
namespace {

Problem fillAndWipe()
{
    Problem problem;
    problem.now = 100;
    problem.horizon = 1000;
    problem.people = {"A"};
    problem.open = {{0, 300}, {400, 1000}};
    problem.pieces = {{"bowl", 1, 0}};
    problem.steps.resize(2);
    problem.steps[0] = {"fill", 0, "", 10, true, {}, {}, {}, {}, {}, {}};
    problem.steps[1] = {"wipe", 0, "", 7, true, {}, {}, {}, {}, {}, {}};
    problem.lags = {{0, 1, 2, 13}};
    return problem;
}

TEST(Model, AnOpenWindowBecomesALimitOfItsStep)
{
    Problem problem = fillAndWipe();
    problem.steps[0].started = 95;
    problem.steps[0].person = 0;
    const Model model = modelOf(problem);
    ASSERT_EQ(model.tasks.size(), 1U);
    EXPECT_EQ(model.tasks[0].mayStart.first(), 107);
    EXPECT_EQ(model.tasks[0].mayStart.last(), 118);
    EXPECT_TRUE(model.differences.empty());
}

TEST(Model, HandsThatAreBusyLeaveNoRoom)
{
    Problem problem = fillAndWipe();
    problem.steps[0].started = 95; // until 105
    problem.steps[0].person = 0;
    problem.lags.clear();
    EXPECT_EQ(modelOf(problem).tasks[0].mayStart.first(), 105);
    problem.people.push_back("B");
    EXPECT_EQ(modelOf(problem).tasks[0].mayStart.first(), 100);
}

TEST(Model, LagsAndHoursAloneGiveTheEarliestStarts)
{
    Problem problem = fillAndWipe();
    problem.now = 285;
    const std::vector<Minute> earliest = earliestAlone(modelOf(problem));
    ASSERT_EQ(earliest.size(), 2U);
    EXPECT_EQ(earliest[1], 412); // both after the break, for the wipe would not fit before it
    EXPECT_EQ(earliest[0], 400);
    problem.lags.push_back({1, 0, 0, std::nullopt});
    EXPECT_TRUE(earliestAlone(modelOf(problem)).empty());
}

TEST(Model, FreezingKeepsTheRestOfAPlanWhereItIs)
{
    const Problem problem = fillAndWipe();
    const Model model = modelOf(problem);
    const Frozen frozen = freeze(model, std::vector<Minute>{100, 115}, {false, true});
    ASSERT_EQ(frozen.model.tasks.size(), 1U);
    EXPECT_EQ(frozen.taskOf, std::vector<int>{1});
    EXPECT_EQ(frozen.model.tasks[0].mayStart.first(), 112);
    EXPECT_EQ(frozen.model.tasks[0].mayStart.last(), 123);
    EXPECT_EQ(frozen.model.pieces[0].settledEnd, 110);
}

} // namespace
} // namespace mend::plan
