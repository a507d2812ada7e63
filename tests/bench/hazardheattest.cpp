#include "core/bench/hazardheat.h"

#include "tests/bench/hazardbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::test;
using testing::ElementsAre;
using testing::Not;

namespace {

const std::string goldSeam = "goldLacquerSeam";

bench::Start intoCabinet(PieceId piece, const std::string& stage, double celsius)
{
    return {piece, {stage, 1}, HazardBench::cabinet, Temperature::fromCelsius(celsius)};
}

} // namespace

// Limits of what may lie in a cabinet, all common practice built from published softening points.
TEST(HeatLimit, OfEveryMaterialAtItsAge)
{
    struct Row {
        const char* material;
        double hours;
        double celsius;
    };
    const Row rows[] = {
        {"fastAdhesive", 0, 40},     {"fastAdhesive", 23.99, 40}, {"fastAdhesive", 24, 45},   {"joinResin", 0, 30},
        {"joinResin", 7 * 24.0, 35}, {"urushiCoat", 0, 28},       {"urushiCoat", 9000.0, 28}, {"plaster", 1, 45},
        {"oldMend", 0, 30},          {"waxOrTape", 0, 30},
    };
    for (const Row& row : rows) {
        const rules::Material* material = hazardBook().material(row.material);
        ASSERT_NE(material, nullptr) << row.material;
        const Span age{static_cast<std::int64_t>(row.hours * 3600000.0)};
        const auto limit = bench::heatLimitOf(*material, age);
        ASSERT_TRUE(limit) << row.material;
        EXPECT_EQ(*limit, Temperature::fromCelsius(row.celsius)) << row.material << " after " << row.hours << " h";
    }
    EXPECT_EQ(bench::heatLimitOf(*hazardBook().material("goldPowder"), 1h), std::nullopt);
}

TEST(Inc04, TheYoungestJoinInsideSetsTheCabinet)
{
    HazardBench bench;
    const PieceId heron = bench.add(goldSeam);
    bench.done(heron, "glueSet", 0, 1);
    bench.done(heron, "glueSet", 20 * 60, 2);
    const double next = 26 * 60;
    EXPECT_THAT(bench.asked(intoCabinet(heron, "cureFill", 40), next), Not(Meets("INC-04")));
    const auto found = bench.asked(intoCabinet(heron, "cureFill", 40.01), next);
    EXPECT_THAT(found, Blocks("INC-04"));
    EXPECT_THAT(findingOf(found, "INC-04")->pieces, ElementsAre(heron));
    EXPECT_THAT(bench.asked(intoCabinet(heron, "cureFill", 45), 45 * 60), Not(Meets("INC-04"))) << "both sets are old";
    EXPECT_THAT(bench.asked(intoCabinet(heron, "cureFill", 45.01), 45 * 60), Blocks("INC-04"));
}

TEST(Inc04, NamesThePieceInsideThatWouldSuffer)
{
    HazardBench bench;
    bench.read(HazardBench::cabinet, 24, 40, 0);
    const PieceId bowl = bench.add("testShop");
    const PieceId heron = bench.add(goldSeam);
    bench.done(heron, "fillRun", 1);
    bench.piece(bowl).materialsInIt = {"waxOrTape"};
    bench.put(bowl, HazardBench::cabinet, 2);
    const auto found = bench.asked(intoCabinet(heron, "cureFill", 43), 60);
    EXPECT_THAT(found, Blocks("INC-04"));
    EXPECT_THAT(findingOf(found, "INC-04")->pieces, ElementsAre(bowl));
    bench.put(bowl, HazardBench::table, 61);
    EXPECT_THAT(bench.asked(intoCabinet(heron, "cureFill", 43), 62), Not(Meets("INC-04")));
}

TEST(Inc04, ReadsTheCabinetWhereNobodySaysWhatItIsSetTo)
{
    HazardBench bench;
    const PieceId heron = bench.add(goldSeam);
    bench.done(heron, "glueSet", 0);
    bench.read(HazardBench::cabinet, 40, 20, 5);
    EXPECT_THAT(bench.starting(heron, "cureFill", 6, HazardBench::cabinet), Not(Meets("INC-04")));
    bench.read(HazardBench::cabinet, 41, 20, 7);
    EXPECT_THAT(bench.starting(heron, "cureFill", 8, HazardBench::cabinet), Blocks("INC-04"));
    EXPECT_THAT(bench.starting(heron, "cureFill", 8, HazardBench::table), Not(Meets("INC-04")));
}

TEST(Inc04, AnUnreadCabinetIsTakenToBeAsWarmAsTheCureAsksAtLeast)
{
    HazardBench bench;
    const PieceId heron = bench.add(goldSeam);
    EXPECT_THAT(bench.starting(heron, "cureFill", 6, HazardBench::cabinet), Not(Meets("INC-04")));
    bench.piece(heron).materialsInIt = {"oldMend"};
    EXPECT_THAT(bench.starting(heron, "cureFill", 6, HazardBench::cabinet), Blocks("INC-04"));
}

// The trade cures filler at 43 to 49 degrees (common practice, no source); whatever the rule of the stage
// says, no warm cure is let through over the lowest limit inside.
TEST(Inc04, AHazardLimitAlwaysBeatsAPracticeFigure)
{
    rules::RuleBook book = hazardBook();
    auto procedure = std::ranges::find(book.procedures, goldSeam, &rules::Procedure::key);
    auto cure = std::ranges::find(procedure->stages, "cureFill", &rules::Stage::key);
    ASSERT_FALSE(cure->warmCures.empty());
    rules::WarmCure hot = cure->warmCures.front();
    hot.temperature.value = Temperature::fromCelsius(49);
    hot.fromAge.reset();
    cure->warmCures = {hot};
    HazardBench bench(book);
    const PieceId heron = bench.add(goldSeam);
    bench.done(heron, "glueSet", 0);
    const auto found = bench.starting(heron, "cureFill", 48 * 60, HazardBench::cabinet);
    EXPECT_THAT(found, Blocks("INC-04"));
    EXPECT_THAT(bench.asked(intoCabinet(heron, "cureFill", 49), 48 * 60), Blocks("INC-04"));
    EXPECT_THAT(bench.asked(intoCabinet(heron, "cureFill", 45), 48 * 60), Not(Meets("INC-04")));
}

TEST(Inc04, NoShippedWarmCureIsOverTheLimitOfTheAgeItIsFor)
{
    for (const rules::Procedure& procedure : shippedRules().procedures) {
        for (const rules::Stage& stage : procedure.stages) {
            for (const rules::WarmCure& cure : stage.warmCures) {
                const auto limit =
                    bench::heatLimitOf(*hazardBook().material("fastAdhesive"), cure.fromAge.value_or(0h));
                ASSERT_TRUE(limit);
                EXPECT_LE(cure.temperature.value, *limit) << procedure.key << " " << stage.key;
            }
        }
    }
}

TEST(Inc05, NoWarmCureBesideAResinJoin)
{
    HazardBench bench;
    const PieceId jug = bench.add("testResin");
    const PieceId heron = bench.add(goldSeam);
    bench.done(jug, "resinJoin", 0);
    bench.put(jug, HazardBench::cabinet, 1);
    const double nineDays = 9 * 24 * 60;
    const auto found = bench.asked(intoCabinet(heron, "cureFill", 36), nineDays);
    EXPECT_THAT(found, Blocks("INC-05"));
    EXPECT_THAT(findingOf(found, "INC-05")->pieces, ElementsAre(jug));
    EXPECT_THAT(found, Not(Meets("INC-04"))) << "one finding a place";
    const auto allowed = bench.asked(intoCabinet(heron, "cureFill", 35), nineDays);
    EXPECT_THAT(allowed, Not(Meets("INC-05")));
    EXPECT_THAT(allowed, Not(Meets("INC-04")));
    bench.put(jug, HazardBench::shelf, nineDays);
    EXPECT_THAT(bench.asked(intoCabinet(heron, "cureFill", 36), nineDays + 1), Not(Meets("INC-05")));
}

TEST(Inc05, FreshResinBearsStillLess)
{
    HazardBench bench;
    const PieceId jug = bench.add("testResin");
    bench.done(jug, "resinJoin", 0);
    const auto found = bench.asked(intoCabinet(jug, "resinClean", 31), 24 * 60);
    EXPECT_THAT(found, Blocks("INC-04")) << "30 degrees in its first week";
    EXPECT_THAT(bench.asked(intoCabinet(jug, "resinClean", 30), 24 * 60), Not(Meets("INC-04")));
}

TEST(StandingHeat, IsOneNoticeAPlaceNamingItsPieces)
{
    HazardBench bench;
    bench.read(HazardBench::cabinet, 43, 20, 0);
    const PieceId heron = bench.add(goldSeam);
    const PieceId jug = bench.add("testResin");
    const PieceId old = bench.add(goldSeam);
    bench.done(heron, "glueSet", 1);
    bench.done(jug, "resinJoin", 1);
    bench.done(old, "glueSet", -48 * 60);
    for (const PieceId piece : {heron, jug, old}) {
        bench.put(piece, HazardBench::cabinet, 2);
    }
    const auto found = bench.standing(3);
    const auto ofHeat = [](const bench::HazardFinding& each) {
        return each.hazard->meeting == rules::Meeting::HeatLimit;
    };
    ASSERT_EQ(std::ranges::count_if(found, ofHeat), 1);
    const auto notice = std::ranges::find_if(found, ofHeat);
    EXPECT_EQ(notice->place, HazardBench::cabinet);
    EXPECT_THAT(notice->pieces, ElementsAre(heron, jug)) << "the old joins bear 45 degrees";
    bench.read(HazardBench::cabinet, 30, 20, 4);
    EXPECT_EQ(std::ranges::count_if(bench.standing(5), ofHeat), 0);
}

TEST(StandingHeat, CountsAHotSummerRoomToo)
{
    HazardBench bench;
    const PieceId jug = bench.add("testResin");
    bench.done(jug, "resinJoin", 0);
    bench.read(HazardBench::table, 31, 40, 60);
    const auto found = bench.standing(61);
    EXPECT_THAT(found, Blocks("INC-04"));
    EXPECT_EQ(findingOf(found, "INC-04")->place, HazardBench::table);
    EXPECT_THAT(bench.starting(jug, "resinClean", 61), Not(Meets("INC-04"))) << "it stops no start at the table";
}

TEST(HeatCap, SaysWhoseLimitItIs)
{
    HazardBench bench;
    const PieceId heron = bench.add(goldSeam);
    const PieceId tea = bench.add("testUrushi");
    bench.done(heron, "glueSet", 0);
    bench.done(tea, "urushiLine", 0);
    const auto folded = bench.fold();
    const std::vector<bench::Window> none;
    const bench::BenchPicture picture(folded, none, bench.book(), HazardBench::at(5));
    const auto cap = bench::heatCapOf(HazardBench::table, nullptr, picture);
    ASSERT_TRUE(cap);
    EXPECT_EQ(cap->warmest, Temperature::fromCelsius(28));
    EXPECT_EQ(cap->piece, tea);
    EXPECT_EQ(cap->material->key, "urushiCoat");
    EXPECT_EQ(bench::heatCapOf(HazardBench::cabinet, picture.contents(heron), picture)->warmest,
              Temperature::fromCelsius(40));
    EXPECT_EQ(bench::heatCapOf(HazardBench::cabinet, nullptr, picture), std::nullopt);
}
