#include "tests/support/rulefiles.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::rules;

namespace {

const RuleBook& hazardBook()
{
    static const RuleBook book = test::shippedRules();
    return book;
}

struct KnownHazard {
    const char* key;
    Meeting meeting;
    Verdict verdict;
};

// What the trade does about each combination. INC-27 reminds in the evening and stops a start
// that would close unattended: stopping is the stronger, so that is its verdict.
const std::vector<KnownHazard> knownHazards = {
    {"INC-01", Meeting::Overlap, Verdict::Block},   {"INC-02", Meeting::Overlap, Verdict::Block},
    {"INC-03", Meeting::Overlap, Verdict::Block},   {"INC-04", Meeting::HeatLimit, Verdict::Block},
    {"INC-05", Meeting::HeatLimit, Verdict::Block}, {"INC-06", Meeting::Overlap, Verdict::Warn},
    {"INC-07", Meeting::Overlap, Verdict::Block},   {"INC-08", Meeting::Overlap, Verdict::Block},
    {"INC-09", Meeting::Overlap, Verdict::Warn},    {"INC-10", Meeting::Climate, Verdict::Warn},
    {"INC-11", Meeting::Climate, Verdict::Warn},    {"INC-12", Meeting::Climate, Verdict::Block},
    {"INC-13", Meeting::Overlap, Verdict::Warn},    {"INC-14", Meeting::Hands, Verdict::Block},
    {"INC-15", Meeting::Hands, Verdict::Warn},      {"INC-16", Meeting::Assembly, Verdict::Block},
    {"INC-17", Meeting::Assembly, Verdict::Warn},   {"INC-18", Meeting::Overlap, Verdict::Block},
    {"INC-19", Meeting::Overlap, Verdict::Block},   {"INC-20", Meeting::Overlap, Verdict::Warn},
    {"INC-21", Meeting::Overlap, Verdict::Block},   {"INC-22", Meeting::Overlap, Verdict::Warn},
    {"INC-23", Meeting::Overlap, Verdict::Block},   {"INC-24", Meeting::Overlap, Verdict::Block},
    {"INC-25", Meeting::Standing, Verdict::Warn},   {"INC-26", Meeting::Standing, Verdict::Remind},
    {"INC-27", Meeting::EndOfDay, Verdict::Block},  {"INC-28", Meeting::Standing, Verdict::Remind},
};

} // namespace

TEST(ShippedHazards, AreTheTwentyEightWithTheirVerdicts)
{
    ASSERT_EQ(hazardBook().hazards.size(), knownHazards.size());
    for (std::size_t i = 0; i < knownHazards.size(); ++i) {
        const Hazard& hazard = hazardBook().hazards[i];
        EXPECT_EQ(hazard.key, knownHazards[i].key);
        EXPECT_EQ(hazard.meeting, knownHazards[i].meeting) << hazard.key;
        EXPECT_EQ(hazard.verdict, knownHazards[i].verdict) << hazard.key;
        EXPECT_FALSE(hazard.said.empty()) << hazard.key;
        EXPECT_FALSE(hazard.source.text.empty()) << hazard.key;
        EXPECT_TRUE(hazard.verdict != Verdict::Block || hazard.answers.size() >= 2) << hazard.key;
    }
}

// 30 min after wipes: OSHA 1910.252 read for a small room; 35 C: Cardiff University; 3 C over dew
// point: decorative enamel sheet; 70 % and 60 %, 10 minutes, 90 s: common practice and studio pages.
TEST(ShippedHazards, CarryTheirNumbers)
{
    const auto hazard = [](const char* key) -> const Hazard& { return *hazardBook().hazard(key); };
    EXPECT_EQ(hazard("INC-01").span->value, std::chrono::minutes(30));
    EXPECT_EQ(hazard("INC-03").span->value, std::chrono::minutes(30));
    EXPECT_EQ(hazard("INC-05").temperature->value, Temperature::fromCelsius(35));
    EXPECT_EQ(hazard("INC-06").temperature->value, Temperature::fromCelsius(35));
    EXPECT_EQ(hazard("INC-10").humidity->value, percentHumidity(70));
    EXPECT_FALSE(hazard("INC-10").whenDrier);
    EXPECT_EQ(hazard("INC-11").humidity->value, percentHumidity(60));
    EXPECT_TRUE(hazard("INC-11").whenDrier);
    EXPECT_EQ(hazard("INC-12").margin->value, Temperature::fromCelsius(3));
    EXPECT_EQ(hazard("INC-14").span->value, std::chrono::seconds(90));
    EXPECT_EQ(hazard("INC-15").span->value, std::chrono::minutes(10));
    EXPECT_EQ(hazardBook().state("dustInAir")->lasts->value, std::chrono::minutes(30));
    EXPECT_EQ(hazardBook().state("oilyRags")->lasts->value, std::chrono::days(3));
}

TEST(ShippedHazards, StopAFlameWithFiveAnswersOfWhichSomeEndTheState)
{
    const Hazard& flame = *hazardBook().hazard("INC-01");
    ASSERT_EQ(flame.answers.size(), 5U);
    EXPECT_EQ(flame.answers[0].text, "Pads are in the can");
    EXPECT_EQ(flame.answers[0].ends, "padsDrying");
    EXPECT_EQ(flame.answers[3].text, "Flame is outside");
    EXPECT_TRUE(flame.answers[3].ends.empty());
    EXPECT_EQ(flame.answers[4].text, "Already lit");
}

// The acetone of a stage's own swab meets its own fresh joins on purpose.
TEST(ShippedHazards, SpareTheStagesThatAreMeantToMeetThem)
{
    const Hazard& acetone = *hazardBook().hazard("INC-21");
    EXPECT_EQ(acetone.exceptStages, (std::vector<std::string>{"pressJoin", "adjustWhole", "cleanExcess"}));
    EXPECT_EQ(acetone.nearby, Verdict::Warn);
    EXPECT_EQ(hazardBook().hazard("INC-08")->startingOne, Verdict::Warn);
    EXPECT_EQ(hazardBook().hazard("INC-18")->spares, Spares::SamePowder);
    EXPECT_EQ(hazardBook().hazard("INC-23")->spares, Spares::SameOwner);
}

TEST(ShippedHazards, SpeakOnlyOfStatesThatSomethingBringsOrSomebodyTells)
{
    for (const BenchState& state : hazardBook().states) {
        bool comes = !state.toldOn.empty();
        for (const Procedure& procedure : hazardBook().procedures) {
            for (const Stage& stage : procedure.stages) {
                comes = comes || std::count(stage.during.begin(), stage.during.end(), state.key) > 0;
                for (const Leaves& left : stage.leaves) {
                    comes = comes || left.state == state.key;
                }
            }
        }
        EXPECT_TRUE(comes) << state.key;
    }
}
