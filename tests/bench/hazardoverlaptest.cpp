#include "tests/bench/hazardbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::test;
using mend::bench::HazardFinding;
using testing::ElementsAre;
using testing::Not;

namespace {

const std::string gold = "goldLacquerSeam";

double minutesOf(const std::optional<Instant>& until)
{
    return until ? std::chrono::duration<double, std::ratio<60>>(*until - HazardBench::at(0)).count() : -1;
}

} // namespace

// Pads smoulder vapour for as long as a fire watch lasts: OSHA 29 CFR 1910.252, 30 minutes.
TEST(Inc01, NoFlameWhileSolventPadsDry)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.done(heron, "wipeBack", 60);
    EXPECT_THAT(bench.telling("flame", 70), Blocks("INC-01"));
    EXPECT_THAT(bench.telling("flame", 89.9), Blocks("INC-01"));
    EXPECT_DOUBLE_EQ(minutesOf(findingOf(bench.telling("flame", 70), "INC-01")->until), 90);
    EXPECT_THAT(bench.telling("flame", 90), Not(Meets("INC-01")));
    EXPECT_THAT(bench.telling("fanOn", 70), Not(Meets("INC-01")));
}

TEST(Inc01, NoWipeWhileAFlameBurns)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.begin("flame", 10);
    EXPECT_THAT(bench.starting(heron, "wipeBack", 11), Blocks("INC-01"));
    EXPECT_THAT(bench.starting(heron, "pareSet", 11), Not(Meets("INC-01")));
    EXPECT_THAT(bench.starting(heron, "wipeBack", 11, HazardBench::yard), Not(Meets("INC-01")));
    bench.end("flame", 12);
    EXPECT_THAT(bench.starting(heron, "wipeBack", 12), Not(Meets("INC-01")));
}

TEST(Inc01, NoTorchWhileSomebodyWipes)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId other = bench.add("testShop");
    bench.begun(heron, "wipeBack", 60);
    const auto found = bench.starting(other, "torch", 61);
    EXPECT_THAT(found, Blocks("INC-01"));
    EXPECT_EQ(findingOf(found, "INC-01")->until, std::nullopt) << "hands are still on it";
    EXPECT_THAT(findingOf(found, "INC-01")->pieces, ElementsAre(heron));
    EXPECT_THAT(bench.starting(heron, "wipeBack", 61), Not(Meets("INC-01"))) << "it does not meet itself";
}

TEST(Inc01, TheTimeShownCountsTheWipesStillPlanned)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId cup = bench.add(gold);
    bench.done(heron, "wipeBack", 60);
    bench.begun(cup, "fillRun", 62);
    bench.done(cup, "fillRun", 65);
    const auto folded = bench.fold();
    const auto windows = bench::windowsOf(folded, bench.book(), HazardBench::at(66));
    const auto wipe = std::ranges::find_if(
        windows, [&](const bench::Window& window) { return window.piece == cup && window.stage.stage == "wipeBack"; });
    ASSERT_NE(wipe, windows.end());
    ASSERT_TRUE(wipe->closes);
    EXPECT_EQ(findingOf(bench.telling("flame", 66), "INC-01")->until, *wipe->closes + 30min);
}

TEST(Inc02, NoFlameWhileLacquerRagsLieLoose)
{
    HazardBench bench;
    const PieceId tea = bench.add("testUrushi");
    bench.done(tea, "urushiLine", 5);
    EXPECT_THAT(bench.telling("flame", 24 * 60), Blocks("INC-02"));
    EXPECT_THAT(bench.starting(bench.add("testShop"), "torch", 20), Blocks("INC-02"));
    bench.end("oilyRags", 25 * 60);
    EXPECT_THAT(bench.telling("flame", 25 * 60), Not(Meets("INC-02")));
}

// Half an hour in moving room air before the cabinet (common practice, no source); 3.8 ml of isopropanol
// bring 60 l of air to the lower flammable limit (calculated from NIOSH figures).
TEST(Inc03, NoPieceGoesIntoTheCabinetDampWithSolvent)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId dry = bench.add(gold);
    bench.done(heron, "wipeBack", 60);
    const auto found = bench.starting(heron, "cureFill", 89, HazardBench::cabinet);
    EXPECT_THAT(found, Blocks("INC-03"));
    EXPECT_THAT(findingOf(found, "INC-03")->pieces, ElementsAre(heron));
    EXPECT_DOUBLE_EQ(minutesOf(findingOf(found, "INC-03")->until), 90);
    EXPECT_THAT(bench.starting(heron, "cureFill", 90, HazardBench::cabinet), Not(Meets("INC-03")));
    EXPECT_THAT(bench.starting(heron, "cureFill", 70, HazardBench::shelf), Not(Meets("INC-03")));
    EXPECT_THAT(bench.starting(dry, "cureFill", 70, HazardBench::cabinet), Not(Meets("INC-03")));
}

TEST(Inc03, NoWipeInsideTheCabinet)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    EXPECT_THAT(bench.starting(heron, "wipeBack", 5, HazardBench::cabinet), Blocks("INC-03"));
    EXPECT_THAT(bench.starting(heron, "wipeBack", 5), Not(Meets("INC-03")));
}

TEST(Inc06, LampsWarmSoftJoins)
{
    HazardBench bench;
    const PieceId jug = bench.add("testResin");
    const PieceId cup = bench.add("testShop");
    EXPECT_THAT(bench.telling("lampsOn", 1), Not(Meets("INC-06"))) << "nothing soft is there";
    bench.done(jug, "resinJoin", 10);
    bench.done(cup, "epoxyJoin", 10);
    const auto found = bench.telling("lampsOn", 11);
    EXPECT_THAT(found, Warns("INC-06"));
    EXPECT_THAT(findingOf(found, "INC-06")->pieces, ElementsAre(jug, cup));
    bench.read(HazardBench::table, 23, 45, 40 * 60);
    const auto later = bench.telling("lampsOn", 41 * 60);
    EXPECT_THAT(findingOf(later, "INC-06")->pieces, ElementsAre(jug)) << "the epoxy is hard, the resin never is";
}

TEST(Inc07, NoSandingWhileALineIsTacky)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId cup = bench.add(gold);
    bench.begun(heron, "lineCoat", 10);
    EXPECT_THAT(bench.starting(cup, "wetSand", 12), Blocks("INC-07"));
    bench.done(heron, "lineCoat", 15);
    const auto found = bench.starting(cup, "wetSand", 16);
    EXPECT_THAT(found, Blocks("INC-07"));
    EXPECT_THAT(findingOf(found, "INC-07")->pieces, ElementsAre(heron));
    EXPECT_THAT(bench.starting(cup, "wetSand", 16, HazardBench::yard), Not(Meets("INC-07")));
    EXPECT_THAT(bench.starting(cup, "fillRun", 16), Not(Meets("INC-07")));
    EXPECT_THAT(bench.starting(cup, "wetSand", 15 + 3 * 60), Not(Meets("INC-07"))) << "the film is dry";
}

TEST(Inc07, NoLineWhileDustIsInTheAir)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId cup = bench.add(gold);
    bench.done(cup, "wetSand", 20);
    EXPECT_THAT(bench.starting(heron, "lineCoat", 49), Blocks("INC-07"));
    EXPECT_THAT(bench.starting(heron, "lineCoat", 50), Not(Meets("INC-07")))
        << "30 minutes, common practice, no source";
}

TEST(Inc07, NoSandingWhilePowderIsOut)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId cup = bench.add(gold);
    bench.done(heron, "dustPowder", 20);
    EXPECT_THAT(bench.starting(cup, "wetSand", 600), Blocks("INC-07"));
    bench.done(heron, "recoverPowder", 601);
    EXPECT_THAT(bench.starting(cup, "wetSand", 602), Not(Meets("INC-07")));
}

TEST(Inc08, NoPowderWhileAFanRuns)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.begin("fanOn", 1);
    EXPECT_THAT(bench.starting(heron, "dustPowder", 2), Blocks("INC-08"));
    EXPECT_THAT(bench.starting(heron, "pareSet", 2), Not(Meets("INC-08")));
    bench.end("fanOn", 3);
    EXPECT_THAT(bench.starting(heron, "dustPowder", 4), Not(Meets("INC-08")));
}

TEST(Inc08, AFanIsWarnedAgainstWhilePowderIsOut)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.done(heron, "dustPowder", 5);
    EXPECT_THAT(bench.telling("fanOn", 6), Warns("INC-08"));
    bench.end("powderOut", 7);
    EXPECT_THAT(bench.telling("fanOn", 8), Not(Meets("INC-08")));
}

TEST(Inc09, AFanSkinsASettingFilm)
{
    HazardBench bench;
    const PieceId tea = bench.add("testUrushi");
    bench.done(tea, "urushiLine", 5);
    EXPECT_THAT(bench.telling("fanOn", 24 * 60), Warns("INC-09"));
    EXPECT_THAT(bench.telling("fanOn", 8 * 24 * 60), Not(Meets("INC-09")));
    HazardBench other;
    other.begin("fanOn", 1);
    const PieceId heron = other.add(gold);
    EXPECT_THAT(other.starting(heron, "lineCoat", 2), Warns("INC-09"));
    EXPECT_THAT(other.starting(heron, "pareSet", 2), Not(Meets("INC-09")));
}

// 20 minutes to handling strength: crafts question-and-answer page on five-minute epoxy.
TEST(Inc13, NoKnockingBesideYoungJoins)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.done(heron, "glueSet", 10);
    EXPECT_THAT(bench.telling("knocking", 29), Warns("INC-13"));
    EXPECT_THAT(bench.telling("knocking", 30), Not(Meets("INC-13")));
    bench.begin("knocking", 40);
    EXPECT_THAT(bench.starting(heron, "glueSet", 41, HazardBench::table, 2), Warns("INC-13"));
}

TEST(Inc18, TwoPowdersNeverShareATray)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId silver = bench.add("testSilver");
    const PieceId alsoGold = bench.add(gold);
    bench.done(heron, "issuePowder", 5);
    const auto found = bench.starting(silver, "silverIssue", 6);
    EXPECT_THAT(found, Blocks("INC-18"));
    EXPECT_THAT(findingOf(found, "INC-18")->pieces, ElementsAre(heron));
    EXPECT_THAT(bench.starting(alsoGold, "issuePowder", 6), Not(Meets("INC-18"))) << "the same powder";
    EXPECT_THAT(bench.starting(heron, "dustPowder", 6), Not(Meets("INC-18"))) << "its own tray";
    bench.done(heron, "recoverPowder", 8);
    EXPECT_THAT(bench.starting(silver, "silverIssue", 9), Not(Meets("INC-18"))) << "the tray is cleared";
}

TEST(Inc18, TwoTraysKeepTwoPowdersApart)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId silver = bench.add("testSilver");
    bench.put(heron, HazardBench::tray, 1);
    bench.done(heron, "issuePowder", 5);
    EXPECT_THAT(bench.starting(silver, "silverIssue", 6, HazardBench::otherTray), Not(Meets("INC-18")));
    EXPECT_THAT(bench.starting(silver, "silverIssue", 6, HazardBench::tray), Blocks("INC-18"));
}

TEST(Inc19, NoGoldBesideBaseMetalDust)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId vase = bench.add("testShop");
    bench.done(vase, "brassCast", 5);
    const auto found = bench.starting(heron, "dustPowder", 6);
    EXPECT_THAT(found, Blocks("INC-19"));
    EXPECT_THAT(findingOf(found, "INC-19")->pieces, ElementsAre(vase));
    EXPECT_THAT(bench.starting(heron, "lineCoat", 6), Not(Meets("INC-19")));
    bench.end("baseMetalOut", 7);
    EXPECT_THAT(bench.starting(heron, "dustPowder", 8), Not(Meets("INC-19")));
    bench.done(heron, "dustPowder", 9);
    EXPECT_THAT(bench.starting(vase, "brassCast", 10), Blocks("INC-19"));
}

TEST(Inc20, FastGlueFumeBloomsAGlossyLine)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.done(heron, "lineCoat", 5);
    EXPECT_THAT(bench.telling("fume", 6), Warns("INC-20"));
    EXPECT_THAT(bench.telling("fume", 5 + 23 * 60), Warns("INC-20")) << "dry to the touch is not hard";
    EXPECT_THAT(bench.telling("fume", 5 + 25 * 60), Not(Meets("INC-20")));
    HazardBench empty;
    EXPECT_THAT(empty.telling("fume", 6), Not(Meets("INC-20")));
    const PieceId cup = empty.add(gold);
    empty.begin("fume", 10);
    EXPECT_THAT(empty.starting(cup, "lineCoat", 39), Warns("INC-20"));
    EXPECT_THAT(empty.starting(cup, "lineCoat", 40), Not(Meets("INC-20")));
}

TEST(Inc21, NoAcetoneOnWhatItDissolves)
{
    HazardBench bench;
    const PieceId jug = bench.add("testResin");
    bench.done(jug, "resinJoin", 5);
    const auto found = bench.telling("acetoneWipe", 60, jug);
    EXPECT_THAT(found, Blocks("INC-21"));
    EXPECT_THAT(findingOf(found, "INC-21")->pieces, ElementsAre(jug));
    const PieceId cup = bench.add("testShop", 61);
    EXPECT_THAT(bench.telling("acetoneWipe", 62, cup), Warns("INC-21")) << "only nearby";
    HazardBench none;
    EXPECT_THAT(none.telling("acetoneWipe", 2, none.add("testShop")), Not(Meets("INC-21")));
}

TEST(Inc21, AStageMayWipeItsOwnFreshJoinsButNoOldMend)
{
    rules::RuleBook book = hazardBook();
    auto row = std::ranges::find(book.hazards, "INC-21", &rules::Hazard::key);
    row->exceptStages.push_back("resinClean");
    HazardBench bench(book);
    const PieceId jug = bench.add("testResin");
    bench.done(jug, "resinJoin", 5);
    EXPECT_THAT(bench.starting(jug, "resinClean", 65), Not(Meets("INC-21")));
    const PieceId old = bench.add("testResin", 66);
    bench.piece(old).materialsInIt = {"oldMend"};
    bench.done(old, "resinJoin", 67);
    const auto found = bench.starting(old, "resinClean", 130);
    EXPECT_THAT(found, Blocks("INC-21"));
    EXPECT_THAT(findingOf(found, "INC-21")->pieces, ElementsAre(old));
}

TEST(Inc21, TheShippedResinProcedureMayCleanItsExcess)
{
    HazardBench bench;
    const PieceId jug = bench.add("reversibleJoin");
    bench.done(jug, "glueJoin", 5);
    EXPECT_THAT(bench.starting(jug, "cleanExcess", 70), Not(Meets("INC-21")));
    bench.piece(jug).materialsInIt = {"oldMend"};
    EXPECT_THAT(bench.starting(jug, "cleanExcess", 70), Blocks("INC-21"));
}

TEST(Inc22, NoSoakingOfWhatWaterSoftens)
{
    HazardBench bench;
    const PieceId bowl = bench.add("testShop");
    EXPECT_THAT(bench.starting(bowl, "soak", 1), Not(Meets("INC-22")));
    bench.done(bowl, "plasterFill", 5);
    EXPECT_THAT(bench.starting(bowl, "soak", 6), Warns("INC-22"));
    const PieceId other = bench.add("testShop", 7);
    EXPECT_THAT(bench.starting(other, "soak", 8), Not(Meets("INC-22"))) << "another piece's plaster stays dry";
    bench.piece(other).body = record::Body::Porous;
    EXPECT_THAT(bench.starting(other, "soak", 8), Warns("INC-22"));
}

TEST(Inc23, FragmentsOfTwoOwnersNeverLieOpenTogether)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold, 0, CustomerId(1));
    const PieceId cup = bench.add(gold, 0, CustomerId(2));
    const PieceId saucer = bench.add(gold, 0, CustomerId(1));
    bench.begun(heron, "dryFit", 5);
    const auto found = bench.starting(cup, "dryFit", 6);
    EXPECT_THAT(found, Blocks("INC-23"));
    EXPECT_THAT(findingOf(found, "INC-23")->pieces, ElementsAre(heron));
    EXPECT_THAT(bench.starting(saucer, "dryFit", 6), Not(Meets("INC-23"))) << "the same owner";
    bench.done(heron, "dryFit", 30);
    EXPECT_THAT(bench.starting(cup, "dryFit", 31), Not(Meets("INC-23"))) << "the count is closed";
}

// The 24 hours of a fast adhesive are hours at its reference: a cold bench has not cured it by then.
TEST(Inc24, NoDrySandingBeforeFullCure)
{
    HazardBench bench;
    const PieceId bowl = bench.add("testShop");
    bench.done(bowl, "epoxyJoin", 0);
    for (int hour = 1; hour < 60; ++hour) {
        bench.read(HazardBench::table, 23, 45, hour * 60.0);
    }
    EXPECT_THAT(bench.starting(bowl, "drySand", 23.9 * 60), Blocks("INC-24"));
    EXPECT_THAT(bench.starting(bowl, "drySand", 24.1 * 60), Not(Meets("INC-24")));
    EXPECT_THAT(bench.starting(bowl, "look", 60), Not(Meets("INC-24")));
    const PieceId bare = bench.add("testShop", 61);
    EXPECT_THAT(bench.starting(bare, "drySand", 62), Not(Meets("INC-24"))) << "another piece's epoxy";
}

TEST(Inc24, AColdBenchKeepsItPartCured)
{
    HazardBench bench;
    const PieceId bowl = bench.add("testShop");
    for (int hour = 0; hour < 60; ++hour) {
        bench.read(HazardBench::table, 18, 45, hour * 60.0);
    }
    bench.done(bowl, "epoxyJoin", 0);
    EXPECT_THAT(bench.starting(bowl, "drySand", 25 * 60), Blocks("INC-24"));
    EXPECT_THAT(bench.starting(bowl, "drySand", 55 * 60), Not(Meets("INC-24")));
}

TEST(StandingOverlap, IsSaidWhenBothAreThereAlready)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.done(heron, "wipeBack", 10);
    EXPECT_THAT(bench.standing(11), Not(Meets("INC-01")));
    bench.begin("flame", 12);
    const auto found = bench.standing(13);
    EXPECT_THAT(found, Blocks("INC-01"));
    EXPECT_THAT(findingOf(found, "INC-01")->pieces, ElementsAre(heron));
    EXPECT_THAT(bench.standing(40), Not(Meets("INC-01")));
}
