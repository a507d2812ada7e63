#include "core/rules/figurelist.h"

#include "core/exchange/rulereader.h"
#include "tests/support/rulefiles.h"

#include <gtest/gtest.h>

#include <set>

using namespace mend;
using namespace mend::rules;

namespace {

Procedure shippedGold() { return *test::shippedRules().procedure("goldLacquerSeam"); }

const std::string firstHands = "/stages/0/handsOn/fixed";

} // namespace

TEST(FigureList, NamesEveryNumberOfEveryShippedProcedureOnce)
{
    for (const Procedure& procedure : test::shippedRules().procedures) {
        const auto figures = figuresOf(procedure);
        EXPECT_GE(figures.size(), procedure.stages.size()) << procedure.key;
        std::set<std::string> paths;
        for (const FigureAt& figure : figures) {
            EXPECT_TRUE(paths.insert(figure.path).second) << figure.path;
            EXPECT_FALSE(figure.source().text.empty()) << figure.path;
        }
        // Counted another way: each figure of the file carries the word "least" once.
        const std::string text = exchange::canonicalText(procedure);
        std::size_t said = 0;
        for (auto at = text.find("\"least\""); at != std::string::npos; at = text.find("\"least\"", at + 1)) {
            ++said;
        }
        EXPECT_EQ(figures.size(), said) << procedure.key;
    }
}

TEST(FigureList, FindsAFigureByItsPath)
{
    const auto found = figureAt(shippedGold(), firstHands);
    ASSERT_TRUE(found);
    EXPECT_EQ(std::get<SpanFigure>(found->figure), shippedGold().stages.front().handsOn.fixed);
    EXPECT_FALSE(figureAt(shippedGold(), "/stages/0/handsOn"));
    EXPECT_FALSE(figureAt(shippedGold(), "/stages/999/handsOn/fixed"));
}

TEST(FigureList, ChangesANumberInsideItsRangeAndNothingElse)
{
    Procedure procedure = shippedGold();
    const SpanFigure before = procedure.stages.front().handsOn.fixed;
    ASSERT_TRUE(changeFigure(procedure, firstHands, before.most, {"our own bench", Mark::Practice}));
    const SpanFigure& after = procedure.stages.front().handsOn.fixed;
    EXPECT_EQ(after.value, before.most);
    EXPECT_EQ(after.least, before.least);
    EXPECT_EQ(after.most, before.most);
    EXPECT_EQ(after.source.text, "our own bench");
    procedure.stages.front().handsOn.fixed = before;
    EXPECT_EQ(procedure, shippedGold());
}

TEST(FigureList, RefusesWhatLiesOutsideOrIsOfAnotherKind)
{
    Procedure procedure = shippedGold();
    const SpanFigure before = procedure.stages.front().handsOn.fixed;
    const Source source{"our own bench", Mark::Practice};
    EXPECT_EQ(changeFigure(procedure, firstHands, before.most + Span(1), source).fault().kind, FaultKind::BadInput);
    EXPECT_EQ(changeFigure(procedure, firstHands, before.least - Span(1), source).fault().kind, FaultKind::BadInput);
    EXPECT_EQ(changeFigure(procedure, firstHands, Temperature::fromCelsius(20), source).fault().kind,
              FaultKind::NotFound);
    EXPECT_EQ(changeFigure(procedure, "/stages/0", before.value, source).fault().kind, FaultKind::NotFound);
    EXPECT_EQ(procedure, shippedGold());
}

TEST(FigureList, CountsRevisionsOnPastEveryOneHeld)
{
    RuleBook book = test::shippedRules();
    Procedure former = shippedGold();
    former.revision = 7;
    book.formerRevisions.push_back(former);
    const Procedure next = nextRevision(shippedGold(), book);
    EXPECT_EQ(next.revision, 8);
    EXPECT_TRUE(next.hash.empty());
    EXPECT_TRUE(validate(next, book).empty());
}

TEST(FigureList, PointsAFaultAtItsFigure)
{
    const std::vector<RuleFault> faults{{"", "/stages/1/closes/0/span", 0, 0, "a"},
                                        {"", "/stages/10/closes", 0, 0, "b"},
                                        {"", "/stages/1/closes/0", 0, 0, "c"}};
    EXPECT_EQ(faultsAt(faults, "/stages/1").size(), 2U);
    EXPECT_EQ(faultsAt(faults, "/stages/1/closes/0/span").size(), 1U);
    EXPECT_EQ(faultsAt(faults, "/stages/10").size(), 1U);
}
