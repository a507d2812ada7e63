#include "core/rules/stagecheck.h"

#include "tests/rules/planted.h"

#include <gtest/gtest.h>

#include <functional>

using namespace mend;
using namespace mend::rules;
using namespace mend::test;

namespace {

struct PlantedInStage {
    const char* what;
    std::string stage;
    std::string path; ///< below the stage
    std::function<void(Stage&)> plant;
};

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

TEST(StageCheck, TellsEveryPlantedFaultAtItsPlace)
{
    for (const PlantedInStage& planted : plantedInStages) {
        Procedure procedure = goldSeam();
        const std::string path = pathOf(procedure, planted.stage, planted.path);
        planted.plant(stageOf(procedure, planted.stage));
        const auto faults = validate(procedure, goodBook());
        EXPECT_TRUE(isTold(faults, path)) << planted.what << " at " << path << ", told:\n" << allTold(faults);
    }
}
