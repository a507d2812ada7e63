#include "core/bench/benchpicture.h"

#include "tests/bench/hazardbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::test;
using mend::bench::BenchPicture;

namespace {

const std::vector<bench::Window> none;

/// Whether the newest thing put into a piece is not hard yet at a minute.
bool isUncured(const HazardBench& bench, PieceId piece, double minute)
{
    const auto folded = bench.fold();
    const BenchPicture picture(folded, none, bench.book(), HazardBench::at(minute));
    const bench::Contents* contents = picture.contents(piece);
    return picture.isUncured(*contents, contents->materials.back());
}

} // namespace

TEST(BenchPicture, KnowsWhatEachStagePutIn)
{
    HazardBench bench;
    const PieceId heron = bench.add("goldLacquerSeam");
    bench.piece(heron).materialsInIt = {"plaster", "nobodyKnows"};
    bench.done(heron, "glueSet", 10);
    bench.begun(heron, "fillRun", 20);
    const auto folded = bench.fold();
    const BenchPicture picture(folded, none, bench.book(), HazardBench::at(30));
    const bench::Contents* contents = picture.contents(heron);
    ASSERT_NE(contents, nullptr);
    ASSERT_EQ(contents->materials.size(), 4U);
    EXPECT_EQ(contents->materials[0].material->key, "plaster");
    EXPECT_EQ(contents->materials[1].material->family, "oldMend") << "what nobody knows limits like an old mend";
    EXPECT_TRUE(contents->materials[1].oldMend);
    EXPECT_EQ(contents->materials[2].material->key, "fillerPaste");
    EXPECT_EQ(contents->materials[2].since, HazardBench::at(30)) << "hands are still on it";
    EXPECT_EQ(contents->materials[3].material->key, "fastAdhesive");
    EXPECT_EQ(contents->materials[3].since, HazardBench::at(10));
    EXPECT_EQ(picture.contents(PieceId(99)), nullptr);
}

TEST(BenchPicture, TakesAnOldReadingOnTheSafeSide)
{
    HazardBench bench;
    bench.read(HazardBench::table, 20, 50, 0);
    const PieceId heron = bench.add("goldLacquerSeam");
    const auto folded = bench.fold();
    const BenchPicture fresh(folded, none, bench.book(), HazardBench::at(60));
    EXPECT_EQ(fresh.airOf(HazardBench::table)->temperature, Temperature::fromCelsius(20));
    EXPECT_EQ(*fresh.coolest(*fresh.contents(heron), 30min), Temperature::fromCelsius(20));
    const BenchPicture stale(folded, none, bench.book(), HazardBench::at(300));
    EXPECT_EQ(stale.airOf(HazardBench::table)->temperature, Temperature::fromCelsius(23));
    EXPECT_EQ(*stale.coolest(*stale.contents(heron), 30min), Temperature::fromCelsius(17));
    EXPECT_EQ(stale.airOf(HazardBench::cabinet), std::nullopt);
}

// A warm cure counts by equivalent age: 24 h at 21 degrees are about 4.4 h at 40 (60 kJ/mol).
TEST(BenchPicture, CountsAWarmCureByEquivalentAge)
{
    HazardBench bench;
    bench.read(HazardBench::cabinet, 40, 20, 0);
    const PieceId heron = bench.add("goldLacquerSeam");
    bench.done(heron, "fillRun", 0);
    bench.put(heron, HazardBench::cabinet, 0);
    EXPECT_TRUE(isUncured(bench, heron, 5.3 * 60));
    EXPECT_FALSE(isUncured(bench, heron, 5.5 * 60));
}
