#include "tests/bench/hazardbench.h"

#include <gtest/gtest.h>

#include <set>

using namespace mend;
using namespace mend::test;
using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::Not;

namespace {

const std::string gold = "goldLacquerSeam";

} // namespace

TEST(HazardCheck, KnowsEveryRowOfTheShippedBook)
{
    std::set<std::string> keys;
    for (const rules::Hazard& row : hazardBook().hazards) {
        keys.insert(row.key);
    }
    EXPECT_EQ(keys.size(), 28U);
}

TEST(HazardCheck, SaysBlocksBeforeWarningsBeforeReminders)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.begin("fanOn", 1);
    bench.begin("drySanding", 1);
    const auto found =
        bench.asked({heron, {"lineCoat", 1}, HazardBench::table}, 60, {HazardBench::at(150), HazardBench::at(1000)});
    std::vector<std::string> keys;
    for (const auto& finding : found) {
        keys.push_back(finding.hazard->key);
    }
    EXPECT_THAT(keys, ElementsAre("INC-07", "INC-09", "INC-27"));
}

TEST(HazardCheck, FindsNothingForAStageNobodyKnows)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.begin("flame", 1);
    EXPECT_THAT(bench.starting(heron, "noSuchStage", 2), IsEmpty());
    EXPECT_THAT(bench.starting(PieceId(99), "wipeBack", 2), IsEmpty());
}

TEST(Override, LeavesOutWhatWasAnsweredForThatStart)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId cup = bench.add(gold);
    bench.begin("flame", 1);
    bench.answer(heron, "wipeBack", "INC-01:flameOutside", 2);
    EXPECT_THAT(bench.starting(heron, "wipeBack", 3), Not(Meets("INC-01")));
    EXPECT_THAT(bench.starting(heron, "wipeBack", 3, HazardBench::table, 2), Blocks("INC-01")) << "the next run asks";
    EXPECT_THAT(bench.starting(heron, "wetSand", 3), Blocks("INC-01")) << "another stage asks";
    EXPECT_THAT(bench.starting(cup, "wipeBack", 3), Blocks("INC-01")) << "another piece asks";
    EXPECT_THAT(bench.states(3), Contains("flame"));
}

TEST(Override, IsAskedAgainWhenTheStateBeginsAnew)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.begin("flame", 1);
    bench.answer(heron, "wipeBack", "INC-01:flameOutside", 2);
    bench.end("flame", 5);
    bench.begin("flame", 60);
    EXPECT_THAT(bench.starting(heron, "wipeBack", 61), Blocks("INC-01"));
}

TEST(Override, OfOneRowLeavesTheOthers)
{
    HazardBench bench;
    const PieceId tea = bench.add("testUrushi");
    const PieceId bowl = bench.add("testShop");
    const PieceId heron = bench.add(gold);
    bench.done(tea, "urushiLine", 1);
    bench.done(heron, "wipeBack", 1);
    bench.answer(bowl, "torch", "INC-01:alreadyLit", 2);
    const auto found = bench.starting(bowl, "torch", 3);
    EXPECT_THAT(found, Not(Meets("INC-01")));
    EXPECT_THAT(found, Blocks("INC-02"));
}

TEST(Override, AnAnswerThatEndsAStateEndsIt)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId cup = bench.add("testShop");
    bench.done(heron, "wipeBack", 10);
    EXPECT_THAT(bench.states(11), Contains("padsDrying"));
    bench.answer(cup, "torch", "INC-01:padsInCan", 12);
    EXPECT_THAT(bench.states(13), Not(Contains("padsDrying")));
    bench.done(heron, "wipeBack", 20, 2);
    EXPECT_THAT(bench.states(21), Contains("padsDrying")) << "the next pads dry anew";
}

TEST(StatesInForce, AreLeftByStagesAndEndByTime)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.done(heron, "wipeBack", 10);
    EXPECT_THAT(bench.states(10), Contains("padsDrying"));
    EXPECT_THAT(bench.states(39.9), Contains("padsDrying"));
    EXPECT_THAT(bench.states(40), Not(Contains("padsDrying")));
}

TEST(StatesInForce, EndByAnActBeforeTheirTime)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.done(heron, "wipeBack", 10);
    bench.end("padsDrying", 15);
    EXPECT_THAT(bench.states(16), Not(Contains("padsDrying")));
    EXPECT_THAT(bench.telling("flame", 45), Not(Meets("INC-01")));
}

TEST(StatesInForce, HoldWhileHandsAreOn)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.begun(heron, "wipeBack", 10);
    EXPECT_THAT(bench.states(300), Contains("solventOpen"));
    bench.done(heron, "wipeBack", 301);
    EXPECT_THAT(bench.states(302), Not(Contains("solventOpen")));
}

TEST(StatesInForce, PowderLiesOpenUntilItIsCovered)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId cup = bench.add(gold);
    bench.done(heron, "dustPowder", 10);
    bench.done(cup, "dustPowder", 20);
    EXPECT_THAT(bench.states(3000), Contains("powderOut"));
    bench.done(heron, "recoverPowder", 3001);
    EXPECT_THAT(bench.states(3002), Contains("powderOut")) << "the other piece's powder still lies open";
    bench.done(cup, "recoverPowder", 3003);
    EXPECT_THAT(bench.states(3004), Not(Contains("powderOut")));
}

TEST(StatesInForce, ALineIsTackyUntilItIsDusted)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.done(heron, "lineCoat", 10);
    EXPECT_THAT(bench.states(29), Contains("tackyFilm"));
    bench.done(heron, "dustPowder", 30);
    EXPECT_THAT(bench.states(31), Not(Contains("tackyFilm")));
    EXPECT_THAT(bench.states(31), Contains("powderOut"));
}

TEST(StatesInForce, ToldOfOnePieceEndsForThatPiece)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId cup = bench.add(gold);
    bench.done(heron, "lineCoat", 10);
    bench.done(cup, "lineCoat", 10);
    bench.end("tackyFilm", 11, heron);
    EXPECT_THAT(findingOf(bench.telling("sanding", 12), "INC-07")->pieces, ElementsAre(cup));
}

TEST(StatesInForce, OutliveThePieceThatLeftThem)
{
    HazardBench bench;
    const PieceId tea = bench.add("testUrushi");
    bench.done(tea, "urushiLine", 10);
    bench::Event gone = bench.event(bench::What::HandedOver, 20);
    gone.piece = tea;
    bench.tell(gone);
    EXPECT_THAT(bench.states(30), Contains("oilyRags"));
    EXPECT_THAT(bench.telling("flame", 30), Blocks("INC-02"));
}

TEST(StatesInForce, AToldStateLastsAsLongAsTheBookSays)
{
    HazardBench bench;
    bench.begin("fume", 10);
    bench.begin("flame", 10);
    EXPECT_THAT(bench.states(39), Contains("fume"));
    EXPECT_THAT(bench.states(41), Not(Contains("fume")));
    EXPECT_THAT(bench.states(100000), Contains("flame"));
}
