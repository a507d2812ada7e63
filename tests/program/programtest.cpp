// The whole program in a real window, by real clicks: a second start, a file that is moved away, one that can
// only be read, one that is damaged, and the way back to a backup.
#include "tests/trial/program.h"
#include "tests/store/benchmaker.h"
#include "tests/trial/screen.h"

#include "core/store/ownerlock.h"

#include <QDir>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTest>
#include <fstream>
#include <gtest/gtest.h>

namespace mend::test {

namespace fs = std::filesystem;

namespace {

/// Longer than a spot that has just changed waits before it takes a tap.
constexpr int handMs = 700;

class RealProgram : public testing::Test {
protected:
    void SetUp() override { ASSERT_FALSE(screen.display().isEmpty()); }

    void startDemo(const QStringList& more = {})
    {
        program.start(QStringList{QStringLiteral("--demo"), QStringLiteral("--size"), QStringLiteral("1280x800")} +
                      more);
        ASSERT_TRUE(program.waitForSpot(QStringLiteral("Wiped back, Heron bowl"), 20'000)) << qPrintable(program.all());
    }
    /// A real click on the spot whose name, or key, begins so.
    bool tap(const char* words)
    {
        const QString name = QString::fromUtf8(words);
        if (!program.waitForSpot(name, 10'000)) {
            return false;
        }
        QTest::qWait(handMs);
        const auto spot = program.spot(name);
        return spot && screen.click(spot->rect.center());
    }
    bool tapKey(const char* begin)
    {
        const QString key = QString::fromLatin1(begin);
        if (!program.waitForKey(key, 10'000)) {
            return false;
        }
        QTest::qWait(handMs);
        const auto spot = program.waitForKey(key, 100);
        return spot && screen.click(spot->rect.center());
    }
    bool reads(const char* words, int milliseconds = 10'000)
    {
        return program.waitForSpot(QString::fromUtf8(words), milliseconds, false).has_value();
    }
    fs::path demo() const { return program.home(QStringLiteral("data/mendbench/demo.mendbench")).toStdString(); }
    /// How often this was told, as the file says.
    static std::ptrdiff_t told(const fs::path& file, bench::What what)
    {
        const auto events = openOrDie(file, store::OpenMode::ReadOnly)->allEvents();
        return events ? std::ranges::count(events.value(), what, &bench::Event::what) : -1;
    }
    bool waitForTold(const fs::path& file, bench::What what, std::ptrdiff_t count)
    {
        return QTest::qWaitFor([&] { return told(file, what) == count; }, 10'000);
    }
    /// Of the window under the pointer, which is the one in front there.
    qint64 pidInFront() const
    {
        const QByteArray at = screen.ask({QStringLiteral("mousemove"), QStringLiteral("640"), QStringLiteral("400"),
                                          QStringLiteral("getmouselocation"), QStringLiteral("--shell")});
        const qsizetype from = at.indexOf("WINDOW=");
        const QByteArray window = at.mid(from + 7, at.indexOf('\n', from) - from - 7);
        return screen.ask({QStringLiteral("getwindowpid"), QString::fromLatin1(window)}).trimmed().toLongLong();
    }
    qint64 pidWithKeys() const
    {
        return screen.ask({QStringLiteral("getwindowfocus"), QStringLiteral("getwindowpid")}).trimmed().toLongLong();
    }
    Screen screen{{1280, 800}};
    Program program{screen.display()};
};

} // namespace

TEST_F(RealProgram, ASecondStartBringsTheFirstWindowToTheFrontF15)
{
    startDemo();
    Program other(screen.display()); // somebody else's, with a home of its own: it lies over the first
    other.start({QStringLiteral("--demo"), QStringLiteral("--size"), QStringLiteral("1280x800")});
    ASSERT_TRUE(other.waitForSpot(QStringLiteral("Wiped back, Heron bowl"), 20'000));
    ASSERT_TRUE(QTest::qWaitFor([&] { return pidInFront() == other.pid(); }, 5000));
    for (const QStringList& arguments : {QStringList{QStringLiteral("--demo")}, QStringList{}}) {
        const Program::Ended second = program.startAgain(arguments);
        EXPECT_EQ(second.code, 0) << second.said.constData();
        EXPECT_LE(second.milliseconds, 2000);
        EXPECT_TRUE(second.said.contains("comes to the front")) << second.said.constData();
        EXPECT_TRUE(QTest::qWaitFor([&] { return pidInFront() == program.pid(); }, 2000));
        EXPECT_TRUE(QTest::qWaitFor([&] { return pidWithKeys() == program.pid(); }, 2000));
        other.startAgain({}); // back over it
        ASSERT_TRUE(QTest::qWaitFor([&] { return pidInFront() == other.pid(); }, 5000));
    }
    EXPECT_TRUE(program.isRunning());
}

TEST_F(RealProgram, GoesOverToAnotherFileOnlyWhereNothingIsRunningOutOrItIsToldWhy)
{
    startDemo();
    const QString file = program.home(QStringLiteral("other.mendbench"));
    const Program::Ended kept = program.startAgain({file});
    EXPECT_EQ(kept.code, 1);
    EXPECT_TRUE(kept.said.contains("--because")) << kept.said.constData();
    EXPECT_TRUE(reads(qPrintable(file))) << qPrintable(program.all());
    EXPECT_FALSE(QFile::exists(file));
    const Program::Ended changed = program.startAgain({file, QStringLiteral("--because"), QStringLiteral("a trial")});
    EXPECT_EQ(changed.code, 0) << changed.said.constData();
    EXPECT_TRUE(QTest::qWaitFor([&] { return QFile::exists(file); }, 10'000));
    EXPECT_TRUE(program.waitUntilGone(QStringLiteral("Wiped back, Heron bowl"), 10'000));
    EXPECT_TRUE(program.isRunning());
}

TEST_F(RealProgram, BacksUpAfterTheFirstChangeOfADayAndWhenItIsClosed)
{
    startDemo();
    const QDir folder(program.home(QStringLiteral("data/mendbench/backups/demo")));
    const auto newest = [&] {
        const QStringList all = folder.entryList({QStringLiteral("bench-*.mendbackup")}, QDir::Files, QDir::Name);
        return all.isEmpty() ? QString() : folder.filePath(all.last());
    };
    ASSERT_TRUE(QTest::qWaitFor([&] { return !newest().isEmpty(); }, 20'000));
    const QString first = newest();
    ASSERT_TRUE(tap("Wiped back, Heron bowl"));
    ASSERT_TRUE(program.waitForSpot(QStringLiteral("Undo"), 5000));
    QTest::qWait(1000);
    EXPECT_EQ(newest(), first) << "one a day while it runs";
    EXPECT_LT(told(first.toStdString(), bench::What::Done), told(demo(), bench::What::Done));
    program.askToEnd();
    int code = -1;
    ASSERT_TRUE(program.waitUntilEnded(30'000, &code));
    EXPECT_EQ(code, 0);
    EXPECT_EQ(told(newest().toStdString(), bench::What::Done), told(demo(), bench::What::Done));
}

TEST_F(RealProgram, GoesBackToABackupThatAPersonPicksAndKeepsWhatStoodThere)
{
    startDemo();
    const std::ptrdiff_t before = told(demo(), bench::What::Done);
    // The backup of the start is made some seconds after it.
    ASSERT_TRUE(QTest::qWaitFor(
        [&] {
            return !QDir(program.home(QStringLiteral("data/mendbench/backups/demo")))
                        .entryList({QStringLiteral("bench-*")}, QDir::Files)
                        .isEmpty();
        },
        20'000));
    ASSERT_TRUE(tap("Wiped back, Heron bowl"));
    ASSERT_TRUE(waitForTold(demo(), bench::What::Done, before + 1));
    ASSERT_TRUE(tap("Settings"));
    ASSERT_TRUE(tapKey("settings/10"));
    ASSERT_TRUE(tapKey("backup/bench-"));
    EXPECT_TRUE(reads("Pieces in the house then")) << qPrintable(program.all());
    EXPECT_TRUE(reads("The last thing told in it"));
    ASSERT_TRUE(tap("Go back to this one")) << qPrintable(program.all());
    EXPECT_TRUE(reads("The bench goes on from the backup. The file that stood here is kept as demo.mendbench.kept-"))
        << qPrintable(program.all());
    EXPECT_TRUE(program.waitForSpot(QStringLiteral("Wiped back, Heron bowl"), 10'000)) << qPrintable(program.all());
    EXPECT_EQ(told(demo(), bench::What::Done), before);
    const QDir folder(program.home(QStringLiteral("data/mendbench")));
    const QStringList kept = folder.entryList({QStringLiteral("demo.mendbench.kept-*")}, QDir::Files);
    ASSERT_EQ(kept.size(), 1);
    EXPECT_EQ(told(folder.filePath(kept.first()).toStdString(), bench::What::Done), before + 1);
    ASSERT_TRUE(tap("Wiped back, Heron bowl")); // and it takes what is told
    EXPECT_TRUE(waitForTold(demo(), bench::What::Done, before + 1));
}

TEST_F(RealProgram, SpeaksAnotherLanguageAtOnceAndAfterARestart)
{
    startDemo();
    ASSERT_TRUE(tap("Settings"));
    ASSERT_TRUE(tapKey("settings/11"));
    ASSERT_TRUE(tapKey("language/de"));
    EXPECT_TRUE(reads("Das Fenster wird sofort neu geschrieben")) << qPrintable(program.all());
    ASSERT_TRUE(tap("Werktisch")) << "the rail speaks it too";
    EXPECT_TRUE(program.waitForSpot(QStringLiteral("Wiped back, Heron bowl"), 10'000)) << "a rule keeps its words";
    program.askToEnd();
    ASSERT_TRUE(program.waitUntilEnded(30'000));
    program.start({QStringLiteral("--demo"), QStringLiteral("--size"), QStringLiteral("1280x800")});
    ASSERT_TRUE(tap("Einstellungen")) << qPrintable(program.all());
    ASSERT_TRUE(tapKey("settings/11"));
    ASSERT_TRUE(tapKey("language/en"));
    EXPECT_TRUE(reads("The window is written anew at once")) << qPrintable(program.all());
}

TEST_F(RealProgram, SaysWithinAMinuteThatItsFileIsGoneAndGoesOnElsewhereF19)
{
    startDemo();
    const std::ptrdiff_t before = told(demo(), bench::What::Done);
    const fs::path away = demo().parent_path() / "away.moved";
    fs::rename(demo(), away);
    ASSERT_TRUE(reads("The bench file was moved or removed", 60'000)) << qPrintable(program.all());
    ASSERT_TRUE(tap("Wiped back, Heron bowl")) << "what is told is kept, though it cannot be stored";
    QTest::qWait(1500);
    EXPECT_FALSE(fs::exists(demo())) << "nothing new is put in its place";
    ASSERT_TRUE(tapKey("banner/store"));
    ASSERT_TRUE(tapKey("saveas/keep")) << qPrintable(program.all());
    EXPECT_TRUE(reads("The bench goes on in ")) << qPrintable(program.all());
    const fs::path there = demo().parent_path() / "demo-2.mendbench";
    EXPECT_TRUE(waitForTold(there, bench::What::Done, before + 1));
    EXPECT_EQ(told(away, bench::What::Done), before) << "nothing was written there any more";
    EXPECT_TRUE(program.waitUntilGone(QStringLiteral("The bench file was moved"), 5000, false));
}

TEST_F(RealProgram, ReadsWhatItMayNotWriteAndTakesNoTapF9)
{
    startDemo();
    program.kill();
    // A folder is writable for root whatever its mode says; a file system of another machine is not written by
    // anyone: the file under two locks cannot be had here, so the mount is asked for.
    const fs::path mount = program.home(QStringLiteral("mount")).toStdString();
    fs::create_directories(mount);
    fs::copy_file(demo(), mount / "bench.mendbench");
    const std::string bind = "mount --bind " + mount.string() + " " + mount.string() + " && mount -o remount,bind,ro " +
                             mount.string() + " 2>/dev/null";
    if (std::system(bind.c_str()) != 0) { // NOLINT(concurrency-mt-unsafe): one thread
        GTEST_SKIP() << "no rights here to mount a folder for reading";
    }
    program.start({QString::fromStdString((mount / "bench.mendbench").string())});
    EXPECT_TRUE(reads("This bench can only be read", 20'000)) << qPrintable(program.all());
    EXPECT_TRUE(program.waitForSpot(QStringLiteral("Wiped back, Heron bowl"), 5000, false)) << "seen, not to be tapped";
    EXPECT_FALSE(program.spot(QStringLiteral("Wiped back, Heron bowl")));
    EXPECT_TRUE(program.spot(QStringLiteral("Settings")));
    ASSERT_TRUE(tapKey("banner/standing-file"));
    ASSERT_TRUE(tapKey("saveas/keep"));
    EXPECT_TRUE(reads("The bench goes on in ")) << qPrintable(program.all());
    EXPECT_TRUE(program.waitForSpot(QStringLiteral("Wiped back, Heron bowl"), 10'000)) << qPrintable(program.all());
    program.kill();
    std::system(("umount " + mount.string()).c_str()); // NOLINT(concurrency-mt-unsafe)
}

TEST_F(RealProgram, OffersTheBackupsOfADamagedFileAndKeepsItAsideF10F11)
{
    startDemo();
    const QDir backups(program.home(QStringLiteral("data/mendbench/backups/demo")));
    ASSERT_TRUE(QTest::qWaitFor([&] { return !backups.entryList({QStringLiteral("bench-*")}).isEmpty(); }, 20'000));
    program.kill();
    fs::resize_file(demo(), 0);
    program.start({QString::fromStdString(demo().string())});
    EXPECT_TRUE(reads("This bench file is damaged", 20'000)) << qPrintable(program.all());
    EXPECT_EQ(fs::file_size(demo()), 0U);
    ASSERT_TRUE(tapKey("backup/bench-"));
    ASSERT_TRUE(tap("Go back to this one")) << qPrintable(program.all());
    EXPECT_TRUE(program.waitForSpot(QStringLiteral("Wiped back, Heron bowl"), 20'000)) << qPrintable(program.all());
    const QStringList kept = QDir(program.home(QStringLiteral("data/mendbench")))
                                 .entryList({QStringLiteral("demo.mendbench.kept-*")}, QDir::Files);
    ASSERT_EQ(kept.size(), 1);
    EXPECT_EQ(QFile(program.home(QStringLiteral("data/mendbench/") + kept.first())).size(), 0);
}

TEST_F(RealProgram, AsksBeforeItTakesAFileFromAnotherMachineF16F17)
{
    startDemo();
    program.kill();
    std::ofstream(store::OwnerLock::fileFor(demo()), std::ios::trunc) << "12\nelsewhere/machine\n";
    program.start({QString::fromStdString(demo().string())});
    EXPECT_TRUE(reads("This bench is open already (pid 12 on elsewhere/machine)", 20'000)) << qPrintable(program.all());
    ASSERT_TRUE(tap("It is closed there: open it here"));
    EXPECT_TRUE(program.waitForSpot(QStringLiteral("Wiped back, Heron bowl"), 20'000)) << qPrintable(program.all());
}

TEST_F(RealProgram, SaysWhyItOpensNoStrangersFileF13F14)
{
    const QString file = program.home(QStringLiteral("letter.db"));
    std::ofstream(file.toStdString()) << "Dear Ines, the bowl came back whole.";
    program.start({file});
    EXPECT_TRUE(reads("This is not a bench file", 20'000)) << qPrintable(program.all());
    ASSERT_TRUE(tap("Close"));
    int code = -1;
    ASSERT_TRUE(program.waitUntilEnded(5000, &code));
    EXPECT_EQ(code, 2);
}

} // namespace mend::test
