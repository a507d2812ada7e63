#include "core/store/migrator.h"

#include "core/store/check.h"
#include "core/store/store.h"
#include "tests/store/benchmaker.h"
#include "tests/support/faultvfs.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
namespace fs = std::filesystem;

namespace {

std::string textOfFile(const fs::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

const fs::path data = fs::path(MEND_SOURCE_DIR) / "tests/data";

/// The shipped steps and one more.
std::vector<SchemaStep> withTrial(const std::string& sql = textOfFile(data / "0002-trial.sql"))
{
    auto steps = shippedSchema();
    steps.push_back({static_cast<int>(steps.size()) + 1, sql});
    return steps;
}

const std::string beforeTrial = "bench.mend.before-version-" + std::to_string(shippedSchema().back().version);

struct OldBench {
    Scratch scratch;
    fs::path file = scratch / "bench.mend";
    std::vector<bench::Event> events = EventMaker(3).some(30);

    OldBench()
    {
        const auto store = openOrDie(file);
        furnish(*store);
        EXPECT_TRUE(store->append(events).isOk());
    }
    OpenOptions newer(const std::string& vfs = {}) const
    {
        OpenOptions options;
        options.schema = withTrial();
        options.vfs = vfs;
        return options;
    }
};

Migration tried(const fs::path& file, const std::vector<SchemaStep>& steps, bool copied = true)
{
    Database database = Database::open(file, Access::ReadWrite);
    database.settle(std::chrono::milliseconds(50));
    return Migrator(steps).migrate(database, [&] { return copied; });
}

} // namespace

TEST(Migrator, LeavesAPresentFileAlone)
{
    const OldBench bench;
    const std::string before = textOfFile(bench.file);
    EXPECT_EQ(tried(bench.file, shippedSchema()), Migration::UpToDate);
    EXPECT_TRUE(textOfFile(bench.file) == before);
}

TEST(Migrator, BringsAnOldFileUpToDateAfterACopy)
{
    const OldBench bench;
    auto opened = Store::open(bench.file, bench.newer());
    ASSERT_TRUE(opened.isOk()) << opened.fault().detail;
    const auto store = opened.takeValue();
    EXPECT_EQ(Migrator::textOf(store->database()), Migrator(withTrial()).textOf(withTrial().back().version))
        << "as a fresh file would be";
    EXPECT_EQ(store->database().number("PRAGMA user_version"), withTrial().back().version);
    EXPECT_EQ(store->database().number("PRAGMA foreign_keys"), 1);
    EXPECT_EQ(store->allEvents().value(), bench.events);
    EXPECT_EQ(store->database().number("SELECT count(*) FROM trial_shelf"), 2);
    EXPECT_TRUE(checkWhole(*store).isGood());
    const auto copy = openOrDie(bench.scratch / beforeTrial, OpenMode::ReadOnly);
    EXPECT_EQ(copy->allEvents().value(), bench.events);
}

TEST(Migrator, SaysThatAnOldFileCannotBeReadWithoutWritingIt)
{
    const OldBench bench;
    OpenOptions options = bench.newer();
    options.mode = OpenMode::ReadOnly;
    EXPECT_EQ(Store::open(bench.file, options).fault().kind, FaultKind::ReadOnly);
    Database database = Database::open(bench.file, Access::ReadOnly);
    EXPECT_EQ(Migrator(withTrial()).assess(database), Migration::Outdated);
}

TEST(Migrator, TellsALaterAForeignAndAStrangeFileApart)
{
    const OldBench bench;
    Database database = Database::open(bench.file, Access::ReadWrite);
    database.run("PRAGMA user_version = 99");
    EXPECT_EQ(tried(bench.file, withTrial()), Migration::Newer);
    database.run("PRAGMA user_version = " + std::to_string(shippedSchema().back().version) +
                 "; CREATE TABLE planted (a)");
    EXPECT_EQ(tried(bench.file, withTrial()), Migration::Strange);
    database.run("PRAGMA application_id = 7");
    EXPECT_EQ(tried(bench.file, withTrial()), Migration::Foreign);
}

TEST(Migrator, ChangesNothingWithoutACopy)
{
    const OldBench bench;
    const std::string before = textOfFile(bench.file);
    EXPECT_EQ(tried(bench.file, withTrial(), false), Migration::NoCopy);
    EXPECT_TRUE(textOfFile(bench.file) == before);
    OpenOptions options = bench.newer();
    options.copies = "/proc/no/such/folder";
    EXPECT_EQ(Store::open(bench.file, options).fault().kind, FaultKind::Unwritable);
}

TEST(Migrator, UndoesAStepThatFails)
{
    const OldBench bench;
    EXPECT_EQ(tried(bench.file, withTrial("CREATE TABLE good (a INTEGER) STRICT; CREATE TABEL bad (a)")),
              Migration::StepFailed);
    EXPECT_TRUE(checkWhole(*openOrDie(bench.file, OpenMode::ReadWrite)).isGood());
}

TEST(Migrator, UndoesAStepThatBreaksLinks)
{
    const OldBench bench;
    EXPECT_EQ(tried(bench.file, withTrial("DELETE FROM place")), Migration::LinksBroken);
    EXPECT_EQ(openOrDie(bench.file, OpenMode::ReadWrite)->places().value().size(), 2U);
}

TEST(Migrator, LosesNothingWhenCutOffAtAnyMomentF2)
{
    int calls = 0;
    {
        const OldBench bench;
        FaultVfs::instance().calm();
        ASSERT_TRUE(Store::open(bench.file, bench.newer(FaultVfs::name)).isOk());
        calls = FaultVfs::instance().calls();
        ASSERT_GT(calls, 10);
    }
    const OldBench bench;
    const std::string old = textOfFile(bench.file);
    for (int n = 1; n <= calls; ++n) {
        const Scratch here;
        const Scratch after;
        std::ofstream(here / "bench.mend", std::ios::binary) << old;
        FaultVfs& faults = FaultVfs::instance();
        faults.watch(here.folder());
        faults.arm(FaultVfs::Mode::CutPower, n, 0);
        EXPECT_FALSE(Store::open(here / "bench.mend", bench.newer(FaultVfs::name)).isOk()) << n;
        EXPECT_TRUE(fs::exists(here / beforeTrial)) << n;
        faults.disk(after.folder(), static_cast<unsigned>(n));
        faults.calm();
        {
            Database database = Database::open(after / "bench.mend", Access::ReadWrite);
            const Migration standing = Migrator(withTrial()).assess(database);
            EXPECT_TRUE(standing == Migration::Outdated || standing == Migration::UpToDate) << n;
        }
        auto opened = Store::open(after / "bench.mend", bench.newer());
        ASSERT_TRUE(opened.isOk()) << n << ": " << opened.fault().detail;
        EXPECT_EQ(opened.value()->allEvents().value(), bench.events) << n;
        EXPECT_TRUE(checkWhole(*opened.value()).isGood()) << n;
    }
}

TEST(Migrator, EveryReleasedVersionStaysAsItWas)
{
    // A released schema file is never edited: its text is kept, and a file made by it opens for ever.
    for (const SchemaStep& step : shippedSchema()) {
        const fs::path golden = data / ("schema-" + std::to_string(step.version) + ".txt");
        const std::string actual = Migrator().textOf(step.version);
        if (textOfFile(golden) != actual) {
            const fs::path written = fs::path(MEND_BINARY_DIR) / golden.filename();
            std::ofstream(written, std::ios::binary) << actual;
            ADD_FAILURE() << "the shape of version " << step.version << " changed; compare " << golden << " with "
                          << written;
        }
    }
}
