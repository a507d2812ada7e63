#include "core/service/clockwatch.h"

#include <QCoreApplication>
#include <QElapsedTimer>

#include <cstdint>
#include <gtest/gtest.h>
#include <sys/eventfd.h>
#include <unistd.h>

using namespace mend::service;

namespace {

void turnEvents(int milliseconds)
{
    QElapsedTimer since;
    since.start();
    while (since.elapsed() < milliseconds) {
        QCoreApplication::processEvents(QEventLoop::AllEvents, 5);
    }
}

} // namespace

TEST(ClockWatch, WatchesTheClockOfThisMachineAndKeepsStillWhileNobodySetsIt)
{
    // Nothing here may set the clock of the machine: that the kernel takes the timer, and that it does not fire, is
    // what can be asked.
    ClockWatch watch;
    ASSERT_TRUE(watch.isWatching());
    int told = 0;
    QObject::connect(&watch, &ClockWatch::clockSet, &watch, [&] { ++told; });
    turnEvents(50);
    EXPECT_EQ(told, 0);
}

TEST(ClockWatch, TellsOnceEachTimeTheClockIsSet)
{
    const int kernel = eventfd(0, EFD_NONBLOCK | EFD_CLOEXEC);
    ASSERT_GE(kernel, 0);
    const int mine = dup(kernel);
    ClockWatch watch(kernel);
    int told = 0;
    QObject::connect(&watch, &ClockWatch::clockSet, &watch, [&] { ++told; });
    for (int times = 1; times <= 3; ++times) {
        const std::uint64_t set = 1;
        ASSERT_EQ(write(mine, &set, sizeof(set)), static_cast<ssize_t>(sizeof(set)));
        turnEvents(20);
        EXPECT_EQ(told, times);
    }
    close(mine);
}

TEST(ClockWatch, DoesWithoutWhereTheKernelHasNoSuchTimer)
{
    const ClockWatch watch(-1);
    EXPECT_FALSE(watch.isWatching());
}
