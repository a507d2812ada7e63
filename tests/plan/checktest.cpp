#include "core/plan/check.h"

#include "core/plan/planner.h"
#include "tests/plan/judge.h"
#include "tests/plan/problems.h"

#include <gtest/gtest.h>

#include <random>
#include <set>

namespace mend::plan {
namespace {

std::string code(Broken what)
{
    switch (what) {
    case Broken::StartedMoved:
        return "STARTED-MOVED";
    case Broken::StartedPerson:
        return "STARTED-PERSON";
    case Broken::BeforeNow:
        return "BEFORE-NOW";
    case Broken::AfterHorizon:
        return "AFTER-HORIZON";
    case Broken::Earliest:
        return "EARLIEST";
    case Broken::LatestEnd:
        return "LATEST-END";
    case Broken::NoPerson:
        return "NO-PERSON";
    case Broken::PersonOnUnattended:
        return "PERSON-ON-UNATTENDED";
    case Broken::BenchClosed:
        return "BENCH-CLOSED";
    case Broken::LagMin:
        return "LAG-MIN";
    case Broken::LagMax:
        return "LAG-MAX";
    case Broken::PersonOverlap:
        return "PERSON-OVERLAP";
    case Broken::Capacity:
        return "CAPACITY";
    case Broken::Incompatible:
        return "INCOMPATIBLE";
    }
    return {};
}

/// Two ways to judge, one by stretches and one by minutes, on tables spoilt at random: the same
/// codes come out of both, and every code there is comes up.
TEST(Check, AgreesWithTheMinuteByMinuteJudgeOnSpoiltPlans)
{
    std::mt19937_64 random(5);
    std::set<std::string> seen;
    for (std::uint64_t seed = 0; seed < 600; ++seed) {
        test::BenchKind kind;
        kind.people = 1 + static_cast<int>(seed % 3);
        kind.midday = seed % 2 == 0;
        const Problem problem = seed % 2 == 0 ? test::inventTiny(seed) : test::inventBench(kind, seed);
        Effort effort;
        effort.steps = 2000;
        const Planned planned = planBench(problem, effort);
        if (!planned.table) {
            continue;
        }
        EXPECT_TRUE(violations(problem, *planned.table).empty());
        for (int spoil = 0; spoil < 4; ++spoil) {
            Timetable table = *planned.table;
            for (int times = 0; times < 3; ++times) {
                const std::size_t i = random() % table.start.size();
                table.start[i] += static_cast<Minute>(random() % 9) - 4;
                if (random() % 4 == 0) {
                    table.person[i] = table.person[i] ? std::nullopt : std::optional(0);
                }
                if (random() % 4 == 0 && table.person[i]) {
                    table.person[i] = static_cast<int>(random() % problem.people.size());
                }
            }
            std::set<std::string> ours;
            for (const Violation& violation : violations(problem, table)) {
                ours.insert(code(violation.what));
            }
            std::set<std::string> theirs;
            for (const std::string& line : test::judge(problem, table)) {
                theirs.insert(line.substr(0, line.find(' ')));
            }
            ASSERT_EQ(ours, theirs) << problem.name << " " << spoil;
            seen.insert(ours.begin(), ours.end());
        }
    }
    EXPECT_EQ(seen.size(), 14U);
}

} // namespace
} // namespace mend::plan
