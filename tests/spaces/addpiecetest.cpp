#include "app/addpiece/addpiecespace.h"

#include "tests/spaces/spacewalk.h"

#include <gtest/gtest.h>

namespace mend::app {
namespace {

AddPieceNow offered()
{
    AddPieceNow now;
    now.procedures = {{QStringLiteral("goldLacquerSeam"), QStringLiteral("Gold-dusted lacquer seam"),
                       QStringLiteral("Joins in fast adhesive, gaps filled, a lacquer line dusted with gold.")},
                      {QStringLiteral("invisibleMend"), QStringLiteral("Plain invisible mend"),
                       QStringLiteral("Joins and fills toned to the body, nothing to be seen.")}};
    now.owners = {{CustomerId(1), "Ines Varga", "555 0142"}, {CustomerId(2), "Piet Aldous", "555 0119"}};
    now.namesInHand = {"Egg cup"};
    return now;
}

class AddPiece : public testing::Test {
protected:
    AddPiece()
    {
        space.resize(1148, 704);
        space.setLook(SpaceWay{{}, parts::Theme::Light}.look());
        space.setNow(offered());
        space.show();
        QObject::connect(&space, &AddPieceSpace::pieceTold, &space,
                         [this](const record::NewPiece& piece) { told.push_back(piece); });
    }
    GateClock clock;
    AddPieceSpace space{clock.gate};
    std::vector<record::NewPiece> told;
};

TEST_F(AddPiece, TellsTheWholeFormByRealKeysAndClicks)
{
    auto& sheet = space.list();
    ASSERT_TRUE(type(sheet, QStringLiteral("benchName"), QStringLiteral("Heron  bowl ")));
    ASSERT_TRUE(type(sheet, QStringLiteral("owner"), QStringLiteral("Odile Marsh")));
    ASSERT_TRUE(type(sheet, QStringLiteral("contact"), QStringLiteral("555 0187")));
    ASSERT_TRUE(type(sheet, QStringLiteral("fragments"), QStringLiteral("7")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("addpiece/procedure/goldLacquerSeam")));
    ASSERT_TRUE(click(sheet, QStringLiteral("addpiece/takein")));
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told.front(), (record::NewPiece{"Heron bowl", {}, "Odile Marsh", "555 0187", "goldLacquerSeam", 7}));
    space.showTaken(QStringLiteral("2604175"));
    EXPECT_TRUE(says(sheet, QStringLiteral("260417-5")));
    EXPECT_TRUE(sheet.field(QStringLiteral("benchName"))->text().isEmpty());
}

TEST_F(AddPiece, ListsEveryFaultWhereItBelongsAndTellsNothing)
{
    ASSERT_TRUE(click(space.list(), QStringLiteral("addpiece/takein")));
    EXPECT_TRUE(told.empty());
    for (const char* words : {"Give it a name", "Whose is it?", "Count them", "Choose a procedure"}) {
        EXPECT_TRUE(says(space.list(), QString::fromLatin1(words))) << words;
    }
    ASSERT_TRUE(type(space.list(), QStringLiteral("benchName"), QStringLiteral("egg cup")));
    EXPECT_TRUE(says(space.list(), QStringLiteral("Another piece in hand")));
    EXPECT_FALSE(says(space.list(), QStringLiteral("Give it a name")));
}

TEST_F(AddPiece, OffersWhomItKnowsSoThatOnePersonDoesNotBecomeTwo)
{
    ASSERT_TRUE(type(space.list(), QStringLiteral("owner"), QStringLiteral("varg")));
    ASSERT_TRUE(click(space.list(), QStringLiteral("addpiece/owner/1")));
    EXPECT_EQ(space.piece().owner, CustomerId(1));
    EXPECT_EQ(space.list().field(QStringLiteral("owner"))->text(), QStringLiteral("Ines Varga"));
    EXPECT_FALSE(space.list().field(QStringLiteral("contact")));
    ASSERT_TRUE(type(space.list(), QStringLiteral("owner"), QStringLiteral("Ines Vargas")));
    EXPECT_FALSE(space.piece().owner.isSet()) << "another name is another person";
}

TEST_F(AddPiece, KeepsWhatWasTypedWhenItCannotBeKept)
{
    type(space.list(), QStringLiteral("benchName"), QStringLiteral("Heron bowl"));
    space.showRefused(QStringLiteral("The file cannot be written."));
    EXPECT_TRUE(says(space.list(), QStringLiteral("cannot be written")));
    EXPECT_EQ(space.list().field(QStringLiteral("benchName"))->text(), QStringLiteral("Heron bowl"));
}

TEST_F(AddPiece, ShowsOneAtATimeWhereThereIsNoRoomForBoth)
{
    space.resize(500, 600);
    EXPECT_FALSE(space.page().isVisible());
    ASSERT_TRUE(click(space.list(), QStringLiteral("addpiece/procedures")));
    EXPECT_FALSE(space.list().isVisible());
    ASSERT_TRUE(click(space.page(), QStringLiteral("addpiece/procedure/goldLacquerSeam")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("page/back")));
    EXPECT_TRUE(space.list().isVisible());
    EXPECT_TRUE(says(space.list(), QStringLiteral("Gold-dusted")));
}

TEST_F(AddPiece, IsWorkedByKeysAlone)
{
    auto& sheet = space.list();
    space.page().setFocus();
    space.page().setFocusKey(QStringLiteral("addpiece/procedure/invisibleMend"));
    QTest::keyClick(&space.page(), Qt::Key_Return);
    EXPECT_EQ(space.piece().procedure, "invisibleMend");
    sheet.setFocusKey(QStringLiteral("addpiece/fragments/6"));
    QTest::keyClick(&sheet, Qt::Key_Space);
    EXPECT_EQ(space.piece().fragments, 6);
}

class AddPieceWalk : public testing::TestWithParam<SpaceWay> {};

TEST_P(AddPieceWalk, EverySpotCanBeHitReadAndNamed)
{
    const SpaceWay way = GetParam();
    GateClock clock;
    AddPieceSpace space(clock.gate);
    space.setLayoutDirection(way.rtl ? Qt::RightToLeft : Qt::LeftToRight);
    space.resize(way.size);
    space.setLook(way.look());
    space.setNow(offered());
    space.show();
    for (int step = 0; step < 3; ++step) {
        const Walk found = walkSheets({&space.list(), &space.page()}, way.look());
        EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "") << "step " << step;
        EXPECT_GE(found.acts, 9);
        EXPECT_EQ(found.benchActs, 2);
        EXPECT_TRUE(step < 2 || space.piece().procedure == "goldLacquerSeam" || space.isNarrow());
        if (step == 0) {
            click(space.list(), QStringLiteral("addpiece/takein"));
        } else {
            type(space.list(), QStringLiteral("owner"), QStringLiteral("ine"));
            click(space.list(), QStringLiteral("addpiece/fragments/5"));
            click(space.page(), QStringLiteral("addpiece/procedure/goldLacquerSeam"));
        }
    }
    EXPECT_GT(keepPicture(space,
                          QStringLiteral("addpiece-%1-%2-%3").arg(way.size.width()).arg(int(way.theme)).arg(way.scale)),
              4);
}

INSTANTIATE_TEST_SUITE_P(Everywhere, AddPieceWalk, testing::ValuesIn(spaceWays()));

} // namespace
} // namespace mend::app
