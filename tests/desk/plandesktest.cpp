#include "core/exchange/planreader.h"
#include "tests/desk/deskrun.h"
#include "tests/plan/judge.h"
#include "tests/plan/problems.h"
#include "tests/support/scratch.h"

#include <QJsonArray>
#include <gtest/gtest.h>

#include <fstream>

namespace mend {
namespace {

using test::DeskRan;

DeskRan deskPlan(std::vector<std::string> words)
{
    words.insert(words.begin(), "plan");
    return test::desk(words);
}

std::string benchmarkFile(const std::string& name) { return MEND_SOURCE_DIR "/tests/data/plan/" + name + ".json"; }

TEST(DeskPlan, PrintsAPlanThatHolds)
{
    const DeskRan ran = deskPlan({benchmarkFile("midday-01"), "--seed", "3"});
    ASSERT_EQ(ran.code, 0) << ran.err.toStdString();
    const plan::Problem problem = test::benchmarkProblem("midday-01");
    plan::Timetable table;
    const QJsonObject plan = ran.json();
    EXPECT_EQ(plan[QStringLiteral("instance")].toString(), QStringLiteral("midday-01"));
    EXPECT_EQ(plan[QStringLiteral("status")].toString(), QStringLiteral("optimal"));
    const QJsonArray steps = plan[QStringLiteral("steps")].toArray();
    ASSERT_EQ(static_cast<std::size_t>(steps.size()), problem.steps.size());
    for (const auto& step : steps) {
        table.start.push_back(step[QStringLiteral("start")].toInt());
        const QJsonValue person = step[QStringLiteral("person")];
        table.person.push_back(person.isNull() ? std::nullopt : std::optional(0));
    }
    EXPECT_TRUE(test::judge(problem, table).empty());
    EXPECT_EQ(test::judgedScore(problem, table).tardiness, 4164);
}

TEST(DeskPlan, SaysByItsEndingWhetherThereIsNone)
{
    const DeskRan none = deskPlan({benchmarkFile("infeasible-05"), "--json"});
    EXPECT_EQ(none.code, 3);
    EXPECT_TRUE(none.json()[QStringLiteral("proven")].toBool());
    EXPECT_FALSE(none.json()[QStringLiteral("planned")].toBool(true));
    const QJsonObject conflict = none.json()[QStringLiteral("conflicts")][0].toObject();
    EXPECT_EQ(conflict[QStringLiteral("strains")].toArray().size(), 2);
    EXPECT_EQ(conflict[QStringLiteral("strains")][1][QStringLiteral("at_most")].toInt(), 11);
    const DeskRan words = deskPlan({benchmarkFile("infeasible-05")});
    EXPECT_EQ(words.code, 3);
    EXPECT_TRUE(words.out.contains(QStringLiteral("Q03.02-wipe after Q03.01-fill at most 11 min")))
        << words.out.toStdString();
}

TEST(DeskPlan, PointsAtWhatIsWrongInAProblem)
{
    const test::Scratch scratch;
    const auto file = scratch / "bad.json";
    std::ofstream(file) << "{\n \"format\": 7\n}\n";
    const DeskRan bad = deskPlan({file.string()});
    EXPECT_EQ(bad.code, 2);
    EXPECT_TRUE(bad.err.contains(QStringLiteral("bad.json:1:1: \"name\" is missing"))) << bad.err.toStdString();
    EXPECT_EQ(deskPlan({"not/there.json"}).code, 2);
    EXPECT_EQ(deskPlan({benchmarkFile("small-01"), "--seconds", "soon"}).code, 2);
    EXPECT_EQ(deskPlan({}).code, 2);
}

} // namespace
} // namespace mend
