#include "core/exchange/planreader.h"
#include "core/service/demobench.h"
#include "tests/desk/deskrun.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"

#include <QJsonArray>
#include <gtest/gtest.h>

#include <fstream>
#include <map>

namespace mend {
namespace {

namespace fs = std::filesystem;
using test::desk;
using test::DeskRan;

const std::string afternoon = "2026-11-25T15:00:00Z";

Instant instantOf(const QJsonValue& value)
{
    const auto at = fromRfc3339(value.toString().toStdString());
    EXPECT_TRUE(at.has_value()) << value.toString().toStdString();
    return at.value_or(Instant{});
}

/// The demo bench as it stood one afternoon.
class DeskBenchPlan : public testing::Test {
protected:
    void SetUp() override
    {
        const Moment now{*fromRfc3339("2026-11-25T15:00:00.000Z"), {"boot", std::chrono::hours(5)}};
        ASSERT_TRUE(service::prepareDemo(file, test::shippedRules(), now, QTimeZone::utc(), false));
    }

    test::Scratch scratch;
    fs::path file = scratch / "demo.mendbench";
};

} // namespace

TEST_F(DeskBenchPlan, SaysWhatNeedsHandsWhenAndByWhen)
{
    const DeskRan run = desk({"plan", file.string(), "--at", afternoon, "--seconds", "1", "--json"});
    ASSERT_EQ(run.code, 0) << run.err.toStdString();
    const QJsonObject plan = run.json();
    EXPECT_TRUE(plan[QStringLiteral("planned")].toBool());
    const QJsonArray hands = plan[QStringLiteral("hands")].toArray();
    ASSERT_GT(hands.size(), 10);
    std::map<QString, Instant> freeFrom;
    bool wipes = false;
    for (const auto& row : hands) {
        const Instant from = instantOf(row[QStringLiteral("from")]);
        Instant& free = freeFrom[row[QStringLiteral("person")].toString()];
        EXPECT_GE(from, free) << row[QStringLiteral("act")].toString().toStdString();
        free = instantOf(row[QStringLiteral("to")]);
        if (!row[QStringLiteral("startBy")].isNull()) {
            EXPECT_LE(from, instantOf(row[QStringLiteral("startBy")]));
        }
        wipes = wipes || row[QStringLiteral("stage")].toString() == QStringLiteral("wipeBack");
    }
    EXPECT_TRUE(wipes); // the demo's filler waits for it
}

TEST_F(DeskBenchPlan, SaysItInWordsForPeople)
{
    const DeskRan run = desk({"plan", file.string(), "--at", afternoon, "--seconds", "1"});
    ASSERT_EQ(run.code, 0) << run.err.toStdString();
    EXPECT_TRUE(run.out.startsWith(QStringLiteral("Plan at 15:00 for the rest of today\n"))) << run.out.toStdString();
    EXPECT_TRUE(run.out.contains(QStringLiteral("start by"))) << run.out.toStdString();
    for (const char* raw : {"wipeBack", "fillRun", "%1", "#2", "null"}) {
        EXPECT_FALSE(run.out.contains(QLatin1String(raw))) << raw << " in:\n" << run.out.toStdString();
    }
}

TEST_F(DeskBenchPlan, GivesTheBenchAsAProblemThatThePlannerTakes)
{
    const DeskRan run = desk({"plan", file.string(), "--at", afternoon, "--problem"});
    ASSERT_EQ(run.code, 0) << run.err.toStdString();
    const auto read = exchange::readPlanProblem(run.out.toStdString());
    ASSERT_TRUE(read.problem.has_value()) << (read.faults.empty() ? "" : read.faults.front().text);
    EXPECT_GT(read.problem->steps.size(), 20U);
    const fs::path problem = scratch / "problem.json";
    std::ofstream(problem) << run.out.toStdString();
    EXPECT_EQ(desk({"plan", problem.string(), "--seconds", "1"}).code, 0);
}

TEST_F(DeskBenchPlan, RefusesWhatItCannotMean)
{
    EXPECT_EQ(desk({"board", file.string(), "--problem"}).code, 2);
    const fs::path problem = scratch / "problem.json";
    std::ofstream(problem) << "{}";
    EXPECT_EQ(desk({"plan", problem.string(), "--problem"}).code, 2);
    EXPECT_EQ(desk({"plan", (scratch / "none").string()}).code, 2);
}

} // namespace mend
