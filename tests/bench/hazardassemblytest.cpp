#include "tests/bench/hazardbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::test;
using testing::ElementsAre;
using testing::Not;

namespace {

std::vector<bench::HazardFinding> joining(const bench::AssemblyFacts& facts)
{
    HazardBench bench;
    const PieceId heron = bench.add("goldLacquerSeam");
    return bench.asked({heron, {"glueSet", 1}, HazardBench::table}, 1, {}, &facts);
}

} // namespace

TEST(Inc16, AFragmentThatCouldNotEnterAnyMoreStopsTheStart)
{
    const auto found = joining({.lockedOut = {"F7"}});
    EXPECT_THAT(found, Blocks("INC-16"));
    EXPECT_THAT(findingOf(found, "INC-16")->fragments, ElementsAre("F7"));
    EXPECT_THAT(joining({}), Not(Meets("INC-16")));
}

TEST(Inc17, ARingClosesWithBothJointsInOneSet)
{
    const bench::AssemblyFacts left{.closesRing = true, .openJoins = {"J1", "J4"}, .joinsOfSet = {"J4"}};
    const auto found = joining(left);
    EXPECT_THAT(found, Warns("INC-17"));
    EXPECT_THAT(findingOf(found, "INC-17")->fragments, ElementsAre("J1"));
    EXPECT_THAT(joining({.closesRing = true, .openJoins = {"J1", "J4"}, .joinsOfSet = {"J4", "J1"}}),
                Not(Meets("INC-17")));
    EXPECT_THAT(joining({.closesRing = false, .openJoins = {"J1"}, .joinsOfSet = {}}), Not(Meets("INC-17")));
}

TEST(Assembly, SaysNothingWhereTheOrderIsNotKnown)
{
    HazardBench bench;
    const PieceId heron = bench.add("goldLacquerSeam");
    EXPECT_THAT(bench.starting(heron, "glueSet", 1), Not(Meets("INC-16")));
}
