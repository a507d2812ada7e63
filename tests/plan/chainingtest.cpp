#include "core/plan/chaining.h"

#include "core/plan/planner.h"
#include "tests/plan/problems.h"

#include <gtest/gtest.h>

namespace mend::plan {
namespace {

TEST(Chaining, HoldsTheOrderOfAPlanAndStillAllowsIt)
{
    for (std::uint64_t seed = 0; seed < 30; ++seed) {
        test::BenchKind kind;
        kind.people = 1 + static_cast<int>(seed % 3);
        const Problem problem = test::inventBench(kind, seed);
        Effort effort;
        effort.steps = 1;
        const Planned planned = planBench(problem, effort);
        ASSERT_TRUE(planned.table);
        const Model model = modelOf(problem);
        std::vector<Minute> start;
        for (const Task& task : model.tasks) {
            start.push_back(planned.table->start[slot(task.step)]);
        }
        const Model held = withOrderHeld(model, start, std::vector<bool>(start.size(), false));
        EXPECT_GT(held.differences.size(), model.differences.size());
        for (const Difference& difference : held.differences) {
            ASSERT_GE(start[slot(difference.to)], start[slot(difference.from)] + difference.plus) << problem.name;
        }
        // With every order held, the earliest starts are a plan: nobody is in anybody's way.
        const std::vector<Minute> earliest = earliestAlone(held);
        ASSERT_EQ(earliest.size(), start.size());
        const auto table = staffed(problem, stepStarts(problem, model, earliest));
        ASSERT_TRUE(table) << problem.name;
        for (std::size_t i = 0; i < start.size(); ++i) {
            EXPECT_LE(earliest[i], start[i]);
        }
    }
}

} // namespace
} // namespace mend::plan
