#include "tests/bench/hazardbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::test;
using testing::ElementsAre;
using testing::Not;

TEST(Inc25, GlovesWhileLacquerIsNotHard)
{
    HazardBench bench;
    const PieceId tea = bench.add("testUrushi");
    const PieceId heron = bench.add("goldLacquerSeam");
    EXPECT_THAT(bench.starting(tea, "urushiLine", 1), Warns("INC-25")) << "it is about to be laid";
    EXPECT_THAT(bench.starting(tea, "urushiLook", 1), Not(Meets("INC-25")));
    bench.done(tea, "urushiLine", 5);
    EXPECT_THAT(bench.starting(tea, "urushiLook", 6), Warns("INC-25"));
    EXPECT_THAT(bench.starting(heron, "lineCoat", 6), Not(Meets("INC-25")));
    const auto found = bench.standing(6);
    EXPECT_THAT(found, Warns("INC-25"));
    EXPECT_THAT(findingOf(found, "INC-25")->pieces, ElementsAre(tea));
}

// Four weeks in the box before it is handled freely (a lacquer kit seller's FAQ).
TEST(Inc25, IsOverOnceTheLacquerHasCuredInTheBox)
{
    HazardBench bench;
    const PieceId tea = bench.add("testUrushi");
    bench.done(tea, "urushiLine", 0);
    bench.put(tea, HazardBench::humidBox, 0);
    for (int half = 0; half < 60; ++half) {
        bench.read(HazardBench::humidBox, 23, 75, half * 720.0);
    }
    EXPECT_THAT(bench.standing(27.9 * 1440), Warns("INC-25"));
    EXPECT_THAT(bench.standing(28.1 * 1440), Not(Meets("INC-25")));
}

TEST(Inc26, ANewCoatWantsTheHardOneAbraded)
{
    HazardBench bench;
    const PieceId tea = bench.add("testUrushi");
    bench.done(tea, "urushiLine", 0);
    EXPECT_THAT(bench.starting(tea, "urushiSecond", 13.9 * 1440), Not(Meets("INC-26")));
    const auto found = bench.starting(tea, "urushiSecond", 14.1 * 1440);
    EXPECT_THAT(found, Reminds("INC-26"));
    EXPECT_THAT(findingOf(found, "INC-26")->pieces, ElementsAre(tea));
    EXPECT_THAT(bench.starting(tea, "urushiLook", 14.1 * 1440), Not(Meets("INC-26")));
    bench.done(tea, "urushiSand", 14.2 * 1440);
    EXPECT_THAT(bench.starting(tea, "urushiSecond", 14.3 * 1440), Not(Meets("INC-26")));
    EXPECT_THAT(bench.standing(14.1 * 1440), Not(Meets("INC-26"))) << "only before a coat";
}

TEST(Inc28, FoodAndPetsAreKeptOffAnOpenBench)
{
    HazardBench bench;
    const PieceId heron = bench.add("goldLacquerSeam");
    EXPECT_THAT(bench.standing(1), Not(Meets("INC-28"))) << "nothing is open";
    bench.done(heron, "wipeBack", 10);
    EXPECT_THAT(bench.standing(11), Reminds("INC-28"));
    EXPECT_TRUE(findingOf(bench.standing(11), "INC-28")->pieces.empty());
    EXPECT_THAT(bench.starting(heron, "pareSet", 11), Not(Meets("INC-28")));
    EXPECT_THAT(bench.standing(41), Not(Meets("INC-28")));
    bench.mix("fastAdhesive", 50);
    EXPECT_THAT(bench.standing(51), Reminds("INC-28"));
}
