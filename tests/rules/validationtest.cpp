#include "core/rules/validation.h"

#include "tests/rules/planted.h"

#include <gtest/gtest.h>

#include <functional>
#include <set>

using namespace mend;
using namespace mend::rules;
using namespace mend::test;

TEST(Validation, FindsNothingInTheShippedRules) { EXPECT_EQ(allTold(validate(goodBook())), ""); }

TEST(Validation, TellsAllFaultsAtOnce)
{
    Procedure procedure = goldSeam();
    std::set<std::string> paths;
    for (const char* key : {"wipeBack", "cureFill", "dustPowder", "burnish"}) {
        stageOf(procedure, key).law = "magic";
        stageOf(procedure, key).done.clear();
        paths.insert(pathOf(procedure, key, "/law"));
        paths.insert(pathOf(procedure, key, "/done"));
    }
    const auto faults = validate(procedure, goodBook());
    for (const std::string& path : paths) {
        EXPECT_TRUE(isTold(faults, path)) << path;
    }
    EXPECT_EQ(faults.size(), paths.size());
}

namespace {

struct PlantedInBook {
    const char* what;
    std::string path;
    std::function<void(RuleBook&)> plant;
};

Hazard& hazardIn(RuleBook& book, const std::string& key)
{
    return *std::find_if(book.hazards.begin(), book.hazards.end(), [&](const Hazard& h) { return h.key == key; });
}

const std::vector<PlantedInBook> plantedInBooks = {
    {"a material with an unknown law", "/materials/0/law", [](RuleBook& b) { b.materials[0].law = "magic"; }},
    {"a material of an unknown family", "/materials/0/family", [](RuleBook& b) { b.materials[0].family = "cheese"; }},
    {"a material with an unknown caution", "/materials/0/cautions/0",
     [](RuleBook& b) { b.materials[0].cautions = {"beBrave"}; }},
    {"a tile without a pot life", "/materials/0/tile", [](RuleBook& b) { b.materials[0].potLife.reset(); }},
    {"a material twice", "/materials/1/key", [](RuleBook& b) { b.materials[1].key = b.materials[0].key; }},
    {"a limit that ends before it begins", "/materials/0/heatLimits/1/untilAge",
     [](RuleBook& b) { b.materials[0].heatLimits[1].untilAge = std::chrono::hours(1); }},
    {"a limit of 300 degrees", "/materials/0/heatLimits/0/warmest/most",
     [](RuleBook& b) { b.materials[0].heatLimits[0].warmest.most = Temperature::fromCelsius(300); }},
    {"a law upside down", "/laws/0/energy/most",
     [](RuleBook& b) { std::get<cure::Arrhenius>(b.laws[0].law).energy.high = kilojoulesPerMole(40); }},
    {"no extra credit below the stall", "/laws/0/noExtraAbove",
     [](RuleBook& b) { std::get<cure::Arrhenius>(b.laws[0].law).noExtraAbove = Temperature::fromCelsius(5); }},
    {"a bend outside the limits", "/laws/1/bend",
     [](RuleBook& b) { std::get<cure::Arrhenius>(b.laws[1].law).bend = Temperature::fromCelsius(50); }},
    {"a humid band upside down", "/laws/2/dampest",
     [](RuleBook& b) { std::get<cure::HumidBand>(b.laws[2].law).dampest = percentHumidity(50); }},
    {"a humidity over 100", "/laws/2/dampest",
     [](RuleBook& b) { std::get<cure::HumidBand>(b.laws[2].law).dampest = percentHumidity(120); }},
    {"a caution without words", "/cautions/0/text", [](RuleBook& b) { b.cautions[0].text.clear(); }},
    {"a hazard of nothing known", "/hazards/0/one/0", [](RuleBook& b) { hazardIn(b, "INC-01").one = {"ghosts"}; }},
    {"an overlap of one side only", "/hazards/0", [](RuleBook& b) { hazardIn(b, "INC-01").other.clear(); }},
    {"an answer that ends nothing known", "/hazards/0/answers/0/ends",
     [](RuleBook& b) { hazardIn(b, "INC-01").answers[0].ends = "ghosts"; }},
    {"a block without answers", "/hazards/0/answers", [](RuleBook& b) { hazardIn(b, "INC-01").answers.clear(); }},
    {"an excepted stage that is none", "/hazards/20/exceptStages/0",
     [](RuleBook& b) { hazardIn(b, "INC-21").exceptStages = {"nothing"}; }},
    {"a climate of no kind", "/hazards/10", [](RuleBook& b) { hazardIn(b, "INC-11").humidity.reset(); }},
    {"an assembly of no kind", "/hazards/15/one/0", [](RuleBook& b) { hazardIn(b, "INC-16").one = {"plaster"}; }},
    {"a practice figure outside its range", "/practice/benchReadingAge",
     [](RuleBook& b) { b.practice.benchReadingAge.value = std::chrono::hours(9); }},
};

} // namespace

TEST(Validation, TellsEveryFaultPlantedInWhatProceduresShare)
{
    for (const PlantedInBook& planted : plantedInBooks) {
        RuleBook book = goodBook();
        planted.plant(book);
        const auto faults = validate(book);
        EXPECT_TRUE(isTold(faults, planted.path)) << planted.what << ", told:\n" << allTold(faults);
    }
}
