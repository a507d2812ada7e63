#include "app/desktop/bus.h"

#include "app/desktop/keepawake.h"
#include "app/desktop/notifier.h"
#include "app/desktop/sleepwatch.h"

#include <QElapsedTimer>
#include <QTemporaryDir>
#include <gtest/gtest.h>

using namespace mend::desktop;

namespace {

/// A login with no bus of any kind, put back as it was afterwards.
class NoBus : public testing::TestWithParam<const char*> {
protected:
    void SetUp() override
    {
        qputenv("XDG_RUNTIME_DIR", folder.path().toUtf8());
        if (*GetParam() != '\0') {
            qputenv("DBUS_SESSION_BUS_ADDRESS", GetParam());
        } else {
            qunsetenv("DBUS_SESSION_BUS_ADDRESS");
        }
        qputenv("DBUS_SYSTEM_BUS_ADDRESS", "unix:path=/nowhere/bus");
    }
    void TearDown() override
    {
        qputenv("XDG_RUNTIME_DIR", runtime);
        qputenv("DBUS_SESSION_BUS_ADDRESS", session);
        if (session.isNull()) {
            qunsetenv("DBUS_SESSION_BUS_ADDRESS");
        }
        qunsetenv("DBUS_SYSTEM_BUS_ADDRESS");
    }
    QTemporaryDir folder;
    QByteArray runtime = qgetenv("XDG_RUNTIME_DIR");
    QByteArray session = qgetenv("DBUS_SESSION_BUS_ADDRESS");
};

} // namespace

TEST_P(NoBus, CostsNothingAndIsToldAsAValue)
{
    QElapsedTimer timer;
    timer.start();
    Notifier notifier(sessionBus());
    SleepWatch sleep(systemBus());
    KeepAwake awake(sessionBus(), systemBus());
    awake.hold(QStringLiteral("A window is open on the bench"));
    notifier.show({QStringLiteral("k"), QStringLiteral("Wipe back"), QStringLiteral("2604175"), QString()});
    notifier.withdraw(QStringLiteral("k"));
    EXPECT_EQ(notifier.offer(), Offer::Absent);
    EXPECT_EQ(sleep.offer(), Offer::Absent);
    EXPECT_EQ(awake.state(), KeepAwake::State::Refused);
    awake.release();
    EXPECT_EQ(awake.state(), KeepAwake::State::Released);
    EXPECT_LT(timer.elapsed(), 3000); // the whole start may take 3 s
}

INSTANTIATE_TEST_SUITE_P(Desktop, NoBus, testing::Values("", "unix:path=/nowhere/bus"));
