#include "core/plan/exact.h"

#include "core/plan/check.h"
#include "core/plan/planner.h"
#include "tests/plan/judge.h"
#include "tests/plan/problems.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

namespace mend::plan {
namespace {

/// The best score of all plans there are, by trying every minute for every step.
std::optional<Score> bestOfAll(const Problem& problem)
{
    std::optional<Score> best;
    std::vector<Minute> start(problem.steps.size(), 0);
    const std::function<void(std::size_t)> tryFrom = [&](std::size_t i) {
        if (i == problem.steps.size()) {
            const auto table = staffed(problem, start);
            if (!table || (best && test::judgedScore(problem, *table) >= *best)) {
                return;
            }
            if (test::judge(problem, *table).empty()) {
                best = test::judgedScore(problem, *table);
            }
            return;
        }
        const Step& step = problem.steps[i];
        const Minute first = step.started.value_or(problem.now);
        const Minute last = step.started.value_or(problem.horizon - step.duration);
        for (start[i] = first; start[i] <= last; ++start[i]) {
            // Only to leave hopeless branches early.
            bool holds = step.started || !step.hands ||
                         std::any_of(problem.open.begin(), problem.open.end(), [&](const Stretch& open) {
                             return open.from <= start[i] && start[i] + step.duration <= open.to;
                         });
            for (const Lag& lag : problem.lags) {
                if (std::max(slot(lag.from), slot(lag.to)) != i ||
                    (problem.steps[slot(lag.from)].started && problem.steps[slot(lag.to)].started)) {
                    continue;
                }
                const Minute gap = start[slot(lag.to)] - start[slot(lag.from)] - problem.steps[slot(lag.from)].duration;
                holds = holds && gap >= lag.least && (!lag.most || gap <= *lag.most);
            }
            if (holds) {
                tryFrom(i + 1);
            }
        }
    };
    tryFrom(0);
    return best;
}

TEST(Exact, AgreesWithTryingEveryPlanOfTinyBenches)
{
    int planned = 0;
    int none = 0;
    for (std::uint64_t seed = 0; seed < 8000; ++seed) {
        const Problem problem = test::inventTiny(seed);
        const std::optional<Score> best = bestOfAll(problem);
        const Planned found = planBench(problem, {});
        EXPECT_FALSE(found.refused) << problem.name;
        ASSERT_EQ(found.verdict, best ? Planned::Verdict::Plan : Planned::Verdict::NoPlan) << problem.name;
        if (best) {
            ++planned;
            ASSERT_TRUE(test::judge(problem, *found.table).empty()) << problem.name;
            EXPECT_EQ(found.score.tardiness, best->tardiness) << problem.name;
            EXPECT_EQ(found.score.flow, best->flow) << problem.name;
            EXPECT_TRUE(found.promisesProven && found.flowProven);
        } else {
            ++none;
        }
    }
    EXPECT_GT(planned, 2000);
    EXPECT_GT(none, 1000);
}

} // namespace
} // namespace mend::plan
