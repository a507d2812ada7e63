#include "app/desktop/keepawake.h"

#include "tests/desktop/fakedesktop.h"
#include "tests/support/messagebus.h"

#include <QTest>
#include <gtest/gtest.h>

using namespace mend::desktop;
using namespace mend::test;

namespace {

using State = KeepAwake::State;
using Cover = KeepAwake::Cover;

/// One private bus plays both the login's and the machine's.
class AwakeTest : public testing::Test {
protected:
    void SetUp() override { ASSERT_FALSE(bus.address().isEmpty()); }
    bool waitFor(State state)
    {
        return QTest::qWaitFor([&] { return awake.state() == state; }, 3000);
    }

    MessageBus bus;
    QDBusConnection desktop = bus.connection(QStringLiteral("desktop"));
    QDBusConnection program = bus.connection(QStringLiteral("program"));
    KeepAwake awake{program, program};
    const QString reason = QStringLiteral("A window is open on the bench");
};

} // namespace

TEST_F(AwakeTest, AsksThePortalForSuspendAndIdleAndGivesBackAtOnce)
{
    FakePortal portal(desktop);
    FakeRequest request(desktop, 1);
    awake.hold(reason);
    ASSERT_TRUE(waitFor(State::Held));
    EXPECT_EQ(portal.flags, QList<uint>{12});
    EXPECT_EQ(portal.reason, reason);
    EXPECT_EQ(awake.cover(), (Cover{true, true}));
    awake.hold(reason);
    awake.release();
    EXPECT_EQ(awake.state(), State::Released);
    EXPECT_TRUE(QTest::qWaitFor([&] { return request.closed == 1; }, 1000));
    EXPECT_EQ(portal.flags.size(), 1);
}

TEST_F(AwakeTest, ReleasedWhileStillAskedIsGivenStraightBack)
{
    FakePortal portal(desktop);
    FakeRequest first(desktop, 1);
    FakeRequest second(desktop, 2);
    awake.hold(reason);
    awake.release();
    EXPECT_TRUE(QTest::qWaitFor([&] { return first.closed == 1; }, 1000));
    EXPECT_EQ(awake.state(), State::Released);
    awake.hold(reason);
    ASSERT_TRUE(waitFor(State::Held));
    EXPECT_EQ(second.closed, 0);
}

TEST_F(AwakeTest, FallsBackToScreenSaverAndLogin)
{
    FakePortal portal(desktop);
    portal.refusals = 1;
    FakeScreenSaver saver(desktop);
    FakeLogin login(desktop);
    awake.hold(reason);
    ASSERT_TRUE(waitFor(State::Held));
    EXPECT_EQ(saver.held, QList<uint>{7});
    EXPECT_EQ(login.what, QStringLiteral("sleep:idle"));
    EXPECT_EQ(login.mode, QStringLiteral("block"));
    EXPECT_TRUE(login.isHeld());
    awake.release();
    EXPECT_TRUE(QTest::qWaitFor([&] { return saver.held.isEmpty() && !login.isHeld(); }, 1000));
}

TEST_F(AwakeTest, SaysWhatAScreenSaverAloneCovers)
{
    FakeScreenSaver saver(desktop);
    awake.hold(reason);
    ASSERT_TRUE(waitFor(State::Held));
    EXPECT_EQ(awake.cover(), (Cover{true, false}));
}

TEST_F(AwakeTest, IsRefusedWhereNothingGrantsItAndMayAskAgain)
{
    awake.hold(reason);
    ASSERT_TRUE(waitFor(State::Refused));
    FakePortal portal(desktop);
    awake.hold(reason);
    EXPECT_TRUE(waitFor(State::Held));
}

TEST_F(AwakeTest, LetsGoWhenItEnds)
{
    FakeLogin login(desktop);
    {
        KeepAwake passing(program, program);
        passing.hold(reason);
        ASSERT_TRUE(QTest::qWaitFor([&] { return passing.state() == State::Held; }, 3000));
        EXPECT_TRUE(login.isHeld());
    }
    EXPECT_TRUE(QTest::qWaitFor([&] { return !login.isHeld(); }, 1000));
}
