#include "app/program/upkeep.h"

#include "tests/store/benchmaker.h"
#include "tests/support/fakeclock.h"
#include "tests/support/scratch.h"

#include <QElapsedTimer>
#include <QSignalSpy>
#include <QTest>
#include <fstream>
#include <gtest/gtest.h>

namespace mend::app {
namespace {

using namespace std::chrono_literals;
using bench::What;
using test::benchStart;
using test::someEvent;

class UpkeepTest : public testing::Test {
protected:
    UpkeepTest() { open({}); }
    void open(std::optional<Instant> lastTold)
    {
        upkeep.reset();
        keeping.reset();
        auto store = test::openOrDie(file);
        if (!store->piecesInHand().value().empty()) {
            next = store->nextEventId().value();
        } else {
            test::furnish(*store);
        }
        keeping =
            std::make_unique<Keeping>(std::move(store), [](const auto&) { return std::vector<store::RuleText>(); });
        upkeep = std::make_unique<Upkeep>(*keeping, clock, Upkeep::File{file, true, lastTold});
    }
    void tell()
    {
        QSignalSpy stored(keeping.get(), &Keeping::written);
        keeping->keep({someEvent(next++, What::Done)});
        ASSERT_TRUE(stored.count() > 0 || stored.wait(5000));
    }
    /// Waits out what may be on its way.
    std::size_t backups()
    {
        QTest::qWait(150);
        return upkeep->backups().size();
    }
    bool waitForBackups(std::size_t count)
    {
        return QTest::qWaitFor([&] { return upkeep->backups().size() == count; }, 5000);
    }

    const test::Scratch scratch;
    const std::filesystem::path file = scratch / "bench.mendbench";
    test::FakeClock clock{benchStart};
    std::int64_t next = 1;
    std::unique_ptr<Keeping> keeping;
    std::unique_ptr<Upkeep> upkeep;
};

TEST_F(UpkeepTest, BacksUpAfterTheFirstChangeOfEachDayAndOnlyThen)
{
    upkeep->begin();
    EXPECT_EQ(backups(), 0U) << "nothing was told: nothing to keep";
    tell();
    ASSERT_TRUE(waitForBackups(1));
    clock.pass(2h);
    tell();
    tell();
    EXPECT_EQ(backups(), 1U);
    clock.pass(24h);
    EXPECT_EQ(backups(), 1U) << "a day without a change needs none";
    tell();
    EXPECT_TRUE(waitForBackups(2));
}

TEST_F(UpkeepTest, MakesNoneBeforeTheBenchStands)
{
    tell();
    EXPECT_EQ(backups(), 0U);
    upkeep->begin();
    EXPECT_TRUE(waitForBackups(1)) << "what was told meanwhile is seen to then";
}

TEST_F(UpkeepTest, BacksUpAtTheEndWhatWasChangedSince)
{
    upkeep->begin();
    tell();
    ASSERT_TRUE(waitForBackups(1));
    QTest::qWait(100);
    upkeep->finish(5s);
    EXPECT_EQ(upkeep->backups().size(), 1U) << "nothing was changed since";
    clock.pass(1h);
    tell();
    upkeep->finish(5s);
    ASSERT_EQ(upkeep->backups().size(), 1U) << "of each day the last is kept";
    EXPECT_EQ(upkeep->backups().front().made, benchStart + 1h);
    EXPECT_EQ(test::openOrDie(upkeep->backups().front().file, store::OpenMode::ReadOnly)->allEvents().value().size(),
              2U);
}

TEST_F(UpkeepTest, MakesUpForTheOneThatAPowerCutTookAway)
{
    tell();
    open(benchStart + 1h); // as it was found after a start
    clock.pass(2h);
    upkeep->begin();
    ASSERT_TRUE(waitForBackups(1));
    open(benchStart + 1h);
    upkeep->begin();
    EXPECT_EQ(backups(), 1U) << "it holds what was told last";
    open(benchStart + 3h);
    clock.pass(2h);
    upkeep->begin();
    EXPECT_TRUE(QTest::qWaitFor([&] { return upkeep->backups().front().made == benchStart + 4h; }, 5000));
}

TEST_F(UpkeepTest, GivesUpInTimeWhereTheFolderTakesNone)
{
    std::filesystem::create_directories(upkeep->folder().parent_path());
    std::ofstream(upkeep->folder()) << "in the way";
    upkeep->begin();
    QSignalSpy failed(upkeep.get(), &Upkeep::backupFailed);
    tell();
    EXPECT_TRUE(failed.count() > 0 || failed.wait(5000));
    QElapsedTimer since;
    since.start();
    upkeep->finish(5s);
    EXPECT_LT(since.elapsed(), 4000);
    EXPECT_TRUE(upkeep->backups().empty());
}

TEST_F(UpkeepTest, NoticesThatTheFileIsMovedAndThatItIsBackF19)
{
    QSignalSpy gone(upkeep.get(), &Upkeep::fileGone);
    QSignalSpy back(upkeep.get(), &Upkeep::fileBack);
    upkeep->look();
    EXPECT_EQ(gone.count(), 0);
    std::filesystem::rename(file, scratch / "away");
    upkeep->look();
    upkeep->look();
    EXPECT_EQ(gone.count(), 1);
    std::ofstream(file) << "another file under its name";
    upkeep->look();
    EXPECT_EQ(back.count(), 0) << "replaced is not back";
    std::filesystem::rename(scratch / "away", file);
    upkeep->look();
    EXPECT_EQ(back.count(), 1);
    tell();
}

TEST_F(UpkeepTest, ShowsWhatIsInABackupAndWhetherItIsGood)
{
    upkeep->begin();
    tell();
    ASSERT_TRUE(waitForBackups(1));
    std::optional<BackupLooked> seen;
    QObject::connect(upkeep.get(), &Upkeep::looked, upkeep.get(),
                     [to = &seen](const BackupLooked& looked) { *to = looked; });
    const auto backup = upkeep->backups().front().file;
    upkeep->lookThrough(backup);
    ASSERT_TRUE(QTest::qWaitFor([&] { return seen.has_value(); }, 5000));
    ASSERT_TRUE(seen->contents);
    EXPECT_EQ(seen->contents->events, 1);
    EXPECT_EQ(seen->contents->pieces, 3);
    EXPECT_EQ(seen->contents->piecesInHand, 3);
    EXPECT_EQ(seen->contents->lastTold, someEvent(1, What::Done).recorded);
    std::filesystem::resize_file(backup, std::filesystem::file_size(backup) / 2);
    seen.reset();
    upkeep->lookThrough(backup);
    ASSERT_TRUE(QTest::qWaitFor([&] { return seen.has_value(); }, 5000));
    EXPECT_TRUE(seen->fault);
}

TEST_F(UpkeepTest, GoesOnInAnotherFileWithWhatWasNotStoredYetF19)
{
    tell();
    std::filesystem::rename(file, scratch / "away");
    QSignalSpy troubled(keeping.get(), &Keeping::troubled);
    keeping->keep({someEvent(next++, What::Done)});
    ASSERT_TRUE(troubled.count() > 0 || troubled.wait(5000));
    QSignalSpy moved(keeping.get(), &Keeping::moved);
    keeping->moveTo(scratch / "there.mendbench");
    ASSERT_TRUE(moved.count() > 0 || moved.wait(5000));
    EXPECT_TRUE(keeping->thread().waitUntilStored(5s));
    upkeep.reset();
    keeping.reset();
    EXPECT_EQ(test::openOrDie(scratch / "there.mendbench")->allEvents().value().size(), 2U);
}

} // namespace
} // namespace mend::app
