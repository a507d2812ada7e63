#include "tests/bench/hazardbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::test;
using testing::ElementsAre;
using testing::Not;

namespace {

const std::string gold = "goldLacquerSeam";

bench::BenchDay day(double closes, double opens) { return {HazardBench::at(closes), HazardBench::at(opens)}; }

} // namespace

// Placing a set takes up to 90 seconds from mixing: a US restoration studio's how-to.
TEST(Inc14, OnePairOfHandsPlacesOneSetAtATime)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId cup = bench.add(gold);
    bench.begun(heron, "glueSet", 10);
    const auto found = bench.starting(cup, "glueSet", 11);
    EXPECT_THAT(found, Blocks("INC-14"));
    EXPECT_THAT(findingOf(found, "INC-14")->pieces, ElementsAre(heron, cup));
    EXPECT_THAT(bench.starting(heron, "glueSet", 11, HazardBench::table, 2), Blocks("INC-14"));
    EXPECT_THAT(bench.starting(heron, "glueSet", 11), Not(Meets("INC-14"))) << "it is the one in hand";
    EXPECT_THAT(bench.starting(cup, "fillRun", 11), Not(Meets("INC-14")));
    EXPECT_THAT(bench.starting(cup, "glueSet", 11.6), Not(Meets("INC-14"))) << "the first has its place or has gelled";
}

TEST(Inc14, IsOverWhenTheFirstIsInPlace)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId cup = bench.add(gold);
    bench.begun(heron, "glueSet", 10);
    bench.done(heron, "glueSet", 10.8);
    EXPECT_THAT(bench.starting(cup, "glueSet", 11), Not(Meets("INC-14")));
}

TEST(Inc15, TwoWipesMayNotCloseWithinTenMinutes)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const PieceId cup = bench.add(gold);
    bench.begun(heron, "fillRun", 0);
    bench.done(heron, "fillRun", 3);
    const auto found = bench.starting(cup, "fillRun", 9);
    EXPECT_THAT(found, Warns("INC-15"));
    EXPECT_THAT(findingOf(found, "INC-15")->pieces, ElementsAre(heron, cup));
    EXPECT_THAT(bench.starting(cup, "fillRun", 10.1), Not(Meets("INC-15")));
    EXPECT_THAT(bench.starting(cup, "glueSet", 9), Not(Meets("INC-15")));
    EXPECT_THAT(bench.standing(9), Not(Meets("INC-15")));
    bench.begun(cup, "fillRun", 5);
    bench.done(cup, "fillRun", 8);
    const auto standing = bench.standing(9);
    EXPECT_THAT(standing, Warns("INC-15"));
    EXPECT_THAT(findingOf(standing, "INC-15")->pieces, ElementsAre(heron, cup));
}

TEST(Inc27, NothingIsStartedThatClosesUnattended)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const bench::Start fill{heron, {"fillRun", 1}, HazardBench::table};
    const auto found = bench.asked(fill, 60, day(70, 1000));
    EXPECT_THAT(found, Blocks("INC-27"));
    EXPECT_THAT(findingOf(found, "INC-27")->pieces, ElementsAre(heron));
    EXPECT_EQ(findingOf(found, "INC-27")->until, HazardBench::at(1000));
    EXPECT_THAT(bench.asked(fill, 60, day(120, 1000)), Not(Meets("INC-27"))) << "the wipe closes before";
    const bench::Start pare{heron, {"recordAsFound", 1}, HazardBench::table};
    EXPECT_THAT(bench.asked(pare, 60, day(70, 1000)), Not(Meets("INC-27"))) << "nothing closes after it";
    EXPECT_THAT(bench.asked(fill, 60), Not(Meets("INC-27"))) << "nobody told the hours";
}

TEST(Inc27, OnlyRemindsWhereItCanStillBeDoneInHours)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    // The line may be dusted 15 minutes after it is laid and closes after 120.
    const bench::Start line{heron, {"lineCoat", 1}, HazardBench::table};
    EXPECT_THAT(bench.asked(line, 60, day(60 + 90, 1000)), Reminds("INC-27"));
    EXPECT_THAT(bench.asked(line, 60, day(60 + 10, 1000)), Blocks("INC-27"));
    EXPECT_THAT(bench.asked(line, 60, day(60 + 240, 1000)), Not(Meets("INC-27")));
}

TEST(Inc27, TheNextMorningIsAttendedAgain)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    const bench::Start line{heron, {"lineCoat", 1}, HazardBench::table};
    EXPECT_THAT(bench.asked(line, 60, day(61, 63)), Not(Meets("INC-27")));
}

TEST(Inc27, RemindsOfWindowsThatRunIntoTheNight)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.done(heron, "issuePowder", 50);
    bench.done(heron, "lineCoat", 60);
    const auto found = bench.standing(80, day(120, 1000));
    EXPECT_THAT(found, Reminds("INC-27"));
    EXPECT_THAT(findingOf(found, "INC-27")->pieces, ElementsAre(heron));
    EXPECT_THAT(bench.standing(80, day(200, 1000)), Not(Meets("INC-27")));
}

TEST(Inc27, TakesTheHoursOfTheRosterWhereNoneAreGiven)
{
    HazardBench bench;
    const PieceId heron = bench.add(gold);
    bench.roster().openHours = {{HazardBench::at(0), HazardBench::at(70)},
                                {HazardBench::at(1000), HazardBench::at(1500)}};
    EXPECT_THAT(bench.starting(heron, "fillRun", 60), Blocks("INC-27"));
    EXPECT_THAT(bench.starting(heron, "fillRun", 20), Not(Meets("INC-27")));
    EXPECT_THAT(bench.starting(heron, "fillRun", 500), Blocks("INC-27")) << "the bench is closed";
}

TEST(BenchDay, OutsideHoursHasJustClosed)
{
    bench::Roster roster;
    roster.openHours = {{HazardBench::at(0), HazardBench::at(70)}, {HazardBench::at(100), HazardBench::at(150)}};
    const auto inside = bench::benchDayOf(roster, HazardBench::at(10));
    EXPECT_EQ(inside.benchCloses, HazardBench::at(70));
    EXPECT_EQ(inside.nextOpens, HazardBench::at(100));
    const auto between = bench::benchDayOf(roster, HazardBench::at(80));
    EXPECT_EQ(between.benchCloses, HazardBench::at(80));
    EXPECT_EQ(between.nextOpens, HazardBench::at(100));
    EXPECT_EQ(bench::benchDayOf({}, HazardBench::at(80)).benchCloses, std::nullopt);
}
