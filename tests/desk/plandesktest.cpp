#include "core/exchange/planreader.h"
#include "tests/plan/judge.h"
#include "tests/plan/problems.h"
#include "tests/support/scratch.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <gtest/gtest.h>

#include <fstream>

namespace mend {
namespace {

struct PlanRan {
    int code = -1;
    QByteArray out;
    QByteArray err;
    QJsonObject json() const { return QJsonDocument::fromJson(out).object(); }
};

PlanRan deskPlan(const QStringList& words)
{
    QProcess process;
    process.start(QStringLiteral(MEND_DESK), QStringList{QStringLiteral("plan")} + words);
    if (!process.waitForFinished(60'000)) {
        return {};
    }
    return {process.exitCode(), process.readAllStandardOutput(), process.readAllStandardError()};
}

QString benchmarkFile(const char* name)
{
    return QStringLiteral(MEND_SOURCE_DIR "/tests/data/plan/%1.json").arg(QString::fromLatin1(name));
}

TEST(DeskPlan, PrintsAPlanThatHolds)
{
    const PlanRan ran = deskPlan({benchmarkFile("midday-01"), QStringLiteral("--seed"), QStringLiteral("3")});
    ASSERT_EQ(ran.code, 0) << ran.err.toStdString();
    const plan::Problem problem = test::benchmarkProblem("midday-01");
    plan::Timetable table;
    const QJsonObject plan = ran.json();
    EXPECT_EQ(plan[QStringLiteral("instance")].toString(), QStringLiteral("midday-01"));
    EXPECT_EQ(plan[QStringLiteral("status")].toString(), QStringLiteral("optimal"));
    const QJsonArray steps = plan[QStringLiteral("steps")].toArray();
    ASSERT_EQ(static_cast<std::size_t>(steps.size()), problem.steps.size());
    for (const QJsonValue& step : steps) {
        table.start.push_back(step[QStringLiteral("start")].toInt());
        const QJsonValue person = step[QStringLiteral("person")];
        table.person.push_back(person.isNull() ? std::nullopt : std::optional(0));
    }
    EXPECT_TRUE(test::judge(problem, table).empty());
    EXPECT_EQ(test::judgedScore(problem, table).tardiness, 4164);
}

TEST(DeskPlan, SaysByItsEndingWhetherThereIsNone)
{
    const PlanRan none = deskPlan({benchmarkFile("infeasible-05"), QStringLiteral("--json")});
    EXPECT_EQ(none.code, 3);
    EXPECT_TRUE(none.json()[QStringLiteral("proven")].toBool());
    EXPECT_FALSE(none.json()[QStringLiteral("planned")].toBool(true));
    const QJsonObject conflict = none.json()[QStringLiteral("conflicts")][0].toObject();
    EXPECT_EQ(conflict[QStringLiteral("strains")].toArray().size(), 2);
    EXPECT_EQ(conflict[QStringLiteral("strains")][1][QStringLiteral("at_most")].toInt(), 11);
    const PlanRan words = deskPlan({benchmarkFile("infeasible-05")});
    EXPECT_EQ(words.code, 3);
    EXPECT_TRUE(words.out.contains("Q03.02-wipe after Q03.01-fill at most 11 min")) << words.out.toStdString();
}

TEST(DeskPlan, PointsAtWhatIsWrongInAProblem)
{
    const test::Scratch scratch;
    const auto file = scratch / "bad.json";
    std::ofstream(file) << "{\n \"format\": 7\n}\n";
    const PlanRan bad = deskPlan({QString::fromStdString(file.string())});
    EXPECT_EQ(bad.code, 2);
    EXPECT_TRUE(bad.err.contains("bad.json:1:1: \"name\" is missing")) << bad.err.toStdString();
    EXPECT_EQ(deskPlan({QStringLiteral("not/there.json")}).code, 2);
    EXPECT_EQ(deskPlan({benchmarkFile("small-01"), QStringLiteral("--seconds"), QStringLiteral("soon")}).code, 2);
    EXPECT_EQ(deskPlan({}).code, 2);
}

} // namespace
} // namespace mend
