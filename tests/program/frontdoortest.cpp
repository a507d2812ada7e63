#include "app/program/frontdoor.h"

#include "tests/support/scratch.h"

#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <atomic>
#include <gtest/gtest.h>
#include <thread>

namespace mend::app {
namespace {

using desktop::Knock;
using desktop::KnockAnswer;
using desktop::OneProgram;
using namespace std::chrono_literals;

QString path(const std::filesystem::path& file) { return QString::fromStdString(file.native()); }

/// A first program with a window, and second starts on a thread of their own, as another process would.
class TwoInOne : public testing::Test {
protected:
    TwoInOne()
    {
        EXPECT_TRUE(first.claim().isOk());
        first.setDoor([this](const Knock& knock) { return door.answer(knock); });
        QObject::connect(&door, &FrontDoor::raiseWanted, &window,
                         [this](const QString& token) { bringToFront(window, token); });
    }
    std::optional<SecondStart> start(const Knock& knock, std::chrono::milliseconds patience = 5s)
    {
        std::optional<SecondStart> second;
        std::atomic<bool> isOver = false;
        std::thread other([&] {
            OneProgram program(folder.path());
            second = enter(program, folder.path(), knock, patience);
            isOver = true;
        });
        static_cast<void>(QTest::qWaitFor([&] { return isOver.load(); }, 15'000));
        other.join();
        return second;
    }

    const test::Scratch scratch;
    const std::filesystem::path file = scratch / "bench.mendbench";
    QTemporaryDir folder;
    OneProgram first{folder.path()};
    FrontDoor door{file};
    QWidget window;
};

} // namespace

TEST_F(TwoInOne, ASecondStartShowsAndRaisesTheFirstWindowF15)
{
    window.showMinimized();
    for (const QString& asked : {QString(), path(file), path(scratch / "." / "bench.mendbench")}) {
        window.setWindowState(Qt::WindowMinimized);
        const auto second = start({asked, {}, {}});
        ASSERT_TRUE(second);
        EXPECT_EQ(second->code, 0);
        EXPECT_TRUE(window.isVisible());
        EXPECT_FALSE(window.isMinimized());
        EXPECT_TRUE(window.isActiveWindow());
    }
}

TEST_F(TwoInOne, AnotherFileIsRefusedWhileSomethingRunsOutUnlessItIsToldWhy)
{
    QSignalSpy wanted(&door, &FrontDoor::fileWanted);
    QSignalSpy kept(&door, &FrontDoor::keptFile);
    bool busy = true;
    door.setBusy([&] { return busy; });
    const QString other = path(scratch / "other.mendbench");
    EXPECT_EQ(start({other, {}, {}})->code, 1);
    EXPECT_EQ(kept.count(), 1);
    EXPECT_EQ(wanted.count(), 0);
    EXPECT_EQ(start({other, QStringLiteral("the owner is here"), {}})->code, 0);
    EXPECT_EQ(wanted.count(), 1);
    busy = false;
    EXPECT_EQ(start({other, {}, {}})->code, 0);
    EXPECT_EQ(wanted.count(), 2);
    EXPECT_EQ(wanted.last().first().toString(), other);
}

TEST_F(TwoInOne, WhoComesWhileTheFirstPutsItsBenchAwayBecomesTheFirst)
{
    door.leave();
    QTimer::singleShot(300, &window, [this] { first.leave(); });
    EXPECT_FALSE(start({}).has_value());
}

TEST_F(TwoInOne, NobodyWaitsForEverForAFirstThatDoesNotEnd)
{
    door.leave();
    const auto second = start({}, 300ms);
    ASSERT_TRUE(second);
    EXPECT_EQ(second->code, 1);
}

} // namespace mend::app
