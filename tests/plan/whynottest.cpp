#include "core/plan/whynot.h"

#include "tests/plan/judge.h"
#include "tests/plan/problems.h"

#include <gtest/gtest.h>

#include <random>

namespace mend::plan {
namespace {

/// A bench in the middle of a day at which somebody was kept away too long, or a window is shorter
/// than thought: often there is no plan any more.
Problem troubled(std::uint64_t seed)
{
    test::BenchKind kind;
    kind.pieces = 2 + static_cast<int>(seed % 4);
    kind.people = 1 + static_cast<int>(seed % 2);
    kind.midday = true;
    kind.crowded = seed % 4 == 0;
    Problem problem = test::inventBench(kind, seed);
    std::mt19937_64 random(seed);
    for (Lag& lag : problem.lags) {
        const Step& from = problem.steps[slot(lag.from)];
        if (lag.most && from.started && !problem.steps[slot(lag.to)].started) {
            const Minute closes = problem.now + static_cast<Minute>(random() % 12);
            lag.most = std::max(lag.least, closes - *from.started - from.duration);
        }
    }
    if (seed % 29 == 0) {
        problem.horizon = problem.now + 700;
    }
    return problem;
}

void expectWhyHolds(const Problem& problem, const WhyNot& why)
{
    ASSERT_FALSE(why.conflicts.empty()) << problem.name;
    const Conflict& first = why.conflicts.front();
    EXPECT_FALSE(first.strains.empty()) << problem.name;
    for (std::size_t i = 0; i < first.strains.size(); ++i) {
        if (first.without[i]) {
            EXPECT_EQ(test::judge(relaxed(problem, first.strains[i]), *first.without[i]), std::vector<std::string>{});
        }
    }
    for (const WayOut& way : why.waysOut) {
        EXPECT_EQ(test::judge(way.changed, way.plan), std::vector<std::string>{}) << problem.name;
    }
}

TEST(WhyNot, TellsAMinimalConflictOfEveryBenchOfTheSet)
{
    for (const std::string& name : test::benchmarkNames("infeasible")) {
        const Problem problem = test::benchmarkProblem(name);
        const WhyNot why = whyNot(problem);
        expectWhyHolds(problem, why);
        ASSERT_EQ(why.conflicts.size(), 1U) << name;
        EXPECT_TRUE(why.conflicts.front().eachIsEnough()) << name;
        EXPECT_LE(why.conflicts.front().strains.size(), 6U) << name;
        EXPECT_FALSE(why.waysOut.empty()) << name;
    }
}

TEST(WhyNot, NamesTheWindowAndTheHandsThatMeet)
{
    const WhyNot why = whyNot(test::benchmarkProblem("infeasible-01"));
    const Problem problem = test::benchmarkProblem("infeasible-01");
    const std::vector<Strain>& strains = why.conflicts.front().strains;
    ASSERT_EQ(strains.size(), 2U);
    EXPECT_EQ(strains[0].kind, Strain::Kind::Hands);
    EXPECT_EQ(strains[1].kind, Strain::Kind::Window);
    EXPECT_EQ(problem.steps[slot(problem.lags[slot(strains[1].which)].to)].id, "Q02.02-wipe");
    // Help comes before the loss of a window.
    EXPECT_EQ(why.waysOut.front().kind, WayOut::Kind::HelpingHand);
    EXPECT_EQ(why.waysOut.back().kind, WayOut::Kind::LetLapse);
    EXPECT_EQ(why.waysOut.back().minutes, 2);
}

TEST(WhyNot, HoldsOnRandomBenchesInTrouble)
{
    int none = 0;
    int enough = 0;
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        const Problem problem = troubled(seed);
        Effort effort;
        effort.steps = 50'000;
        if (planBench(problem, effort).verdict != Planned::Verdict::NoPlan) {
            continue;
        }
        ++none;
        const WhyNot why = whyNot(problem);
        expectWhyHolds(problem, why);
        enough += why.conflicts.front().eachIsEnough() ? 1 : 0;
    }
    EXPECT_GT(none, 12);
    EXPECT_GT(enough, none / 2);
}

TEST(WhyNot, NeverOffersToGoBelowAWaitOrToBringTogetherWhatMustStayApart)
{
    const WhyNot why = whyNot(test::benchmarkProblem("infeasible-03"));
    const Problem problem = test::benchmarkProblem("infeasible-03");
    for (const WayOut& way : why.waysOut) {
        EXPECT_EQ(way.changed.incompatible, problem.incompatible);
        for (std::size_t i = 0; i < way.changed.lags.size() && way.kind != WayOut::Kind::SetAside; ++i) {
            EXPECT_EQ(way.changed.lags[i].least, problem.lags[i].least);
        }
    }
}

TEST(WhyNot, ATripThroughTheNightIsToldAsHoursAndStayingOpenIsTheLeastThatHelps)
{
    // Filling has begun at 16:50; the bench shuts at 17:00; wiping takes 7 minutes, at most 12 after.
    Problem problem;
    problem.now = 1015;
    problem.horizon = 3000;
    problem.people = {"A"};
    problem.open = {{540, 1020}, {1980, 2460}};
    problem.pieces = {{"bowl", 1, 2000}};
    problem.steps.resize(2);
    problem.steps[0] = {"fill", 0, "", 10, true, {}, {}, {}, {}, 1010, 0};
    problem.steps[1] = {"wipe", 0, "", 7, true, {}, {}, {}, {}, {}, {}};
    problem.lags = {{0, 1, 2, 12}};
    const WhyNot why = whyNot(problem);
    expectWhyHolds(problem, why);
    ASSERT_FALSE(why.waysOut.empty());
    EXPECT_EQ(why.waysOut.front().kind, WayOut::Kind::StayOpen);
    EXPECT_EQ(why.waysOut.front().at, 1029); // wiping from 17:02 to 17:09
    EXPECT_EQ(why.waysOut.front().minutes, 9);
}

TEST(Strain, RelaxingAddsWhatIsMissingAndNothingElse)
{
    const Problem problem = test::benchmarkProblem("midday-01");
    for (const Strain& strain : strainsOf(problem)) {
        EXPECT_FALSE(relaxed(problem, strain) == problem) << static_cast<int>(strain.kind) << " " << strain.which;
    }
    EXPECT_EQ(relaxed(problem, {Strain::Kind::Hands, 0}).people.size(), problem.people.size() + 1);
    const Problem through = relaxed(problem, {Strain::Kind::Hours, 1});
    EXPECT_EQ(through.open.size() + 1, problem.open.size());
    EXPECT_EQ(through.open.front().to, problem.open[1].to);
}

} // namespace
} // namespace mend::plan
