#include "core/rules/validation.h"

#include "tests/support/rulefiles.h"

#include <gtest/gtest.h>

#include <functional>
#include <set>

using namespace mend;
using namespace mend::rules;

namespace {

const RuleBook& goodBook()
{
    static const RuleBook book = test::shippedRules();
    return book;
}

Procedure goldSeam() { return *goodBook().procedure("goldLacquerSeam"); }

Stage& stageOf(Procedure& procedure, const std::string& key) { return procedure.stages[*procedure.indexOf(key)]; }

std::string pathOf(const Procedure& procedure, const std::string& key, const std::string& rest)
{
    return "/stages/" + std::to_string(*procedure.indexOf(key)) + rest;
}

bool isTold(const std::vector<RuleFault>& faults, const std::string& path)
{
    return std::any_of(faults.begin(), faults.end(), [&](const RuleFault& fault) { return fault.path == path; });
}

std::string allTold(const std::vector<RuleFault>& faults)
{
    std::string text;
    for (const RuleFault& fault : faults) {
        text += fault.path + ": " + fault.text + "\n";
    }
    return text;
}

struct PlantedInStage {
    const char* what;
    std::string stage;
    std::string path; ///< below the stage
    std::function<void(Stage&)> plant;
};

SpanFigure minutesFigure(int value) { return {std::chrono::minutes(value), Span{0}, std::chrono::days(10), {"x", {}}}; }

// One planted fault a row, each of which must be told at its own place.
const std::vector<PlantedInStage> plantedInStages = {
    {"an origin that is no stage", "wipeBack", "/opens/0/from/stage", [](Stage& s) { s.opens[0].from.stage = "wipe"; }},
    {"a closing whose origin is no stage", "wipeBack", "/closes/0/from/stage",
     [](Stage& s) { s.closes[0].from.stage = "nobody"; }},
    {"a stage that waits for itself", "wipeBack", "/opens/0/from",
     [](Stage& s) { s.opens[0].from.stage = "wipeBack"; }},
    {"the one before of what is done once", "wetSand", "/opens/0/from/which",
     [](Stage& s) { s.opens[0].from.which = Which::Previous; }},
    {"a mix where none is", "wipeBack", "/closes/0/from/touch",
     [](Stage& s) {
         s.closes[0].from.stage = "wipeBack";
         s.closes[0].from.touch = Touch::Mixing;
     }},
    {"a figure above its range", "wipeBack", "/closes/0/span",
     [](Stage& s) { s.closes[0].span.value = std::chrono::minutes(45); }},
    {"a figure below its range", "wipeBack", "/opens/0/span", [](Stage& s) { s.opens[0].span.value = Span{0}; }},
    {"a range upside down", "wipeBack", "/closes/0/span/most",
     [](Stage& s) { s.closes[0].span.most = std::chrono::minutes(1); }},
    {"a negative time", "wipeBack", "/opens/0/span/least",
     [](Stage& s) { s.opens[0].span.least = std::chrono::minutes(-1); }},
    {"a time of years", "cureFill", "/waits/0/span/most",
     [](Stage& s) { s.waits[0].span.most = std::chrono::days(2000); }},
    {"a number without its source", "wipeBack", "/closes/0/span/source",
     [](Stage& s) { s.closes[0].span.source.text.clear(); }},
    {"a temperature in Fahrenheit", "wipeBack", "/reference",
     [](Stage& s) { s.reference = Temperature::fromCelsius(300); }},
    {"a closing without its cost", "wipeBack", "/miss", [](Stage& s) { s.miss = Miss::Nothing; }},
    {"a closing that does not say its cost", "dustPowder", "/miss", [](Stage& s) { s.missText.clear(); }},
    {"a counted window without its cost", "glueSet", "/miss", [](Stage& s) { s.miss = Miss::Nothing; }},
    {"an end of day without its cost", "recoverPowder", "/miss", [](Stage& s) { s.miss = Miss::Nothing; }},
    {"a cost without a closing", "wetSand", "/miss", [](Stage& s) { s.miss = Miss::Day; }},
    {"a closing before its opening", "wipeBack", "/closes/0/span",
     [](Stage& s) {
         s.closes[0].from = s.opens[0].from;
         s.closes[0].span = minutesFigure(2);
     }},
    {"lost before it closes", "dustPowder", "/closes/0/lost", [](Stage& s) { s.closes[0].lost = minutesFigure(60); }},
    {"recommended before it opens", "dustPowder", "/recommended", [](Stage& s) { s.recommended = minutesFigure(5); }},
    {"a soft opening", "wipeBack", "/opens/0", [](Stage& s) { s.opens[0].soft = true; }},
    {"an unknown law", "wipeBack", "/law", [](Stage& s) { s.law = "magic"; }},
    {"an unknown material", "fillRun", "/uses/0", [](Stage& s) { s.uses = {"chewingGum"}; }},
    {"an unknown mix", "fillRun", "/mix", [](Stage& s) { s.mix = "chewingGum"; }},
    {"a mix of what is never mixed", "fillRun", "/mix", [](Stage& s) { s.mix = "goldPowder"; }},
    {"an unknown state under hands", "wipeBack", "/during/0", [](Stage& s) { s.during = {"mood"}; }},
    {"an unknown state left", "wipeBack", "/leaves/0/state", [](Stage& s) { s.leaves[0].state = "mood"; }},
    {"an unknown state ended", "recoverPowder", "/ends/0", [](Stage& s) { s.ends = {"mood"}; }},
    {"an unknown caution", "wipeBack", "/cautions/0", [](Stage& s) { s.cautions = {"beBrave"}; }},
    {"an unknown place", "wipeBack", "/places/0", [](Stage& s) { s.places = {"moon"}; }},
    {"no place", "wipeBack", "", [](Stage& s) { s.places.clear(); }},
    {"an unknown resource", "wipeBack", "/resources/0", [](Stage& s) { s.resources = {"teeth"}; }},
    {"an unknown condition", "wipeBack", "/waits/0/when", [](Stage& s) { s.waits[0].when = "shiny"; }},
    {"a wait that can never rule", "wipeBack", "/waits/0", [](Stage& s) { s.waits[0].when.clear(); }},
    {"a longest wait that is shorter", "cureFill", "/waits/0/longest",
     [](Stage& s) { s.waits[0].longest = minutesFigure(1); }},
    {"a wait of what has none", "dryFit", "/opens/0/waitOfStage",
     [](Stage& s) { s.opens[0].from.stage = "recordAsFound"; }},
    {"no words on the button", "wipeBack", "/done", [](Stage& s) { s.done.clear(); }},
    {"too many words on the button", "wipeBack", "/done", [](Stage& s) { s.done = "The filler has been wiped back"; }},
    {"too many words on the card", "wipeBack", "/act", [](Stage& s) { s.act = std::string(33, 'w'); }},
    {"too many words for the voice", "wipeBack", "/spoken", [](Stage& s) { s.spoken = "wipe it back now"; }},
    {"a key with blanks", "wipeBack", "/key", [](Stage& s) { s.key = "wipe back"; }},
    {"a key that is given already", "wetSand", "/key", [](Stage& s) { s.key = "takeOut"; }},
    {"a rest that wants hands", "restJoins", "/byItself",
     [](Stage& s) { s.handsOn.fixed.value = std::chrono::minutes(1); }},
    {"red before the goal", "glueSet", "/counted/red",
     [](Stage& s) { s.counted->red.value = std::chrono::seconds(60); }},
    {"a warning under the end of the forecast", "fillRun", "/warnBelow",
     [](Stage& s) { s.warnBelow->value = Temperature::fromCelsius(20); }},
    {"mixing of nothing", "wipeBack", "/mixesHere", [](Stage& s) { s.mixesHere = true; }},
    {"a warm cure on the bench", "cureFill", "/warmCures", [](Stage& s) { s.places = {"bench"}; }},
    // The hazard limit wins over a practice figure:
    {"49 C in the cabinet with young joins inside", "cureFill", "/warmCures/0/temperature",
     [](Stage& s) {
         s.warmCures[0].temperature = {
             Temperature::fromCelsius(49), Temperature::fromCelsius(40), Temperature::fromCelsius(49), {"x", {}}};
     }},
    {"45 C for joins of any age", "cureFill", "/warmCures/2/temperature",
     [](Stage& s) { s.warmCures[2].fromAge.reset(); }},
    {"into the cabinet 10 minutes after a wipe", "cureFill", "/opens/0/span",
     [](Stage& s) { s.opens[0].span = minutesFigure(10); }},
    {"a line 10 minutes after sanding", "groundCoat", "/opens/0/span",
     [](Stage& s) { s.opens[0].span = minutesFigure(10); }},
};

} // namespace

TEST(Validation, FindsNothingInTheShippedProcedures)
{
    for (const Procedure& procedure : goodBook().procedures) {
        EXPECT_EQ(allTold(validate(procedure, goodBook())), "") << procedure.key;
    }
    EXPECT_EQ(allTold(validate(goodBook())), "");
}

TEST(Validation, TellsEveryPlantedFaultAtItsPlace)
{
    for (const PlantedInStage& planted : plantedInStages) {
        Procedure procedure = goldSeam();
        const std::string path = pathOf(procedure, planted.stage, planted.path);
        planted.plant(stageOf(procedure, planted.stage));
        const auto faults = validate(procedure, goodBook());
        EXPECT_TRUE(isTold(faults, path)) << planted.what << " at " << path << ", told:\n" << allTold(faults);
    }
}

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

TEST(Validation, FindsARingHoweverLong)
{
    Procedure procedure = goldSeam();
    Lag back;
    back.from = {"burnish", Touch::Last, Which::Same};
    back.span = minutesFigure(1);
    stageOf(procedure, "wetSand").opens.push_back(back);
    const auto faults = validate(procedure, goodBook());
    ASSERT_EQ(faults.size(), 1U) << allTold(faults);
    EXPECT_NE(faults[0].text.find("ring"), std::string::npos);
}

TEST(Validation, TakesTheRepetitionBeforeForNoRing)
{
    Procedure procedure = goldSeam();
    Lag before;
    before.from = {"pareSet", Touch::Last, Which::Previous};
    before.span = minutesFigure(0);
    stageOf(procedure, "glueSet").opens.push_back(before);
    EXPECT_EQ(allTold(validate(procedure, goodBook())), "");
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

// The practice figure of 49 C is inside the rule's range, so that a studio may choose it where every limit allows it.
TEST(Validation, Allows49DegreesWhereEveryLimitInsideDoes)
{
    RuleBook book = goodBook();
    Procedure procedure = goldSeam();
    const auto faultsAt49 = [&] {
        stageOf(procedure, "cureFill").warmCures[2].temperature.value = Temperature::fromCelsius(49);
        return validate(procedure, book);
    };
    EXPECT_EQ(faultsAt49().size(), 1U);
    for (Material& material : book.materials) {
        if (material.key == "fastAdhesive") {
            material.heatLimits.clear();
        }
    }
    EXPECT_EQ(allTold(faultsAt49()), "");
}
