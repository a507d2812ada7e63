#include "core/service/ruleshelf.h"

#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

namespace mend::service {

namespace fs = std::filesystem;

namespace {

const fs::path shippedFolder = fs::path(MEND_SOURCE_DIR) / "resources" / "rules";

std::string replaced(std::string text, const std::string& what, const std::string& by)
{
    text.replace(text.find(what), what.size(), by);
    return text;
}

class Shelf : public testing::Test {
protected:
    void SetUp() override { fs::create_directories(folders.own); }

    /// The studio's own revision of a shipped procedure, its name changed.
    std::string ownProcedure(const std::string& name) const
    {
        const RuleShelf shelf({shippedFolder, {}, {}});
        rules::Procedure procedure = *shelf.book().procedure("goldLacquerSeam");
        procedure.revision += 1;
        procedure.name = name;
        return exchange::fileText(procedure);
    }
    void write(const std::string& text) const { std::ofstream(ownFile) << text; }

    test::Scratch scratch;
    RuleShelf::Folders folders{shippedFolder, scratch / "own", scratch / "lastgood"};
    fs::path ownFile = folders.own / "gold.json";
};

} // namespace

TEST_F(Shelf, HoldsWhatShips)
{
    const RuleShelf shelf(folders);
    EXPECT_TRUE(shelf.faults().empty());
    EXPECT_TRUE(shelf.isUsable());
    EXPECT_EQ(shelf.book().procedures.size(), 5U);
}

TEST_F(Shelf, PutsTheStudiosOwnBesideAndNeverOver)
{
    const RuleShelf shipped(folders);
    const std::string before = shipped.book().procedure("goldLacquerSeam")->hash;
    write(ownProcedure("Our gold seam"));
    const RuleShelf shelf(folders);
    ASSERT_TRUE(shelf.faults().empty()) << shelf.faults().front().text;
    EXPECT_EQ(shelf.book().procedure("goldLacquerSeam")->name, "Our gold seam");
    EXPECT_NE(shelf.book().revision(before), nullptr) << "pieces begun under it go on under it";
}

TEST_F(Shelf, RefusesABrokenFileAndKeepsWhatWasGood)
{
    write(ownProcedure("Our gold seam"));
    RuleShelf shelf(folders);
    write(replaced(ownProcedure("Broken"), "\"stages\"", "\"stagez\""));
    shelf.look();
    ASSERT_FALSE(shelf.faults().empty());
    EXPECT_EQ(shelf.faults().front().file, ownFile.string());
    EXPECT_GT(shelf.faults().front().line, 0);
    EXPECT_EQ(shelf.book().procedure("goldLacquerSeam")->name, "Our gold seam");

    write(ownProcedure("Mended again"));
    shelf.look();
    EXPECT_TRUE(shelf.faults().empty());
    EXPECT_EQ(shelf.book().procedure("goldLacquerSeam")->name, "Mended again");
}

TEST_F(Shelf, KeepsWhatWasGoodOverARestart)
{
    write(ownProcedure("Our gold seam"));
    {
        const RuleShelf shelf(folders);
    }
    write("{ not JSON at all");
    const RuleShelf again(folders);
    EXPECT_FALSE(again.faults().empty());
    EXPECT_EQ(again.book().procedure("goldLacquerSeam")->name, "Our gold seam");
}

TEST_F(Shelf, WorksByWhatShipsWhereABrokenFileWasNeverGood)
{
    write("{ not JSON at all");
    const RuleShelf shelf(folders);
    EXPECT_FALSE(shelf.faults().empty());
    EXPECT_EQ(shelf.book().procedures.size(), 5U);
}

TEST_F(Shelf, TakesRevisionsOutOfABenchFile)
{
    write(ownProcedure("Once ours"));
    std::string hash;
    std::vector<store::RuleText> stored;
    {
        const RuleShelf shelf(folders);
        hash = shelf.book().procedure("goldLacquerSeam")->hash;
        bench::Event event;
        event.rules = hash;
        const std::vector<bench::Event> events{event, event};
        stored = revisionsOf(events, shelf.book(), {});
        ASSERT_EQ(stored.size(), 1U) << "once, however many events name it";
        EXPECT_TRUE(revisionsOf(events, shelf.book(), {hash}).empty()) << "and not again";
    }
    fs::remove(ownFile);
    RuleShelf shelf({shippedFolder, folders.own, {}});
    EXPECT_EQ(shelf.book().revision(hash), nullptr);
    EXPECT_EQ(shelf.add(stored), 0);
    ASSERT_NE(shelf.book().revision(hash), nullptr);
    EXPECT_EQ(shelf.book().revision(hash)->name, "Once ours");
    EXPECT_EQ(exchange::revisionHash(*shelf.book().revision(hash)), hash);
    EXPECT_EQ(shelf.add(std::vector<store::RuleText>{{"nonsense", "{}"}}), 1);
    shelf.look();
    EXPECT_NE(shelf.book().revision(hash), nullptr) << "looking again loses none";
}

} // namespace mend::service
