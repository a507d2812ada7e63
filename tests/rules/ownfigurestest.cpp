#include "core/rules/ownfigures.h"

#include "tests/support/rulefiles.h"

#include <gtest/gtest.h>

#include <set>

using namespace mend;
using namespace mend::rules;
using namespace std::chrono;

namespace {

const Source ours{"our own bench", Mark::Practice};

OwnFigure potLife(Span span) { return {"material/fillerPaste", "/potLife", span, std::nullopt, ours}; }
OwnFigure heatLimit(double celsius)
{
    return {"material/fastAdhesive", "/heatLimits/0/warmest", std::nullopt, Temperature::fromCelsius(celsius), ours};
}

} // namespace

TEST(OwnFigures, AreFoundInMaterialsHazardsAndHabits)
{
    const RuleBook book = test::shippedRules();
    std::set<std::string> kinds;
    std::set<std::string> places;
    for (const SharedFigure& figure : sharedFiguresOf(book)) {
        kinds.insert(figure.of.substr(0, figure.of.find('/')));
        EXPECT_TRUE(places.insert(figure.of + figure.at.path).second) << "told apart: " << figure.of << figure.at.path;
        EXPECT_FALSE(figure.at.source().text.empty()) << figure.of << figure.at.path;
    }
    EXPECT_EQ(kinds, (std::set<std::string>{"material", "hazard", "practice"}));
    EXPECT_TRUE(sharedFigureAt(book, "material/fillerPaste", "/potLife"));
    EXPECT_FALSE(sharedFigureAt(book, "material/fillerPaste", "/potReference")) << "no figure: it has no range";
}

TEST(OwnFigures, StandInThePlaceOfTheShippedOneWithTheirSource)
{
    RuleBook book = test::shippedRules();
    ASSERT_TRUE(putOwn(book, potLife(minutes(45)))); // a filler that stays soft for longer; 15 to 90 may be told
    EXPECT_EQ(book.material("fillerPaste")->potLife->value, minutes(45));
    EXPECT_EQ(book.material("fillerPaste")->potLife->source, ours);
    RuleBook rest = test::shippedRules();
    for (RuleBook* each : {&book, &rest}) {
        each->materials.clear();
    }
    EXPECT_EQ(book, rest) << "nothing else changes";
}

TEST(OwnFigures, AreRefusedOutsideTheirRangeWithoutASourceAndInThePlaceOfAnotherKind)
{
    const RuleBook shipped = test::shippedRules();
    RuleBook book = shipped;
    OwnFigure silent = potLife(minutes(45));
    silent.source.text.clear();
    OwnFigure warm = potLife(minutes(45));
    warm.span.reset();
    warm.temperature = Temperature::fromCelsius(20);
    for (const OwnFigure& wrong : {potLife(minutes(14)), potLife(minutes(91)), silent, warm,
                                   OwnFigure{"law/epoxy", "/energy", minutes(1), {}, ours},
                                   OwnFigure{"material/nothing", "/potLife", minutes(30), {}, ours}}) {
        EXPECT_FALSE(putOwn(book, wrong)) << wrong.of << wrong.path;
    }
    EXPECT_EQ(book, shipped);
}

TEST(OwnFigures, MayLowerALimitAndNeverRaiseIt)
{
    // Young joins of the fast adhesive: 40 C at most (common practice, built from published softening points).
    RuleBook book = test::shippedRules();
    const auto limit = sharedFigureAt(book, "material/fastAdhesive", "/heatLimits/0/warmest");
    ASSERT_TRUE(limit && limit->isLimit);
    EXPECT_FALSE(putOwn(book, heatLimit(40.5)));
    const Temperature least = std::get<TemperatureFigure>(limit->at.figure).least;
    ASSERT_LT(least, Temperature::fromCelsius(40));
    EXPECT_TRUE(putOwn(book, heatLimit(least.celsius())));
    EXPECT_EQ(book.material("fastAdhesive")->heatLimits[0].warmest.value, least);
    EXPECT_FALSE(putOwn(book, heatLimit(39))) << "inside its range, but warmer than what is in force";
    EXPECT_FALSE(sharedFigureAt(book, "material/fillerPaste", "/potLife")->isLimit);
}
