#include "app/desktop/oneprogram.h"

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QFile>
#include <QLocalSocket>
#include <QProcess>
#include <QTemporaryDir>
#include <QTest>
#include <atomic>
#include <gtest/gtest.h>
#include <optional>
#include <thread>

using namespace mend;
using namespace mend::desktop;

namespace {

class OneProgramTest : public testing::Test {
protected:
    /// Knocks as a second start would, while the first goes on working.
    std::optional<KnockAnswer> knock(const Knock& asked)
    {
        std::optional<KnockAnswer> answer;
        std::atomic<bool> isDone = false;
        std::thread second([&] {
            answer = OneProgram::knock(folder.path(), asked);
            isDone = true;
        });
        static_cast<void>(QTest::qWaitFor([&] { return isDone.load(); }, 5000));
        second.join();
        return answer;
    }
    /// Another process that is the first program, until it is killed.
    bool startOther(QProcess& other) const
    {
        other.start(QCoreApplication::applicationFilePath(), {QStringLiteral("--hold"), folder.path()});
        return other.waitForReadyRead(5000) && other.readLine() == "held\n";
    }

    QTemporaryDir folder;
};

} // namespace

TEST_F(OneProgramTest, TheSecondIsToldThatThereIsAFirst)
{
    OneProgram first(folder.path());
    EXPECT_TRUE(first.claim().isOk());
    OneProgram second(folder.path());
    const Outcome outcome = second.claim();
    ASSERT_FALSE(outcome.isOk());
    EXPECT_EQ(outcome.fault().kind, FaultKind::Busy);
}

TEST_F(OneProgramTest, AKnockReachesTheFirstWordForWord)
{
    OneProgram first(folder.path());
    ASSERT_TRUE(first.claim().isOk());
    const Knock asked{QStringLiteral("/home/bench/zwei \"Schalen\"\n.mendbench"), QStringLiteral("öffnen"),
                      QStringLiteral("token-1")};
    std::optional<Knock> got;
    for (const KnockAnswer wanted : {KnockAnswer::Raised, KnockAnswer::Changed, KnockAnswer::Refused}) {
        first.setDoor([&](const Knock& knocked) {
            got = knocked;
            return wanted;
        });
        EXPECT_EQ(knock(asked), wanted);
        EXPECT_EQ(got, asked);
    }
}

TEST_F(OneProgramTest, UntilTheWindowStandsAKnockIsRefused)
{
    OneProgram first(folder.path());
    ASSERT_TRUE(first.claim().isOk());
    EXPECT_EQ(knock({}), KnockAnswer::Refused);
}

TEST_F(OneProgramTest, AHangingFirstDoesNotHoldTheSecondUp)
{
    OneProgram first(folder.path());
    ASSERT_TRUE(first.claim().isOk());
    QElapsedTimer timer;
    timer.start();
    // Called from the first's own thread, so it cannot answer.
    EXPECT_EQ(OneProgram::knock(folder.path(), {}), KnockAnswer::NoAnswer);
    EXPECT_LT(timer.elapsed(), 2000);
}

TEST_F(OneProgramTest, NoFirstAtAllIsNoAnswerInTime)
{
    QElapsedTimer timer;
    timer.start();
    EXPECT_EQ(OneProgram::knock(folder.path(), {}), KnockAnswer::NoAnswer);
    EXPECT_LT(timer.elapsed(), 2000);
}

TEST_F(OneProgramTest, NoiseAtTheDoorDisturbsNoOne)
{
    OneProgram first(folder.path());
    ASSERT_TRUE(first.claim().isOk());
    int opened = 0;
    first.setDoor([&opened](const Knock&) {
        ++opened;
        return KnockAnswer::Raised;
    });
    for (const QByteArray& noise : {QByteArray("\n"), QByteArray("[1]\n"), QByteArray("{\"file\"\n"),
                                    QByteArray(200'000, 'x'), QByteArray("no end of line")}) {
        QLocalSocket visitor;
        visitor.connectToServer(folder.filePath(QStringLiteral("mendbench.socket")));
        ASSERT_TRUE(visitor.waitForConnected(1000));
        visitor.write(noise);
        visitor.flush();
        QTest::qWait(30);
        EXPECT_FALSE(visitor.readAll().contains("raised"));
    }
    EXPECT_EQ(opened, 0);
    EXPECT_EQ(knock({}), KnockAnswer::Raised);
}

TEST_F(OneProgramTest, AKilledFirstLeavesThePlaceFree)
{
    QProcess other;
    ASSERT_TRUE(startOther(other));
    OneProgram next(folder.path());
    EXPECT_EQ(next.claim().fault().kind, FaultKind::Busy);
    other.kill();
    ASSERT_TRUE(other.waitForFinished(5000));
    ASSERT_TRUE(QFile::exists(folder.filePath(QStringLiteral("mendbench.socket")))); // it had no time to tidy up
    ASSERT_TRUE(next.claim().isOk());
    next.setDoor([](const Knock&) { return KnockAnswer::Raised; });
    EXPECT_EQ(knock({}), KnockAnswer::Raised);
}

TEST_F(OneProgramTest, AChildThatOutlivesTheFirstDoesNotKeepThePlace)
{
    QProcess child;
    {
        OneProgram first(folder.path());
        ASSERT_TRUE(first.claim().isOk());
        child.start(QStringLiteral("sleep"), {QStringLiteral("30")});
        ASSERT_TRUE(child.waitForStarted(5000));
    }
    OneProgram next(folder.path());
    EXPECT_TRUE(next.claim().isOk());
    child.kill();
    child.waitForFinished(5000);
}

TEST_F(OneProgramTest, ManyStartsAtOnceLeaveOneFirst)
{
    for (int round = 0; round < 20; ++round) {
        QTemporaryDir place;
        std::vector<std::unique_ptr<OneProgram>> programs;
        int firsts = 0;
        for (int i = 0; i < 5; ++i) {
            programs.push_back(std::make_unique<OneProgram>(place.path()));
            firsts += programs.back()->claim().isOk() ? 1 : 0;
        }
        EXPECT_EQ(firsts, 1);
    }
}

TEST(OneProgram, AFolderThatTakesNoLockIsSaid)
{
    OneProgram program(QStringLiteral("/nowhere"));
    const Outcome outcome = program.claim();
    ASSERT_FALSE(outcome.isOk());
    EXPECT_EQ(outcome.fault().kind, FaultKind::Unwritable);
}
