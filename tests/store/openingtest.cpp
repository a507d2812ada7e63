// What is asked of a file before it is called the bench file.
#include "core/store/check.h"
#include "core/store/store.h"

#include "tests/store/benchmaker.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include <fstream>
#include <functional>
#include <iterator>

#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
using bench::What;
namespace fs = std::filesystem;

namespace {

std::string bytesOf(const fs::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

void writeBytes(const fs::path& file, const std::string& bytes)
{
    std::ofstream(file, std::ios::binary | std::ios::trunc) << bytes;
}

/// A furnished bench file with some events.
fs::path benchIn(const Scratch& scratch, const std::string& name = "bench.mend", unsigned seed = 1)
{
    const auto store = openOrDie(scratch / name);
    furnish(*store);
    EXPECT_TRUE(store->append(EventMaker(seed).some(40)).isOk());
    return scratch / name;
}

FaultKind refusal(const fs::path& file, OpenMode mode = OpenMode::CreateIfMissing)
{
    const auto opened = Store::open(file, mode);
    return opened ? FaultKind::Cancelled /* nothing was refused */ : opened.fault().kind;
}

/// Runs in a process of its own, which dies at once afterwards; gives its exit code.
int inChild(const std::function<int()>& work)
{
    const pid_t pid = ::fork();
    if (pid == 0) {
        std::_Exit(work());
    }
    int status = 0;
    ::waitpid(pid, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

/// Dies in the midst of a transaction whose pages are on the disk already.
void leaveHotJournal(const fs::path& file)
{
    const int code = inChild([&] {
        Database database = Database::open(file, Access::ReadWrite);
        const Transaction transaction(database);
        database.run("UPDATE piece SET bench_name = 'half done'");
        database.run("DELETE FROM note");
        std::_Exit(sqlite3_db_cacheflush(database.handle())); // nobody tidies up
        return 0;
    });
    ASSERT_EQ(code, SQLITE_OK);
    ASSERT_GT(fs::file_size(file.native() + "-journal"), 512U);
}

mode_t modeOf(const fs::path& path)
{
    struct stat status = {};
    ::stat(path.c_str(), &status);
    return status.st_mode & 0777;
}

} // namespace

TEST(Opening, RefusesAFileThatWasCutShortAndPutsNoEmptyOneInItsPlaceF11)
{
    const Scratch scratch;
    const std::string whole = bytesOf(benchIn(scratch));
    const fs::path cut = scratch / "cut.mend";
    for (const std::size_t size :
         {std::size_t{0}, std::size_t{50}, std::size_t{100}, std::size_t{4096}, whole.size() / 2}) {
        writeBytes(cut, whole.substr(0, size));
        EXPECT_TRUE(refusal(cut) == FaultKind::Damaged || (size == 50 && refusal(cut) == FaultKind::Foreign)) << size;
        EXPECT_TRUE(bytesOf(cut) == whole.substr(0, size)) << "its bytes were changed at " << size;
    }
}

TEST(Opening, TakesBackATransactionThatWasCutOffF12)
{
    const Scratch scratch;
    const fs::path file = benchIn(scratch);
    leaveHotJournal(file);
    const auto store = openOrDie(file, OpenMode::ReadWrite);
    EXPECT_EQ(store->pieces().value().at(0).benchName, "Heron bowl 1");
    EXPECT_TRUE(checkWhole(*store).isGood());
}

TEST(Opening, NoticesThatAJournalWasRemovedF12)
{
    const Scratch scratch;
    const fs::path file = benchIn(scratch);
    leaveHotJournal(file);
    fs::remove(file.native() + "-journal");
    const auto opened = Store::open(file, OpenMode::ReadWrite);
    EXPECT_TRUE(!opened.isOk() || !checkWhole(*opened.value()).isGood());
}

TEST(Opening, RefusesAJournalOfAnotherFileF12)
{
    const Scratch scratch;
    const fs::path file = benchIn(scratch);
    const fs::path other = benchIn(scratch, "other.mend", 2);
    {
        const auto store = openOrDie(other);
        for (int i = 0; i < 5; ++i) {
            ASSERT_TRUE(store->setSetting("turn", std::to_string(i)).isOk());
        }
    }
    leaveHotJournal(other);
    fs::copy_file(other.native() + "-journal", file.native() + "-journal");
    const std::string before = bytesOf(file);
    EXPECT_EQ(refusal(file), FaultKind::Damaged);
    EXPECT_TRUE(bytesOf(file) == before);
    EXPECT_TRUE(fs::exists(file.native() + "-journal"));
}

TEST(Opening, RefusesALaterVersionAndLeavesItsBytesAloneF13)
{
    const Scratch scratch;
    const fs::path file = benchIn(scratch);
    Database::open(file, Access::ReadWrite).run("PRAGMA user_version = 99");
    const std::string before = bytesOf(file);
    const auto opened = Store::open(file, OpenMode::ReadWrite);
    ASSERT_FALSE(opened.isOk());
    EXPECT_EQ(opened.fault(), (Fault{FaultKind::Newer, "99"}));
    EXPECT_EQ(refusal(file, OpenMode::ReadOnly), FaultKind::Newer);
    EXPECT_TRUE(bytesOf(file) == before);
}

TEST(Opening, RefusesWhatIsNoBenchFileF14)
{
    const Scratch scratch;
    const fs::path text = scratch / "notes.db";
    writeBytes(text, std::string(5000, 'x'));
    EXPECT_EQ(refusal(text), FaultKind::Foreign);
    const fs::path someones = scratch / "someones.db";
    Database::open(someones, Access::Create).run("CREATE TABLE t (a); PRAGMA application_id = 42");
    EXPECT_EQ(refusal(someones), FaultKind::Foreign);
    EXPECT_EQ(refusal(scratch / "nothing.mend", OpenMode::ReadWrite), FaultKind::NotFound);
    EXPECT_FALSE(fs::exists(scratch / "nothing.mend"));
    const fs::path file = benchIn(scratch);
    std::string bytes = bytesOf(file);
    bytes[70] = static_cast<char>(bytes[70] ^ 4); // one bit of its mark
    writeBytes(scratch / "flipped.mend", bytes);
    EXPECT_EQ(refusal(scratch / "flipped.mend"), FaultKind::Damaged);
}

TEST(Opening, RefusesTablesThatSomeoneElseChangedF58)
{
    for (const char* const planted :
         {"CREATE TRIGGER t AFTER INSERT ON event BEGIN DELETE FROM note; END", "CREATE VIEW v AS SELECT 1",
          "CREATE TABLE extra (a)", "CREATE INDEX extra ON event (word)", "DROP INDEX event_mix",
          "ALTER TABLE customer ADD COLUMN extra TEXT"}) {
        const Scratch scratch;
        const fs::path file = benchIn(scratch);
        Database::open(file, Access::ReadWrite).run(planted);
        EXPECT_EQ(refusal(file), FaultKind::Damaged) << planted;
    }
}

TEST(Opening, SettlesEveryConnectionStrictly)
{
    const Scratch scratch;
    const auto store = openOrDie(benchIn(scratch));
    const Database& database = store->database();
    EXPECT_EQ(database.word("PRAGMA journal_mode"), "delete");
    EXPECT_EQ(database.number("PRAGMA synchronous"), 3); // EXTRA
    EXPECT_EQ(database.number("PRAGMA foreign_keys"), 1);
    EXPECT_EQ(database.number("PRAGMA trusted_schema"), 0);
    EXPECT_EQ(database.number("PRAGMA cell_size_check"), 1);
    EXPECT_EQ(database.number("PRAGMA mmap_size"), 0);
    EXPECT_EQ(database.number("PRAGMA secure_delete"), 1);
    EXPECT_EQ(database.number("PRAGMA busy_timeout"), 50);
    EXPECT_EQ(database.number("PRAGMA application_id"), 1299080290);
    EXPECT_EQ(database.number("SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND strict = 0 "
                              "AND name NOT LIKE 'sqlite_%'"),
              0);
}

TEST(Opening, ReadsWhatItMayNotWriteF9)
{
    const Scratch scratch;
    const fs::path file = benchIn(scratch);
    const auto readable = [&] { // as somebody to whom the rights apply
        if (::geteuid() == 0 && ::setuid(65534) != 0) {
            return 2;
        }
        auto opened = Store::open(file, OpenMode::ReadWrite);
        if (!opened) {
            return 3;
        }
        const auto store = opened.takeValue();
        if (store->standing() != Standing::ReadOnlyFile || store->allEvents().value().size() != 40) {
            return 4;
        }
        const Outcome written = store->setSetting("a", "b");
        return written || written.fault().kind != FaultKind::ReadOnly ? 5 : 0;
    };
    const std::string before = bytesOf(file);
    ASSERT_EQ(::chmod(file.c_str(), 0444), 0);
    ASSERT_EQ(::chmod(scratch.folder().c_str(), 0777), 0);
    EXPECT_EQ(inChild(readable), 0) << "the file";
    ASSERT_EQ(::chmod(file.c_str(), 0666), 0);
    ASSERT_EQ(::chmod(scratch.folder().c_str(), 0555), 0);
    EXPECT_EQ(inChild(readable), 0) << "the folder";
    ASSERT_EQ(::chmod(scratch.folder().c_str(), 0700), 0);
    EXPECT_TRUE(bytesOf(file) == before);
}

TEST(Opening, NamesTheProcessThatHasTheFileF15)
{
    const Scratch scratch;
    const fs::path file = benchIn(scratch);
    const auto first = openOrDie(file, OpenMode::ReadWrite);
    const auto second = Store::open(file, OpenMode::ReadWrite);
    ASSERT_FALSE(second.isOk());
    EXPECT_EQ(second.fault().kind, FaultKind::Locked);
    EXPECT_EQ(OwnerLock::holder(file), thisOwner());
    EXPECT_NE(second.fault().detail.find(std::to_string(::getpid())), std::string::npos);
    EXPECT_TRUE(Store::open(file, OpenMode::ReadOnly).isOk()) << "reading a live file is allowed";
}

TEST(Opening, TakesNoFileUnderTwoNames)
{
    const Scratch scratch;
    const fs::path file = benchIn(scratch);
    fs::create_symlink(file, scratch / "link.mend");
    {
        const auto store = openOrDie(scratch / "link.mend", OpenMode::ReadWrite);
        EXPECT_EQ(store->file(), fs::canonical(file)); // the link leads to the one file, lock and journal
        EXPECT_EQ(refusal(file), FaultKind::Locked);
    }
    fs::create_hard_link(file, scratch / "second.mend");
    EXPECT_EQ(refusal(file), FaultKind::Conflict);
    EXPECT_EQ(refusal(scratch / "second.mend"), FaultKind::Conflict);
}

TEST(Opening, WritesNothingOnAnotherMachinesDisk)
{
    const Scratch scratch;
    OpenOptions options;
    options.onNetwork = [](const fs::path&) { return true; };
    const auto store = Store::open(benchIn(scratch), options).takeValue();
    EXPECT_EQ(store->standing(), Standing::OnNetwork);
    EXPECT_EQ(store->setSetting("a", "b").fault().kind, FaultKind::ReadOnly);
    options.mode = OpenMode::CreateIfMissing;
    EXPECT_EQ(Store::open(scratch / "new.mend", options).fault().kind, FaultKind::NotFound);
}

TEST(Opening, KeepsTheFileFromOtherPeopleWhateverTheUmaskF59)
{
    const Scratch scratch;
    const mode_t before = ::umask(0);
    {
        const auto store = openOrDie(scratch / "deep" / "er" / "bench.mend");
        furnish(*store);
    }
    OpenOptions options;
    options.ownFolder = true;
    ASSERT_EQ(::chmod((scratch / "deep").c_str(), 0777), 0);
    ASSERT_EQ(::chmod((scratch / "deep" / "er" / "bench.mend").c_str(), 0666), 0);
    options.mode = OpenMode::CreateIfMissing;
    const auto store = Store::open(scratch / "deep" / "er" / "bench.mend", options);
    ::umask(before);
    ASSERT_TRUE(store.isOk());
    EXPECT_EQ(modeOf(scratch / "deep" / "er"), 0700U);
    EXPECT_EQ(modeOf(scratch / "deep" / "er" / "bench.mend"), 0600U);
    EXPECT_EQ(modeOf(scratch / "deep" / "er" / "bench.mend.lock"), 0600U);
}

TEST(Opening, LeavesTheFolderAsItFoundItButForTheFileAndItsLock)
{
    const Scratch scratch;
    benchIn(scratch);
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(scratch.folder())) {
        names.push_back(entry.path().filename());
    }
    EXPECT_EQ(names, std::vector<std::string>{"bench.mend"});
}
