#include "app/find/findspace.h"

#include "tests/spaces/spacewalk.h"

#include <gtest/gtest.h>

namespace mend::app {
namespace {

FindPiece some(int id, const char* name, const char* number, const char* owner, const char* state)
{
    return {PieceId(id),
            QString::fromUtf8(name),
            QString::fromUtf8(number),
            QString::fromUtf8(owner),
            QString::fromUtf8(state),
            QStringLiteral("small blue bowl with a heron"),
            {id % 3, id * 0.2, {}}};
}

FindAnswer answer()
{
    FindAnswer found;
    found.typed = QStringLiteral("blue");
    found.pieces = {some(1, "Heron bowl", "260417-5", "Ines Varga", "on the bench"),
                    some(2, "Reed dish", "250931-1", "Odile Marsh", "may be collected"),
                    some(3, "Blue cup with a name as long as it may be", "260288-2",
                         "Jun Hollis-Arkwright of Over Mere",
                         "resting, may be collected from Wednesday, 30 September 2026")};
    found.people = {{CustomerId(7), QStringLiteral("Ada Blue"), QStringLiteral("020 7946 0118")}};
    return found;
}

FindPage page()
{
    FindPage seen;
    seen.piece = answer().pieces.front();
    seen.contact = QStringLiteral("020 7946 0142");
    seen.cameIn = QStringLiteral("7 fragments came in · lid");
    seen.facts = {{QStringLiteral("Mended by"), QStringLiteral("Gold-dusted lacquer seam")},
                  {QStringLiteral("Came in"), QStringLiteral("Friday, 20 November 2026")},
                  {QStringLiteral("Promised for"), QStringLiteral("Saturday, 28 November 2026")},
                  {QStringLiteral("May be collected from"), QStringLiteral("Friday, 4 December 2026")},
                  {QStringLiteral("Owed"), QStringLiteral("96.00 EUR of 140.00 EUR")}};
    seen.grave = QStringLiteral("Promised for Saturday, 28 November 2026, but it may not be collected before Friday, "
                                "4 December 2026.");
    seen.because = QStringLiteral("Its lacquer waits so long. Call the owner.");
    seen.inHouse = true;
    seen.notYet = QStringLiteral("not yet: work is to do");
    return seen;
}

TEST(Find, AnAnswerToAnEarlierLetterIsPassedOver)
{
    GateClock clock;
    FindSpace space(clock.gate);
    space.resize(1148, 704);
    space.show();
    type(space.list(), QStringLiteral("find"), QStringLiteral("blues"));
    space.setAnswer(answer());
    EXPECT_FALSE(says(space.list(), QStringLiteral("Heron bowl")));
}

class FindWalk : public SpaceWalk {};

TEST_P(FindWalk, EverySpotCanBeHitReadAndNamed)
{
    const SpaceWay way = GetParam();
    GateClock clock;
    FindSpace space(clock.gate);
    way.dress(space);
    space.offerHandOver(true);
    space.setLists(QStringLiteral("24 pieces in the house"),
                   {{QStringLiteral("collect"), QStringLiteral("3 pieces may be collected"), answer().pieces},
                    {QStringLiteral("late"), QStringLiteral("1 piece is late"), {answer().pieces.front()}}});
    space.show();
    for (int step = 0; step < 3; ++step) {
        if (step == 1) {
            type(space.list(), QStringLiteral("find"), QStringLiteral("blue"));
            space.setAnswer(answer());
        } else if (step == 2) {
            ASSERT_TRUE(click(space.list(), QStringLiteral("find/piece/1")));
            space.setPage(page());
        }
        const Walk found = walkSheets({&space.list(), &space.page()}, way.look());
        EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "") << "step " << step;
        EXPECT_GE(found.acts, 3);
        keepPicture(space, way.picture(QStringLiteral("find-%1").arg(step)));
    }
    EXPECT_TRUE(space.page().hit(QStringLiteral("find/open")));
}

INSTANTIATE_TEST_SUITE_P(Everywhere, FindWalk, testing::ValuesIn(spokenWays()));

} // namespace
} // namespace mend::app
