#include "core/store/backups.h"

#include "tests/store/benchmaker.h"
#include "tests/support/scratch.h"

#include "core/store/seal.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include <condition_variable>
#include <csignal>
#include <fstream>

#include <sys/wait.h>
#include <unistd.h>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
using namespace std::chrono;
namespace fs = std::filesystem;

namespace {

struct Bench {
    Scratch scratch;
    fs::path file = scratch / "bench.mend";
    Backups backups{scratch / "backups"};
    std::vector<bench::Event> events = EventMaker(7).some(60);
    std::string picture;

    std::unique_ptr<Store> make()
    {
        auto store = openOrDie(file);
        furnish(*store);
        EXPECT_TRUE(store->append(events).isOk());
        picture = store->putPhoto(Bytes(50'000, 'q'), "small", {"", PieceId(1), EventId(), "condition"}).value();
        return store;
    }
};

void flipByte(const fs::path& file, std::streamoff at)
{
    std::fstream stream(file, std::ios::binary | std::ios::in | std::ios::out);
    stream.seekg(at);
    const char byte = static_cast<char>(stream.get());
    stream.seekp(at);
    stream.put(static_cast<char>(byte ^ 1));
}

Backup on(year_month_day date, int hour = 12)
{
    const Instant at{sys_days(date) + hours(hour)};
    return {toRfc3339(at), at};
}

} // namespace

TEST(Backups, BringBackEverythingPicturesToo)
{
    Bench bench;
    auto store = bench.make();
    const auto backup = bench.backups.make(*store, benchStart);
    ASSERT_TRUE(backup.isOk()) << backup.fault().detail;
    EXPECT_EQ(bench.backups.all(), std::vector{backup.value()});
    EXPECT_EQ(openOrDie(backup.value().file, OpenMode::ReadOnly)->photo(bench.picture).value(), std::nullopt);
    store.reset();
    fs::remove(bench.file);
    const auto restored = bench.backups.restore(backup.value().file, bench.file, benchStart);
    ASSERT_TRUE(restored.isOk()) << restored.fault().detail;
    EXPECT_TRUE(restored.value().missingPictures.empty());
    EXPECT_TRUE(restored.value().keptAside.empty());
    store = openOrDie(bench.file, OpenMode::ReadWrite);
    EXPECT_EQ(store->allEvents().value(), bench.events);
    EXPECT_EQ(store->photo(bench.picture).value(), Bytes(50'000, 'q'));
    EXPECT_TRUE(checkWhole(*store).isGood());
}

TEST(Backups, KeepTheDamagedFileAsideAndNeverWriteOverItF10)
{
    Bench bench;
    auto store = bench.make();
    const auto backup = bench.backups.make(*store, benchStart);
    ASSERT_TRUE(backup.isOk());
    EXPECT_EQ(bench.backups.restore(backup.value().file, bench.file, benchStart).fault().kind, FaultKind::Locked);
    store.reset();
    std::ofstream(bench.file, std::ios::trunc) << "ruined";
    const auto first = bench.backups.restore(backup.value().file, bench.file, benchStart);
    ASSERT_TRUE(first.isOk()) << first.fault().detail;
    std::string kept;
    std::ifstream(first.value().keptAside) >> kept;
    EXPECT_EQ(kept, "ruined");
    const auto second = bench.backups.restore(backup.value().file, bench.file, benchStart);
    ASSERT_TRUE(second.isOk());
    EXPECT_NE(second.value().keptAside, first.value().keptAside);
    EXPECT_TRUE(fs::exists(first.value().keptAside));
    EXPECT_EQ(openOrDie(bench.file, OpenMode::ReadWrite)->allEvents().value(), bench.events);
}

TEST(Backups, AreGoneBackToWithoutLossWhereverItIsCutOff)
{
    for (int cut = 1;; ++cut) {
        Bench bench;
        auto store = bench.make();
        const auto backup = bench.backups.make(*store, benchStart);
        ASSERT_TRUE(backup.isOk());
        const bench::Event later = someEvent(bench.events.back().id.value() + 1, bench::What::Done);
        ASSERT_TRUE(store->append(std::span(&later, 1)).isOk());
        store.reset();
        const pid_t child = ::fork();
        if (child == 0) { // a process of its own, ended as a power cut would
            int step = 0;
            const auto over = bench.backups.restore(backup.value().file, bench.file, benchStart, [&step, cut] {
                if (++step == cut) {
                    ::raise(SIGKILL);
                }
            });
            ::_exit(over.isOk() ? 0 : 1);
        }
        int status = 0;
        ASSERT_EQ(::waitpid(child, &status, 0), child);
        const bool whole = WIFEXITED(status);
        ASSERT_TRUE(!whole || WEXITSTATUS(status) == 0);
        // The bench opens at once, and once it has been gone back to for good, all that was told is kept aside.
        EXPECT_GE(openOrDie(bench.file, OpenMode::ReadWrite)->allEvents().value().size(), bench.events.size());
        ASSERT_TRUE(bench.backups.restore(backup.value().file, bench.file, benchStart + hours(1)).isOk());
        EXPECT_EQ(openOrDie(bench.file, OpenMode::ReadWrite)->allEvents().value(), bench.events);
        std::size_t most = 0;
        for (const auto& entry : fs::directory_iterator(bench.scratch.folder())) {
            if (entry.path().filename().native().find(".kept-") != std::string::npos) {
                most = std::max(most, openOrDie(entry.path(), OpenMode::ReadOnly)->allEvents().value().size());
            }
        }
        EXPECT_EQ(most, bench.events.size() + 1) << "cut off at step " << cut;
        if (whole) {
            EXPECT_EQ(cut, 5) << "each step was cut off once";
            break;
        }
    }
}

TEST(Backups, TellWhatIsInThemBeforeAnyoneGoesBack)
{
    Bench bench;
    auto store = bench.make();
    const auto backup = bench.backups.make(*store, benchStart);
    ASSERT_TRUE(backup.isOk());
    const auto contents = bench.backups.look(backup.value().file);
    ASSERT_TRUE(contents.isOk()) << contents.fault().detail;
    EXPECT_EQ(contents.value().events, 60);
    EXPECT_EQ(contents.value().pieces, 3);
    EXPECT_EQ(contents.value().piecesInHand, static_cast<std::int64_t>(store->piecesInHand().value().size()));
    EXPECT_EQ(contents.value().lastTold, bench.events.back().recorded);
    EXPECT_EQ(contents.value().missingPictures, 0);
    fs::remove(bench.scratch / "backups" / "pictures" / bench.picture);
    EXPECT_EQ(bench.backups.look(backup.value().file).value().missingPictures, 1);
    flipByte(backup.value().file, static_cast<std::streamoff>(fs::file_size(backup.value().file)) - 30);
    EXPECT_EQ(bench.backups.look(backup.value().file).fault().kind, FaultKind::Damaged);
}

TEST(Backups, AreNotMadeOfADamagedFileNorRestoredFromADamagedBackup)
{
    Bench bench;
    auto store = bench.make();
    const auto good = bench.backups.make(*store, benchStart);
    ASSERT_TRUE(good.isOk());
    store->database().run("UPDATE event SET word = 'another' WHERE id = 5");
    const auto bad = bench.backups.make(*store, benchStart + 24h);
    ASSERT_FALSE(bad.isOk());
    EXPECT_EQ(bad.fault().kind, FaultKind::Damaged);
    EXPECT_EQ(bench.backups.all(), std::vector{good.value()}); // the good one stays
    store.reset();
    // A flip in the text of an event of the backup.
    std::ifstream stream(good.value().file, std::ios::binary);
    const std::string bytes{std::istreambuf_iterator<char>(stream), {}};
    const auto at = bytes.find("2026-03-09T08:2");
    ASSERT_NE(at, std::string::npos);
    flipByte(good.value().file, static_cast<std::streamoff>(at) + 14);
    EXPECT_EQ(bench.backups.restore(good.value().file, bench.file, benchStart).fault().kind, FaultKind::Damaged);
    EXPECT_TRUE(fs::exists(bench.file));
}

TEST(Backups, SayWhichPictureIsGoneAndMakeADamagedOneGoodAgain)
{
    Bench bench;
    auto store = bench.make();
    const auto first = bench.backups.make(*store, benchStart);
    ASSERT_TRUE(first.isOk());
    const fs::path picture = bench.scratch / "backups" / "pictures" / bench.picture;
    flipByte(picture, 100);
    const auto restored = bench.backups.restore(first.value().file, bench.scratch / "again.mend", benchStart);
    EXPECT_EQ(restored.value().missingPictures, std::vector{bench.picture});
    ASSERT_TRUE(bench.backups.make(*store, benchStart + 24h).isOk());
    std::ifstream stream(picture, std::ios::binary);
    EXPECT_EQ(Bytes(std::istreambuf_iterator<char>(stream), {}), Bytes(50'000, 'q'));
}

TEST(Backups, LeaveNothingHalfMadeBehindF3)
{
    Bench bench;
    auto store = bench.make();
    {
        fs::create_directories(bench.scratch / "backups");
        std::ofstream(bench.backups.unfinishedFile()) << "half";
    }
    EXPECT_TRUE(bench.backups.all().empty());
    bench.backups.sweep();
    EXPECT_FALSE(fs::exists(bench.backups.unfinishedFile()));
    ASSERT_TRUE(bench.backups.make(*store, benchStart).isOk());
    bench.backups.sweep();
    EXPECT_EQ(bench.backups.all().size(), 1U);
}

TEST(Backups, KeepSevenDaysFiveWeeksTwelveMonths)
{
    std::vector<Backup> all;
    for (sys_days day{2025y / 1 / 1}; day <= sys_days{2026y / 3 / 9}; day += days(1)) {
        all.push_back(on(day, 9));
        all.push_back(on(day, 18));
    }
    std::set<std::string> kept;
    for (const Backup& backup : worthKeeping(all)) {
        kept.insert(backup.file.native().substr(0, 13));
    }
    // 9 March 2026 is a Monday. Days: 3 to 9 March. Weeks end on Sundays 8 and 1 March, 22 and 15
    // February, with the running one the 9th. Months: the last day of each, April 2025 to February, and now.
    EXPECT_EQ(kept, (std::set<std::string>{"2026-03-09T18", "2026-03-08T18", "2026-03-07T18", "2026-03-06T18",
                                           "2026-03-05T18", "2026-03-04T18", "2026-03-03T18", "2026-03-01T18",
                                           "2026-02-28T18", "2026-02-22T18", "2026-02-15T18", "2026-01-31T18",
                                           "2025-12-31T18", "2025-11-30T18", "2025-10-31T18", "2025-09-30T18",
                                           "2025-08-31T18", "2025-07-31T18", "2025-06-30T18", "2025-05-31T18",
                                           "2025-04-30T18"}));
}

TEST(Backups, AreThinnedOutAsNewOnesCome)
{
    Bench bench;
    const auto store = bench.make();
    for (int day = 0; day < 9; ++day) {
        ASSERT_TRUE(bench.backups.make(*store, benchStart + hours(24 * day)).isOk());
    }
    EXPECT_EQ(bench.backups.all().size(), 7U); // 9 to 17 March: the last seven, the Sunday among them
}

TEST(Backups, AreMadeWhileTheBenchGoesOn)
{
    Bench bench;
    std::mutex mutex;
    std::condition_variable made;
    std::optional<Result<Backup>> backup;
    StoreThread thread(bench.make(), {});
    thread.start(std::make_unique<BackupJob>(bench.backups, benchStart, [&](const auto& result, const CheckReport&) {
        const std::lock_guard held(mutex);
        backup = result;
        made.notify_one();
    }));
    EventMaker maker(8);
    maker.startAfter(EventId(60));
    thread.append(maker.some(3));
    std::unique_lock held(mutex);
    ASSERT_TRUE(made.wait_for(held, 30s, [&] { return backup.has_value(); }));
    ASSERT_TRUE(backup->isOk()) << backup->fault().detail;
    const auto count = openOrDie(backup->value().file, OpenMode::ReadOnly)->allEvents().value().size();
    EXPECT_TRUE(count == 60 || count == 63) << count; // before the act or after it, never within
    held.unlock();
    EXPECT_TRUE(thread.waitUntilStored(10s));
}
