#include "tests/bench/hazardbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::test;
using testing::ElementsAre;
using testing::Not;

TEST(Inc10, DampAirBlushesUncuredEpoxy)
{
    HazardBench bench;
    bench.read(HazardBench::humidBox, 23, 70, 0);
    const PieceId bowl = bench.add("testShop");
    EXPECT_THAT(bench.starting(bowl, "look", 5, HazardBench::humidBox), Not(Meets("INC-10"))) << "nothing in it yet";
    bench.done(bowl, "epoxyJoin", 10);
    EXPECT_THAT(bench.starting(bowl, "look", 11, HazardBench::humidBox), Warns("INC-10"));
    EXPECT_THAT(bench.starting(bowl, "look", 11, HazardBench::table), Not(Meets("INC-10")));
    bench.read(HazardBench::humidBox, 23, 69.9, 12);
    EXPECT_THAT(bench.starting(bowl, "look", 13, HazardBench::humidBox), Not(Meets("INC-10")));
}

TEST(Inc10, CuredEpoxyMayGoIntoTheBox)
{
    HazardBench bench;
    const PieceId bowl = bench.add("testShop");
    bench.done(bowl, "epoxyJoin", 0);
    for (int hour = 0; hour < 40; ++hour) {
        bench.read(HazardBench::table, 23, 45, hour * 60.0);
    }
    bench.read(HazardBench::humidBox, 23, 80, 30 * 60);
    EXPECT_THAT(bench.starting(bowl, "look", 30 * 60, HazardBench::humidBox), Not(Meets("INC-10")));
    bench.done(bowl, "brassFill", 31 * 60);
    EXPECT_THAT(bench.starting(bowl, "look", 32 * 60, HazardBench::humidBox), Warns("INC-10")) << "brass tarnishes";
}

TEST(Inc10, NamesWhatLiesInTheBoxAlready)
{
    HazardBench bench;
    bench.read(HazardBench::humidBox, 23, 75, 0);
    const PieceId bowl = bench.add("testShop");
    const PieceId tea = bench.add("testUrushi");
    bench.done(bowl, "epoxyJoin", 1);
    bench.put(bowl, HazardBench::humidBox, 2);
    bench.put(tea, HazardBench::humidBox, 2);
    const auto found = bench.standing(3);
    EXPECT_THAT(found, Warns("INC-10"));
    EXPECT_THAT(findingOf(found, "INC-10")->pieces, ElementsAre(bowl));
    EXPECT_EQ(findingOf(found, "INC-10")->place, HazardBench::humidBox);
}

TEST(Inc11, LacquerStallsInDryAir)
{
    HazardBench bench;
    bench.read(HazardBench::humidBox, 23, 59.9, 0);
    const PieceId tea = bench.add("testUrushi");
    const PieceId bowl = bench.add("testShop");
    EXPECT_THAT(bench.starting(tea, "urushiLine", 1, HazardBench::humidBox), Warns("INC-11"));
    EXPECT_THAT(bench.starting(bowl, "epoxyJoin", 1, HazardBench::humidBox), Not(Meets("INC-11")));
    bench.read(HazardBench::humidBox, 23, 60, 2);
    EXPECT_THAT(bench.starting(tea, "urushiLine", 3, HazardBench::humidBox), Not(Meets("INC-11")));
}

// A box at 25 degrees and 75 per cent has its dew point at 20.26 degrees (Magnus form, from memory), so a
// pot under 23.26 degrees gets wet: 3 degrees above the dew point is a coating sheet's rule.
TEST(Inc12, AColdPotGetsWetInTheBox)
{
    HazardBench bench;
    bench.read(HazardBench::humidBox, 25, 75, 0);
    bench.read(HazardBench::table, 23.3, 45, 0);
    const PieceId tea = bench.add("testUrushi");
    EXPECT_THAT(bench.starting(tea, "urushiLine", 10, HazardBench::humidBox), Not(Meets("INC-12")));
    bench.read(HazardBench::table, 23.2, 45, 11);
    EXPECT_THAT(bench.starting(tea, "urushiLine", 12, HazardBench::humidBox), Blocks("INC-12"));
    EXPECT_THAT(bench.starting(tea, "urushiLine", 12, HazardBench::table), Not(Meets("INC-12")));
}

TEST(Inc12, APotStaysColdForAWhileInTheWarm)
{
    HazardBench bench;
    bench.read(HazardBench::humidBox, 25, 75, 0);
    bench.read(HazardBench::shelf, 12, 60, 0);
    const PieceId tea = bench.add("testUrushi");
    bench.put(tea, HazardBench::shelf, 1);
    bench.read(HazardBench::table, 25, 45, 30);
    bench.put(tea, HazardBench::table, 31);
    EXPECT_THAT(bench.starting(tea, "urushiLine", 40, HazardBench::humidBox), Blocks("INC-12"));
    EXPECT_THAT(bench.starting(tea, "urushiLine", 62, HazardBench::humidBox), Not(Meets("INC-12")))
        << "half an hour warms a wall through (common practice, no source)";
}

TEST(Inc12, ALineOnADampBenchWaitsToo)
{
    HazardBench bench;
    const PieceId heron = bench.add("goldLacquerSeam");
    bench.read(HazardBench::table, 20, 84, 0);
    EXPECT_THAT(bench.starting(heron, "lineCoat", 60), Blocks("INC-12"));
    EXPECT_THAT(bench.starting(heron, "pareSet", 60), Not(Meets("INC-12")));
    bench.read(HazardBench::table, 20, 80, 61);
    EXPECT_THAT(bench.starting(heron, "lineCoat", 62), Not(Meets("INC-12")));
}

TEST(Climate, SaysNothingOfAirThatNobodyRead)
{
    HazardBench bench;
    const PieceId tea = bench.add("testUrushi");
    const auto found = bench.starting(tea, "urushiLine", 10, HazardBench::humidBox);
    EXPECT_THAT(found, Not(Meets("INC-11")));
    EXPECT_THAT(found, Not(Meets("INC-12")));
}
