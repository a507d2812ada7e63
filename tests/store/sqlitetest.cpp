#include "core/store/sqlite.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include <new>
#include <string>

using namespace mend;
using namespace mend::store;

TEST(Sqlite, HandsEveryTroubleBackAsAFault)
{
    Database database = Database::inMemory();
    EXPECT_EQ(guarded([&] { database.run("no such sentence"); }).fault().kind, FaultKind::Unwritable);
    database.run("CREATE TABLE t (a INTEGER PRIMARY KEY CHECK (a > 0)) STRICT");
    EXPECT_EQ(guarded([&] { database.prepare("INSERT INTO t VALUES (?1)").with(0).run(); }).fault().kind,
              FaultKind::Conflict);
    EXPECT_EQ(guarded([&] { return database.number("SELECT 40 + 2"); }).value(), 42);
}

TEST(Sqlite, OutlivesALackOfMemoryF60)
{
    Database database = Database::inMemory();
    database.run("CREATE TABLE t (a INTEGER) STRICT");
    const Outcome outcome = guarded([&] {
        Transaction transaction(database);
        database.run("INSERT INTO t VALUES (1)");
        throw std::bad_alloc(); // as a far too large report would
    });
    EXPECT_EQ(outcome.fault().kind, FaultKind::Unavailable);
    EXPECT_EQ(database.number("SELECT count(*) FROM t"), 0) << "the half written transaction is undone";
    EXPECT_FALSE(database.inTransaction());
}

TEST(Sqlite, KeepsTextAndBytesAsTheyAreF45)
{
    Database database = Database::inMemory();
    database.run("CREATE TABLE t (a TEXT, b BLOB, c TEXT) STRICT");
    // A family of emoji joined by ZWJ, decomposed and composed e acute, dotted capital I, sharp s.
    const std::string text = "\xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x91\xA7 e\xCC\x81 \xC3\xA9 \xC4\xB0 \xC3\x9F";
    const std::string bytes("\0\xff\xfe\0'", 5);
    database.prepare("INSERT INTO t VALUES (?1, ?2, ?3)").with(text, Blob{bytes}, std::string()).run();
    Statement row = database.prepare("SELECT a, b, c, c IS NULL FROM t");
    ASSERT_TRUE(row.step());
    EXPECT_EQ(row.text(0), text);
    EXPECT_EQ(row.text(1), bytes);
    EXPECT_EQ(row.text(2), "");
    EXPECT_EQ(row.integer(3), 0);
}

TEST(Sqlite, KeepsWhatIsTypedFromBecomingSqlF42)
{
    Database database = Database::inMemory();
    database.run("CREATE TABLE t (a TEXT) STRICT");
    const std::string typed = "'); DROP TABLE t; -- %_*\"";
    database.prepare("INSERT INTO t VALUES (?1)").with(typed).run();
    EXPECT_EQ(database.word("SELECT a FROM t"), typed);
}

TEST(Sqlite, NamesWhatACodeMeans)
{
    EXPECT_EQ(kindOfCode(SQLITE_FULL), FaultKind::DiskFull);
    EXPECT_EQ(kindOfCode(SQLITE_BUSY_SNAPSHOT), FaultKind::Busy);
    EXPECT_EQ(kindOfCode(SQLITE_READONLY_ROLLBACK), FaultKind::ReadOnly);
    EXPECT_EQ(kindOfCode(SQLITE_CORRUPT_INDEX), FaultKind::Damaged);
    EXPECT_EQ(kindOfCode(SQLITE_NOTADB), FaultKind::Foreign);
    EXPECT_EQ(kindOfCode(SQLITE_IOERR_DIR_FSYNC), FaultKind::Unwritable);
    EXPECT_EQ(kindOfCode(SQLITE_IOERR_NOMEM), FaultKind::Unavailable);
}
