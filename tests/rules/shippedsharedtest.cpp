#include "core/rules/fields.h"

#include "tests/support/rulefiles.h"

#include <gtest/gtest.h>

#include <map>

using namespace mend;
using namespace mend::rules;

namespace {

const RuleBook& sharedBook()
{
    static const RuleBook book = test::shippedRules();
    return book;
}

/// The warmest at that age, in degrees Celsius; -1 where there is no limit.
double warmest(const std::string& key, Span age)
{
    for (const HeatLimit& limit : sharedBook().material(key)->heatLimits) {
        if (limit.fromAge.value_or(Span{0}) <= age && (!limit.untilAge || age < *limit.untilAge)) {
            return limit.warmest.value.celsius();
        }
    }
    return -1;
}

/// Counts every figure and remembers one whose source is not told.
struct FigureCount {
    static constexpr bool reading = false;
    int figures = 0;
    int sourceless = 0;

    void text(std::string_view name, const std::string& value, Need)
    {
        sourceless += name == "source" && value.empty() ? 1 : 0;
    }
    void texts(std::string_view, const std::vector<std::string>&) {}
    void flag(std::string_view, bool) {}
    void number(std::string_view, int) {}
    template <class E, std::size_t N> void choice(std::string_view, const E&, const std::array<Word<E>, N>&, Need) {}
    template <class E, std::size_t N>
    void choice(std::string_view, const std::optional<E>&, const std::array<Word<E>, N>&)
    {
    }
    template <class T> void part(std::string_view, const T& value, Need) { fields(*this, value); }
    template <class T> void part(std::string_view, const std::optional<T>& value)
    {
        if (value) {
            fields(*this, *value);
        }
    }
    template <class T> void list(std::string_view, const std::vector<T>& values, Need)
    {
        for (const T& value : values) {
            fields(*this, value);
        }
    }
    template <class T> void amount(const T&) {}
    template <class T> void amount(const T&, const T&, const T&) { ++figures; }
};

} // namespace

// Activation energies 50, 60, 70 kJ/mol: Thermochim. Acta 447 (2006) and Jawad, DGEBA with
// m-phenylene diamine; stall at 13 C: industrial epoxy maker; ceiling 60 C: pages on ASTM F1980.
TEST(ShippedLaws, HoldTheEpoxyBandAndItsLimits)
{
    const auto& law = std::get<cure::Arrhenius>(sharedBook().law("epoxy")->law);
    EXPECT_EQ(law.energy.low, kilojoulesPerMole(50));
    EXPECT_EQ(law.energy.typical, kilojoulesPerMole(60));
    EXPECT_EQ(law.energy.high, kilojoulesPerMole(70));
    EXPECT_EQ(law.noCreditBelow, Temperature::fromCelsius(13));
    EXPECT_EQ(law.noExtraAbove, Temperature::fromCelsius(60));
    EXPECT_FALSE(law.bend);
}

// 35 to 25 C and 23 above, derived from a decorative enamel sheet's 10, 5, 3 h at 10, 23, 40 C.
TEST(ShippedLaws, BendTheLacquerAt25)
{
    const auto& law = std::get<cure::Arrhenius>(sharedBook().law("lacquer")->law);
    EXPECT_EQ(law.energy.typical, kilojoulesPerMole(35));
    EXPECT_EQ(law.aboveBend.typical, kilojoulesPerMole(23));
    EXPECT_EQ(law.bend, Temperature::fromCelsius(25));
    EXPECT_EQ(law.noCreditBelow, Temperature::fromCelsius(10));
}

// 20 to 30 C, 70 to 80 % in the middle of 65 to 85: Polymers 17(12) 1596, 2025; lacquer studios.
TEST(ShippedLaws, GiveUrushiABand)
{
    const auto& law = std::get<cure::HumidBand>(sharedBook().law("urushi")->law);
    EXPECT_EQ(law.coldest, Temperature::fromCelsius(20));
    EXPECT_EQ(law.warmest, Temperature::fromCelsius(30));
    EXPECT_EQ(law.driest, percentHumidity(65));
    EXPECT_EQ(law.dampest, percentHumidity(85));
    EXPECT_TRUE(std::holds_alternative<cure::ClockOnly>(sharedBook().law("solvent")->law));
    EXPECT_TRUE(std::holds_alternative<cure::ClockOnly>(sharedBook().law("none")->law));
}

// The lowest limit of every material in every piece inside caps a cabinet; built from published
// softening points (adhesives trade magazine, Cardiff University, gypsum maker), common practice.
TEST(ShippedMaterials, MayGetSoWarmAndNoWarmer)
{
    using std::chrono::days;
    using std::chrono::hours;
    EXPECT_EQ(warmest("fastAdhesive", hours(0)), 40);
    EXPECT_EQ(warmest("fastAdhesive", hours(23)), 40);
    EXPECT_EQ(warmest("fastAdhesive", hours(24)), 45);
    EXPECT_EQ(warmest("joinResin", days(1)), 30);
    EXPECT_EQ(warmest("joinResin", days(7)), 35);
    EXPECT_EQ(warmest("edgeSeal", days(30)), 35);
    for (const char* urushi : {"rawUrushi", "urushiGlue", "urushiFiller", "urushiCoat"}) {
        EXPECT_EQ(warmest(urushi, days(1)), 28);
    }
    EXPECT_EQ(warmest("plaster", days(1)), 45);
    EXPECT_EQ(sharedBook().material("plaster")->heatLimits.front().warmest.most, Temperature::fromCelsius(49));
    EXPECT_EQ(warmest("oldMend", days(1)), 30);
    EXPECT_EQ(warmest("waxOrTape", days(1)), 30);
}

// Wait before hand-over: epoxy 7 d, lacquer 7 d (common practice), urushi 28 d (lacquer kit
// seller's FAQ); thin epoxy 14 d (Fitzwilliam Museum).
TEST(ShippedMaterials, WaitBeforeTheHandOver)
{
    const std::map<std::string, int> daysOf = {
        {"fastAdhesive", 7}, {"fillerPaste", 7}, {"metalCompound", 7}, {"seamLacquer", 7},   {"clearFinish", 7},
        {"rawUrushi", 28},   {"urushiGlue", 28}, {"urushiCoat", 28},   {"urushiFiller", 28}, {"capillaryAdhesive", 14}};
    for (const auto& [key, count] : daysOf) {
        ASSERT_NE(sharedBook().material(key), nullptr) << key;
        EXPECT_EQ(sharedBook().material(key)->handOverWait->value, std::chrono::days(count)) << key;
    }
}

// 5 minutes printed on the cup at 25 C: adhesives trade magazine, 2013; the filler's 30 and the
// compound's 40 minutes are common practice, no source.
TEST(ShippedMaterials, LiveSoLongOnTheTile)
{
    EXPECT_EQ(sharedBook().material("fastAdhesive")->potLife->value, std::chrono::minutes(5));
    EXPECT_EQ(sharedBook().material("fastAdhesive")->potReference, Temperature::fromCelsius(25));
    EXPECT_EQ(sharedBook().material("fillerPaste")->potLife->value, std::chrono::minutes(30));
    EXPECT_EQ(sharedBook().material("metalCompound")->potLife->value, std::chrono::minutes(40));
    EXPECT_EQ(sharedBook().material("urushiGlue")->potLife->value, std::chrono::minutes(60));
}

// Readings age after 4 h at the bench and 24 h in cabinet and box; one pair of hands lays and
// wipes 7.5 cm of chip or 30 cm of seam in a run; two taps from 5 minutes (common practice).
TEST(ShippedPractice, IsWhatTheBenchReckonsWith)
{
    const Practice& practice = sharedBook().practice;
    EXPECT_EQ(practice.benchReadingAge.value, std::chrono::hours(4));
    EXPECT_EQ(practice.cabinetReadingAge.value, std::chrono::hours(24));
    EXPECT_EQ(practice.runChip.value, centimetres(7.5));
    EXPECT_EQ(practice.runSeam.value, centimetres(30));
    EXPECT_EQ(practice.twoTapsFrom.value, std::chrono::minutes(5));
}

TEST(ShippedRules, TellTheSourceOfEveryFigure)
{
    FigureCount count;
    for (const Procedure& procedure : sharedBook().procedures) {
        fields(count, procedure);
    }
    for (const Material& material : sharedBook().materials) {
        fields(count, material);
    }
    for (const Hazard& hazard : sharedBook().hazards) {
        fields(count, hazard);
    }
    for (const BenchState& state : sharedBook().states) {
        fields(count, state);
    }
    fields(count, sharedBook().practice);
    EXPECT_GT(count.figures, 500);
    EXPECT_EQ(count.sourceless, 0);
}
