#include "tests/plan/jobshop.h"

#include "core/plan/planner.h"
#include "tests/plan/judge.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace mend::plan {
namespace {

/// Looks for any plan within the horizon.
Planned anyPlan(const Problem& problem, std::int64_t steps)
{
    Effort effort;
    effort.steps = steps;
    bool found = false;
    effort.improved = [&](const Timetable&, const Score&) { found = true; };
    effort.enough = [&] { return found; };
    return planBench(problem, effort);
}

std::string tell(const test::ShopOptimum& shop)
{
    return shop.name + (shop.longestGap ? " gap " + std::to_string(*shop.longestGap) : "");
}

TEST(JobShop, FindsEveryPublishedOptimumAndProvesThatNothingIsShorter)
{
    int proven = 0;
    for (const test::ShopOptimum& shop : test::shopOptima()) {
        const Problem problem = test::jobShop(shop.name, shop.makespan, shop.longestGap);
        const Planned found = anyPlan(problem, 30'000'000);
        ASSERT_EQ(found.verdict, Planned::Verdict::Plan) << tell(shop);
        EXPECT_EQ(test::judge(problem, *found.table), std::vector<std::string>{}) << tell(shop);
        const std::vector<Minute> done = completions(problem, found.table->start);
        EXPECT_EQ(*std::max_element(done.begin(), done.end()), shop.makespan) << tell(shop);
        const Planned shorter = anyPlan(test::jobShop(shop.name, shop.makespan - 1, shop.longestGap), 30'000'000);
        EXPECT_NE(shorter.verdict, Planned::Verdict::Plan) << tell(shop);
        proven += shorter.verdict == Planned::Verdict::NoPlan ? 1 : 0;
    }
    EXPECT_EQ(proven, 31);
}

} // namespace
} // namespace mend::plan
