#include "app/plan/planspace.h"

#include "tests/app/samples.h"
#include "tests/spaces/spacewalk.h"

#include <gtest/gtest.h>

namespace mend::app {
namespace {

using samples::now;
using std::chrono::minutes;

service::PlanLine lineAt(int after, int length, const char* clock, const char* act, const char* name, const char* why,
                         const char* person)
{
    service::PlanLine line;
    line.piece = PieceId(after + 1);
    line.stage = {"stage", 1};
    line.from = now() + minutes(after);
    line.to = line.from + minutes(length);
    line.clock = QString::fromLatin1(clock);
    line.act = QString::fromLatin1(act);
    line.name = QString::fromLatin1(name);
    line.why = QString::fromLatin1(why);
    line.person = QString::fromLatin1(person);
    line.place = QStringLiteral("Bench");
    return line;
}

PlanShown afternoon()
{
    PlanShown shown;
    shown.now = now();
    shown.person = QStringLiteral("Ruta");
    shown.plan.isKnown = true;
    shown.plan.lines = {
        lineAt(1, 4, "13:43", "Wipe back the filler", "Heron bowl", "start by 13:44; a miss costs an afternoon",
               "Ruta"),
        lineAt(14, 5, "13:56", "Trim the squeeze-out", "Brown teapot", "start by 14:31", "Ruta"),
        lineAt(20, 10, "14:02", "Glue set 2 of 4", "Brown teapot", "nothing closes", "Ruta"),
        lineAt(32, 9, "14:14", "Dust the gold", "Celadon dish", "start by 14:44; a miss costs a day", "Ruta"),
        lineAt(98, 10, "15:20", "Press filler in", "Egg cup", "promised for Friday", "Jonas"),
        lineAt(110, 4, "15:32", "Wipe back the filler", "Egg cup", "start by 15:35; a miss costs an afternoon",
               "Jonas"),
        lineAt(2000, 30, "Tue 23:02", "Polish", "Fish plate", "nothing closes", "Jonas"),
    };
    return shown;
}

PlanShown withEverything()
{
    PlanShown shown = afternoon();
    shown.plan.leftOut = {QStringLiteral("Not by its promised day: Reed cup, 3 h later")};
    shown.plan.conflict = service::PlanConflict{
        {QStringLiteral("Wiping it back and dusting the celadon dish both want the one pair of hands from 14:14")},
        {{QStringLiteral("Another pair of hands from 14:14, for 10 min"), {}},
         {QStringLiteral("Leave the Reed cup for another day"), PieceId(7)}}};
    shown.offer = PlanOffer{QStringLiteral("3 moved, none later than promised")};
    return shown;
}

TEST(PlanSpace, CanBeHitReadAndHeardInEveryWay)
{
    for (const SpaceWay& way : spaceWays()) {
        SCOPED_TRACE(testing::Message() << way);
        const parts::Look look = way.look();
        GateClock clock;
        PlanSpace space(clock.gate);
        space.setLayoutDirection(way.rtl ? Qt::RightToLeft : Qt::LeftToRight);
        space.resize(way.size);
        space.setLook(look);
        space.show();
        for (const PlanShown& shown : {afternoon(), withEverything(), PlanShown()}) {
            space.setShown(shown);
            Walk walk;
            for (const parts::ActView* view :
                 {static_cast<const parts::ActView*>(&space.head()), static_cast<const parts::ActView*>(&space.list()),
                  static_cast<const parts::ActView*>(&space.threads())}) {
                walk.over(*view, look);
            }
            EXPECT_TRUE(walk.faults.isEmpty()) << qPrintable(walk.faults.join(QLatin1Char('\n')));
            EXPECT_GE(walk.acts, 5);
        }
        space.setShown(withEverything());
        EXPECT_GT(keepPicture(space, QStringLiteral("plan-%1x%2-%3-%4%5")
                                         .arg(way.size.width())
                                         .arg(way.size.height())
                                         .arg(int(way.theme))
                                         .arg(way.scale * 100)
                                         .arg(way.rtl ? QStringLiteral("-rtl") : QString())),
                  2);
    }
}

class PlanScreen : public testing::Test {
protected:
    PlanScreen()
    {
        space.resize(1148, 704);
        space.setLook(SpaceWay{{}, parts::Theme::Light}.look());
        space.setShown(withEverything());
        space.show();
    }
    static void tap(parts::ActView& view, const char* key)
    {
        const parts::Hit* hit = view.hit(QLatin1String(key));
        ASSERT_NE(hit, nullptr) << key;
        QTest::mouseClick(&view, Qt::LeftButton, {}, hit->rect.center());
    }
    GateClock clock;
    PlanSpace space{clock.gate};
};

TEST_F(PlanScreen, TodayLeavesOutWhatIsOfAnotherDay)
{
    EXPECT_EQ(space.list().hit(QStringLiteral("plan/do/2001/stage/1")), nullptr);
    EXPECT_NE(space.list().hit(QStringLiteral("plan/do/2/stage/1")), nullptr);
    tap(space.head(), "plan/week");
    space.list().scrollTo(100'000);
    EXPECT_NE(space.list().hit(QStringLiteral("plan/do/2001/stage/1")), nullptr);
}

TEST_F(PlanScreen, EachPersonHasAThreadWithTheNumbersOfTheList)
{
    const parts::Hit* ruta = space.threads().hit(QStringLiteral("plan/thread/Ruta"));
    const parts::Hit* jonas = space.threads().hit(QStringLiteral("plan/thread/Jonas"));
    ASSERT_TRUE(ruta && jonas);
    EXPECT_EQ(ruta->more.count(QLatin1String(" to ")), 4);
    EXPECT_TRUE(jonas->more.startsWith(QLatin1String("5: "))) << qPrintable(jonas->more);
}

TEST_F(PlanScreen, WhatWouldHelpIsTakenByOneTapAndABetterOrderOnlyWhenSaidYesTo)
{
    PieceId aside;
    int taken = 0;
    int refused = 0;
    QObject::connect(&space, &PlanSpace::setAsideWanted, &space, [&aside](PieceId piece) { aside = piece; });
    QObject::connect(&space, &PlanSpace::offerTaken, &space, [&taken] { ++taken; });
    QObject::connect(&space, &PlanSpace::offerRefused, &space, [&refused] { ++refused; });
    tap(space.threads(), "plan/aside/7");
    EXPECT_EQ(aside, PieceId(7));
    tap(space.threads(), "plan/refuse");
    EXPECT_EQ(std::pair(taken, refused), std::pair(0, 1));
    tap(space.threads(), "plan/take");
    EXPECT_EQ(std::pair(taken, refused), std::pair(1, 1));
}

} // namespace
} // namespace mend::app
