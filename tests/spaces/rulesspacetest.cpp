#include "app/rules/rulesspace.h"

#include "tests/spaces/spacewalk.h"
#include "tests/support/rulefiles.h"

#include <gtest/gtest.h>

#include <set>

namespace mend::app {
namespace {

const std::string gold = "goldLacquerSeam";

std::shared_ptr<const rules::RuleBook> shippedBook()
{
    static const auto book = std::make_shared<const rules::RuleBook>(test::shippedRules());
    return book;
}

RulesNow shipped()
{
    RulesNow now;
    now.book = shippedBook();
    const std::string hash = now.book->procedure(gold)->hash;
    now.pieces = {{PieceId(1), QStringLiteral("Heron bowl"), gold, hash},
                  {PieceId(2), QStringLiteral("Fish plate"), "urushiSeam", now.book->procedure("urushiSeam")->hash}};
    return now;
}

struct Moves : RulesAnswers {
    QStringList movedIf(const rules::Procedure& procedure, const std::vector<PieceId>& pieces) const override
    {
        asked.push_back(procedure);
        whose = pieces;
        return {QStringLiteral("Heron bowl: “Wipe back the filler” closes 13:44 instead of 13:49")};
    }
    QStringList movedIfOwn(const rules::OwnFigure&) const override
    {
        return {QStringLiteral("Filler mix: stiff 14:05 instead of 13:50")};
    }
    mutable std::vector<rules::Procedure> asked;
    mutable std::vector<PieceId> whose;
};

std::size_t stageOf(const char* key) { return *shippedBook()->procedure(gold)->indexOf(key); }

class RulesScreen : public testing::Test {
protected:
    RulesScreen()
    {
        space.resize(1148, 704);
        space.setLook(SpaceWay{{}, parts::Theme::Light}.look());
        space.setAnswers(&moves);
        space.setNow(shipped());
        space.show();
        QObject::connect(&space, &RulesSpace::revised, &space,
                         [this](const rules::Procedure& edited) { revised.push_back(edited); });
        QObject::connect(&space, &RulesSpace::adopted, &space,
                         [this](const QString& key, const std::vector<PieceId>& pieces) {
                             adopted.push_back({key, pieces});
                         });
    }
    /// By real clicks and keys: the hands of wiping back become this many, in their unit.
    void change(const QString& typed)
    {
        path = "/stages/" + std::to_string(stageOf("wipeBack")) + "/handsOn/fixed";
        ASSERT_TRUE(click(space.list(), QStringLiteral("rules/goldLacquerSeam")));
        ASSERT_TRUE(click(space.list(), QStringLiteral("rules/goldLacquerSeam/%1").arg(stageOf("wipeBack"))));
        ASSERT_TRUE(click(space.page(), figureKey(path)));
        ASSERT_TRUE(type(space.page(), QStringLiteral("figure/value"), typed));
        ASSERT_TRUE(click(space.page(), QStringLiteral("figure/put")));
    }
    rules::SpanFigure hands(const rules::Procedure& procedure) const
    {
        return procedure.stages[stageOf("wipeBack")].handsOn.fixed;
    }
    QString most() const
    {
        return service::typedFigure({path, rules::SpanFigure{hands(*shippedBook()->procedure(gold)).most,
                                                             hands(*shippedBook()->procedure(gold)).least,
                                                             hands(*shippedBook()->procedure(gold)).most,
                                                             {}}},
                                    {})
            .digits;
    }
    GateClock clock;
    Moves moves;
    RulesSpace space{clock.gate};
    std::string path = "/stages/" + std::to_string(stageOf("wipeBack")) + "/handsOn/fixed";
    std::vector<rules::Procedure> revised;
    std::vector<std::pair<QString, std::vector<PieceId>>> adopted;
};

TEST_F(RulesScreen, ShowsEveryNumberOfEveryProcedureWithRangeAndSource)
{
    for (const rules::Procedure& procedure : shippedBook()->procedures) {
        std::set<QString> seen;
        for (std::size_t i = 0; i < procedure.stages.size(); ++i) {
            space.openStage(procedure.key, i);
            for (const parts::Hit& hit : space.page().hits()) {
                seen.insert(hit.key);
            }
        }
        for (const rules::FigureAt& figure : rules::figuresOf(procedure)) {
            EXPECT_TRUE(seen.contains(figureKey(figure.path))) << procedure.key << figure.path;
        }
    }
    space.openStage(gold, stageOf("wipeBack"));
    const parts::Hit* row = space.page().hit(figureKey(path));
    ASSERT_TRUE(row);
    const rules::FigureAt figure = *rules::figureAt(*shippedBook()->procedure(gold), path);
    EXPECT_TRUE(row->name.contains(service::figureValue(figure, {})));
    EXPECT_TRUE(row->more.contains(service::figureRange(figure, {})));
    EXPECT_TRUE(row->more.contains(service::sourceWords(figure.source())));
}

TEST_F(RulesScreen, AChangeIsShownInItsEffectBeforeItIsKept)
{
    change(most());
    EXPECT_TRUE(revised.empty());
    ASSERT_TRUE(space.draft(gold));
    EXPECT_EQ(hands(*space.draft(gold)).value, hands(*space.draft(gold)).most);
    EXPECT_TRUE(says(space.page(), QStringLiteral("closes 13:44 instead of 13:49")));
    EXPECT_EQ(moves.whose, std::vector<PieceId>{PieceId(1)}) << "only pieces of this procedure";
    ASSERT_TRUE(click(space.page(), QStringLiteral("rules/keep")));
    ASSERT_EQ(revised.size(), 1U);
    EXPECT_EQ(hands(revised.front()).value, hands(revised.front()).most);
    EXPECT_EQ(hands(revised.front()).source.text, "our own bench");
    space.showKept(QString::fromStdString(gold));
    EXPECT_FALSE(space.draft(gold));
}

TEST_F(RulesScreen, ASharedNumberIsShownInItsEffectBeforeItIsKept)
{
    std::vector<rules::OwnFigure> told;
    QObject::connect(&space, &RulesSpace::ownTold, &space,
                     [to = &told](const rules::OwnFigure& own) { to->push_back(own); });
    space.openShared(SharedRules::Materials);
    ASSERT_TRUE(click(space.page(), QStringLiteral("rule/own/material/fillerPaste|/potLife")));
    ASSERT_TRUE(type(space.page(), QStringLiteral("own/value"), QStringLiteral("95")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("own/put")));
    EXPECT_FALSE(space.page().hit(QStringLiteral("own/keep"))) << "beyond its range";
    EXPECT_FALSE(space.page().field(QStringLiteral("own/value"))->accessibleDescription().isEmpty());
    ASSERT_TRUE(type(space.page(), QStringLiteral("own/value"), QStringLiteral("45")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("own/put")));
    EXPECT_TRUE(says(space.page(), QStringLiteral("Filler mix: stiff")));
    EXPECT_TRUE(told.empty());
    ASSERT_TRUE(click(space.page(), QStringLiteral("own/keep")));
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told[0].of, "material/fillerPaste");
    EXPECT_EQ(told[0].span, std::chrono::minutes(45));
    space.setOwn(told);
    EXPECT_TRUE(space.page().hit(QStringLiteral("own/shipped")));
}

TEST_F(RulesScreen, RefusesANumberOutsideItsRangeAtItsPlace)
{
    for (const char* wrong : {"100000", "-1", "many", ""}) {
        change(QString::fromLatin1(wrong));
        EXPECT_FALSE(space.draft(gold)) << wrong;
        EXPECT_TRUE(says(space.page(), QStringLiteral("It may be")) || says(space.page(), QStringLiteral("no number")))
            << wrong;
        EXPECT_TRUE(space.page().field(QStringLiteral("figure/value"))) << "still at its place";
    }
}

TEST_F(RulesScreen, ANumberWithoutItsSourceIsNotTaken)
{
    change(QStringLiteral("many"));
    type(space.page(), QStringLiteral("figure/value"), most());
    type(space.page(), QStringLiteral("figure/source"), QString());
    click(space.page(), QStringLiteral("figure/put"));
    EXPECT_FALSE(space.draft(gold));
    EXPECT_TRUE(says(space.page(), QStringLiteral("No number stands without its source")));
}

TEST_F(RulesScreen, TheSameNumberIsNoChange)
{
    change(service::typedFigure(*rules::figureAt(*shippedBook()->procedure(gold), path), {}).digits);
    EXPECT_FALSE(space.draft(gold));
    EXPECT_TRUE(space.page().hit(figureKey(path))) << "back at its stage";
}

TEST_F(RulesScreen, DropsAChange)
{
    change(most());
    ASSERT_TRUE(click(space.page(), QStringLiteral("rules/drop")));
    EXPECT_FALSE(space.draft(gold));
    EXPECT_FALSE(space.page().hit(QStringLiteral("rules/keep")));
}

TEST_F(RulesScreen, OffersTheNewRevisionToPiecesUnderAnEarlierOne)
{
    RulesNow now = shipped();
    now.pieces[0].revision = "earlier";
    space.setNow(now);
    click(space.list(), QStringLiteral("rules/goldLacquerSeam"));
    EXPECT_TRUE(says(space.page(), QStringLiteral("Heron bowl")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("rules/adopt")));
    ASSERT_EQ(adopted.size(), 1U);
    EXPECT_EQ(adopted.front().first, QStringLiteral("goldLacquerSeam"));
    EXPECT_EQ(adopted.front().second, std::vector<PieceId>{PieceId(1)});
    space.setNow(shipped());
    EXPECT_FALSE(space.page().hit(QStringLiteral("rules/adopt")));
}

TEST_F(RulesScreen, ListsWhatIsWrongWithARefusedFile)
{
    RulesNow now = shipped();
    now.faults = {{"own/gold.json", "/stages/1", 12, 3, "\"key\" is empty"}};
    space.setNow(now);
    EXPECT_TRUE(says(space.list(), QStringLiteral("own/gold.json, line 12")));
}

class RulesWalk : public SpaceWalk {};

TEST_P(RulesWalk, EverySpotCanBeHitReadAndNamed)
{
    const SpaceWay way = GetParam();
    GateClock clock;
    Moves moves;
    RulesSpace space(clock.gate);
    way.dress(space);
    space.setAnswers(&moves);
    space.setNow(shipped());
    space.show();
    const auto walk = [&](const char* step) {
        const Walk found = walkSheets({&space.list(), &space.page()}, way.look());
        EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "") << step;
        EXPECT_GT(found.texts, 1) << step;
        EXPECT_GT(keepPicture(space, way.picture(QStringLiteral("rules-%1").arg(QLatin1String(step)))), 4);
    };
    walk("list");
    space.openStage(gold, stageOf("wipeBack"));
    walk("stage");
    const std::string path = "/stages/" + std::to_string(stageOf("wipeBack")) + "/handsOn/fixed";
    click(space.page(), figureKey(path));
    walk("figure");
    type(space.page(), QStringLiteral("figure/value"), QStringLiteral("5"));
    click(space.page(), QStringLiteral("figure/put"));
    EXPECT_TRUE(space.draft(gold));
    walk("draft");
    for (const SharedRules which : {SharedRules::Materials, SharedRules::Laws, SharedRules::Hazards,
                                    SharedRules::Cautions, SharedRules::Practice}) {
        space.openShared(which);
        walk("shared");
    }
}

INSTANTIATE_TEST_SUITE_P(Everywhere, RulesWalk, testing::ValuesIn(spokenWays()));

} // namespace
} // namespace mend::app
