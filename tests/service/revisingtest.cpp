#include "core/service/revising.h"

#include "core/rules/figurelist.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>

namespace mend::service {

namespace fs = std::filesystem;

namespace {

class Revising : public testing::Test {
protected:
    rules::Procedure edited()
    {
        rules::Procedure procedure = *shelf.book().procedure("goldLacquerSeam");
        const Span most = procedure.stages.front().handsOn.fixed.most;
        EXPECT_TRUE(
            rules::changeFigure(procedure, "/stages/0/handsOn/fixed", most, {"our own bench", rules::Mark::Practice}));
        return procedure;
    }
    test::Scratch scratch;
    fs::path own = scratch / "own" / "rules";
    RuleShelf::Folders folders{fs::path(MEND_SOURCE_DIR) / "resources" / "rules", own, scratch / "lastgood"};
    RuleShelf shelf{folders};
};

} // namespace

TEST_F(Revising, KeepsTheNextRevisionBesideTheShippedOne)
{
    const std::string shipped = shelf.book().procedure("goldLacquerSeam")->hash;
    const auto kept = keepRevision(shelf, own, edited());
    ASSERT_TRUE(kept);
    ASSERT_TRUE(kept.value().faults.empty()) << kept.value().faults.front().text;
    const rules::Procedure* now = shelf.book().procedure("goldLacquerSeam");
    EXPECT_EQ(now->hash, kept.value().hash);
    EXPECT_EQ(now->revision, 2);
    EXPECT_EQ(now->stages.front().handsOn.fixed.source.text, "our own bench");
    EXPECT_TRUE(shelf.book().revision(shipped)) << "pieces begun under it keep it";
    const RuleShelf again(folders);
    EXPECT_EQ(again.book().procedure("goldLacquerSeam")->hash, kept.value().hash) << "over a restart";
}

TEST_F(Revising, CountsOnWithEveryOneThatIsKept)
{
    ASSERT_TRUE(keepRevision(shelf, own, edited()));
    rules::Procedure second = *shelf.book().procedure("goldLacquerSeam");
    const Span least = second.stages.front().handsOn.fixed.least;
    ASSERT_TRUE(rules::changeFigure(second, "/stages/0/handsOn/fixed", least, {"again", rules::Mark::Practice}));
    const auto kept = keepRevision(shelf, own, second);
    ASSERT_TRUE(kept);
    EXPECT_TRUE(kept.value().faults.empty());
    EXPECT_EQ(shelf.book().procedure("goldLacquerSeam")->revision, 3);
}

TEST_F(Revising, LeavesNoFileBehindWhereTheRulesRefuseIt)
{
    rules::Procedure broken = edited();
    broken.stages.front().law = "no such law";
    const auto kept = keepRevision(shelf, own, broken);
    ASSERT_TRUE(kept);
    EXPECT_TRUE(kept.value().hash.empty());
    EXPECT_FALSE(kept.value().faults.empty());
    EXPECT_FALSE(fs::exists(own)) << "nothing was written";
    EXPECT_EQ(shelf.book().procedure("goldLacquerSeam")->revision, 1);
}

TEST_F(Revising, SaysSoWhereTheFolderCannotBeMade)
{
    const auto kept = keepRevision(shelf, fs::path("/proc/no/such/folder"), edited());
    ASSERT_FALSE(kept);
    EXPECT_EQ(kept.fault().kind, FaultKind::Unwritable);
}

} // namespace mend::service
