#include "app/desktop/sleepwatch.h"

#include "tests/desktop/fakedesktop.h"
#include "tests/support/messagebus.h"

#include <QTest>
#include <gtest/gtest.h>

using namespace mend::desktop;
using namespace mend::test;

TEST(SleepWatch, BracketsSleep)
{
    MessageBus bus;
    FakeLogin login(bus.connection(QStringLiteral("machine")));
    SleepWatch watch(bus.connection(QStringLiteral("program")));
    ASSERT_TRUE(QTest::qWaitFor([&] { return watch.offer() == Offer::Present; }, 3000));
    std::string told;
    QObject::connect(&watch, &SleepWatch::aboutToSleep, &watch, [&told] { told += "sleep "; });
    QObject::connect(&watch, &SleepWatch::woke, &watch, [&told] { told += "woke "; });
    Q_EMIT login.PrepareForSleep(true);
    Q_EMIT login.PrepareForSleep(false);
    EXPECT_TRUE(QTest::qWaitFor([&] { return told == "sleep woke "; }, 3000));
}

TEST(SleepWatch, IsAbsentWhereNoOneTells)
{
    MessageBus bus;
    SleepWatch watch(bus.connection(QStringLiteral("program")));
    EXPECT_TRUE(QTest::qWaitFor([&] { return watch.offer() == Offer::Absent; }, 3000));
}
