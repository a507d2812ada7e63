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

TEST_F(Revising, AStudiosOwnNumberStandsBesideTheShippedOneOverARestart)
{
    const rules::OwnFigure filler{"material/fillerPaste",
                                  "/potLife",
                                  std::chrono::minutes(45),
                                  std::nullopt,
                                  {"our own bench", rules::Mark::Practice}};
    const rules::OwnFigure taps{
        "practice", "/twoTapsFrom", std::chrono::minutes(8), std::nullopt, {"our own bench", rules::Mark::Practice}};
    for (const rules::OwnFigure& own_ : {filler, taps}) {
        const auto kept = keepOwnFigure(shelf, own, own_);
        ASSERT_TRUE(kept);
        ASSERT_TRUE(kept.value().empty()) << kept.value().front().text;
    }
    EXPECT_EQ(shelf.ownFigures(), (std::vector{filler, taps}));
    const RuleShelf again(folders);
    EXPECT_TRUE(again.faults().empty());
    EXPECT_EQ(again.book().material("fillerPaste")->potLife->value, std::chrono::minutes(45));
    EXPECT_EQ(again.book().practice.twoTapsFrom.value, std::chrono::minutes(8));
    ASSERT_TRUE(dropOwnFigure(shelf, own, "material/fillerPaste", "/potLife"));
    EXPECT_EQ(shelf.book().material("fillerPaste")->potLife->value, std::chrono::minutes(30));
    EXPECT_EQ(shelf.book().practice.twoTapsFrom.value, std::chrono::minutes(8));
}

TEST_F(Revising, ARefusedNumberLeavesWhatWasLastGoodInForce)
{
    rules::OwnFigure figure{"material/oldMend",
                            "/heatLimits/0/warmest",
                            std::nullopt,
                            Temperature::fromCelsius(28),
                            {"our own bench", rules::Mark::Practice}};
    const auto kept = keepOwnFigure(shelf, own, figure);
    ASSERT_TRUE(kept && kept.value().empty());
    figure.temperature = Temperature::fromCelsius(34); // above the shipped limit of 30
    const auto refused = keepOwnFigure(shelf, own, figure);
    ASSERT_TRUE(refused);
    EXPECT_FALSE(refused.value().empty());
    EXPECT_TRUE(shelf.faults().empty()) << "the file is as it was";
    EXPECT_EQ(RuleShelf(folders).book().material("oldMend")->heatLimits[0].warmest.value, Temperature::fromCelsius(28));
}

TEST_F(Revising, ALimitThatACureOfTheStudioWouldPassIsRefused)
{
    // The shipped warm cure of young joins asks for 40 C (common practice, no source): a limit below it stands against
    // it.
    const auto refused = keepOwnFigure(shelf, own,
                                       {"material/fastAdhesive",
                                        "/heatLimits/0/warmest",
                                        std::nullopt,
                                        Temperature::fromCelsius(38),
                                        {"our own bench", rules::Mark::Practice}});
    ASSERT_TRUE(refused);
    EXPECT_FALSE(refused.value().empty());
    EXPECT_TRUE(shelf.ownFigures().empty());
    EXPECT_FALSE(fs::exists(own / "own-figures.json"));
}

} // namespace mend::service
