#include "app/daylog/daylogspace.h"

#include "tests/spaces/spacewalk.h"

#include <gtest/gtest.h>

namespace mend::app {
namespace {

using std::chrono::hours;
using std::chrono::minutes;

/// 28 November 2026, 13:42 UTC.
const Instant noonish = std::chrono::sys_days{std::chrono::year{2026} / 11 / 28} + hours(13) + minutes(42);

service::LogLine lineOf(int id, int minutesAgo, const char* words, int piece, const char* name)
{
    service::LogLine line;
    line.event = EventId(id);
    line.piece = PieceId(piece);
    line.happened = line.recorded = noonish - minutes(minutesAgo);
    line.words = QString::fromLatin1(words);
    line.pieceName = QString::fromLatin1(name);
    line.person = QStringLiteral("Ruta");
    line.canMove = line.canTakeBack = true;
    return line;
}

DayLogNow today()
{
    DayLogNow now;
    now.day = QStringLiteral("today, Sat 28 Nov");
    now.lines = {lineOf(9, 3, "Bench: 26.4 °C, 41 %", 0, ""),      lineOf(8, 13, "Filler is in", 1, "Heron bowl"),
                 lineOf(7, 48, "Line is laid", 2, "Celadon dish"), lineOf(6, 95, "Put in: Cabinet", 3, "Banded jug"),
                 lineOf(5, 1500, "Glue is on", 1, "Heron bowl"),   lineOf(4, 130, "Trimmed", 3, "Banded jug")};
    now.lines[0].words = QStringLiteral("Bench: 26.4 °C, 41 %");
    now.lines[3].toldAgain = true;
    now.lines[4].canMove = now.lines[4].canTakeBack = false;
    now.lines[5].takenBack = true;
    now.lines[5].canMove = now.lines[5].canTakeBack = false;
    now.pieces = {{PieceId(1), QStringLiteral("Heron bowl")},
                  {PieceId(2), QStringLiteral("Celadon dish")},
                  {PieceId(3), QStringLiteral("Banded jug")}};
    return now;
}

struct Asked : LogAnswers {
    QStringList movedBy(EventId, Instant happened, PieceId piece) const override
    {
        times.push_back(happened);
        pieces.push_back(piece);
        return {QStringLiteral("Heron bowl: “Wipe back the filler” closes 13:44 instead of 13:49")};
    }
    QStringList movedByTakingBack(EventId) const override
    {
        return {QStringLiteral("Heron bowl: “Wipe back the filler” no longer stands")};
    }
    QStringList goesWith(EventId) const override { return {QStringLiteral("13:33 Hands on it")}; }
    mutable std::vector<Instant> times;
    mutable std::vector<PieceId> pieces;
};

class DayLogScreen : public testing::Test {
protected:
    DayLogScreen()
    {
        space.resize(1148, 704);
        space.setLook(SpaceWay{{}, parts::Theme::Light}.look());
        space.setAnswers(&asked);
        space.setNow(today(), noonish);
        space.show();
        QObject::connect(&space, &DayLogSpace::factMoved, &space, [this](EventId event, Instant at, PieceId piece) {
            moved.push_back({event, at, piece});
        });
        QObject::connect(&space, &DayLogSpace::factTakenBack, &space, [this](EventId event, const QString& why) {
            taken.push_back({event, why});
        });
    }
    struct Moved {
        EventId event;
        Instant at;
        PieceId piece;
    };
    GateClock clock;
    Asked asked;
    DayLogSpace space{clock.gate};
    std::vector<Moved> moved;
    std::vector<std::pair<EventId, QString>> taken;
};

TEST_F(DayLogScreen, MovesAFactInTimeOnceTheMoveWasShown)
{
    ASSERT_TRUE(click(space.list(), QStringLiteral("log/8")));
    EXPECT_FALSE(space.page().hit(QStringLiteral("log/keep"))) << "nothing to keep before anything moved";
    ASSERT_TRUE(click(space.page(), QStringLiteral("log/step/-5")));
    EXPECT_TRUE(says(space.page(), QStringLiteral("closes 13:44 instead of 13:49")));
    ASSERT_TRUE(moved.empty()) << "not before it is kept";
    ASSERT_TRUE(click(space.page(), QStringLiteral("log/keep")));
    ASSERT_EQ(moved.size(), 1U);
    EXPECT_EQ(moved.front().event, EventId(8));
    EXPECT_EQ(moved.front().at, noonish - minutes(18));
    EXPECT_EQ(moved.front().piece, PieceId(1));
}

TEST_F(DayLogScreen, MovesItToAnotherPieceInTheSameAct)
{
    click(space.list(), QStringLiteral("log/8"));
    ASSERT_TRUE(click(space.page(), QStringLiteral("log/piece/3")));
    EXPECT_EQ(asked.pieces.back(), PieceId(3));
    ASSERT_TRUE(click(space.page(), QStringLiteral("log/keep")));
    ASSERT_EQ(moved.size(), 1U);
    EXPECT_EQ(moved.front().piece, PieceId(3));
    EXPECT_EQ(moved.front().at, noonish - minutes(13));
}

TEST_F(DayLogScreen, TakesATimeByTheClockAndNoneToCome)
{
    click(space.list(), QStringLiteral("log/8"));
    ASSERT_TRUE(type(space.page(), QStringLiteral("log/time"), QStringLiteral("13:25")));
    EXPECT_EQ(asked.times.back(), noonish - minutes(17));
    // 13:50 has not come yet today: it was yesterday's, and that is within the day.
    type(space.page(), QStringLiteral("log/time"), QStringLiteral("13:50"));
    EXPECT_EQ(asked.times.back(), noonish + minutes(8) - hours(24));
    type(space.page(), QStringLiteral("log/time"), QStringLiteral("25:00"));
    EXPECT_FALSE(space.page().hit(QStringLiteral("log/keep")));
    EXPECT_TRUE(says(space.page(), QStringLiteral("A time of the last day is needed")));
}

TEST_F(DayLogScreen, NoStepLeadsIntoTheFuture)
{
    click(space.list(), QStringLiteral("log/9"));
    ASSERT_TRUE(space.page().hit(QStringLiteral("log/step/5")));
    EXPECT_FALSE(space.page().hit(QStringLiteral("log/step/5"))->canAct());
    EXPECT_TRUE(space.page().hit(QStringLiteral("log/step/1"))->canAct());
    EXPECT_FALSE(space.page().hit(QStringLiteral("log/piece/1"))) << "a reading is of no piece";
}

TEST_F(DayLogScreen, TakesBackOnlyAfterSayingWhatGoesWithIt)
{
    click(space.list(), QStringLiteral("log/8"));
    ASSERT_TRUE(click(space.page(), QStringLiteral("log/takeback")));
    EXPECT_TRUE(taken.empty());
    EXPECT_TRUE(says(space.page(), QStringLiteral("13:33 Hands on it")));
    EXPECT_TRUE(says(space.page(), QStringLiteral("no longer stands")));
    type(space.page(), QStringLiteral("log/reason"), QStringLiteral(" wrong  bowl "));
    ASSERT_TRUE(click(space.page(), QStringLiteral("log/takebacknow")));
    ASSERT_EQ(taken.size(), 1U);
    EXPECT_EQ(taken.front(), (std::pair{EventId(8), QStringLiteral("wrong bowl")}));
}

TEST_F(DayLogScreen, LeavesWhatIsOldOrTakenBackAsItIs)
{
    for (const char* key : {"log/5", "log/4"}) {
        click(space.list(), QString::fromLatin1(key));
        EXPECT_FALSE(space.page().hit(QStringLiteral("log/step/-5"))) << key;
        EXPECT_FALSE(space.page().hit(QStringLiteral("log/takeback"))) << key;
    }
    EXPECT_TRUE(says(space.list(), QStringLiteral("Trimmed (taken back)")));
}

TEST_F(DayLogScreen, SaysWhatToDoOnAnEmptyDay)
{
    space.setNow({}, noonish);
    EXPECT_TRUE(says(space.list(), QStringLiteral("Every tap on the Bench becomes a line here")));
    EXPECT_FALSE(space.chosen());
}

class DayLogWalk : public SpaceWalk {};

TEST_P(DayLogWalk, EverySpotCanBeHitReadAndNamed)
{
    const SpaceWay way = GetParam();
    GateClock clock;
    Asked asked;
    DayLogSpace space(clock.gate);
    way.dress(space);
    space.setAnswers(&asked);
    space.setNow(today(), noonish);
    space.show();
    const auto walk = [&](const char* step) {
        const Walk found = walkSheets({&space.list(), &space.page()}, way.look());
        EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "") << step;
        EXPECT_GE(found.acts, 3) << step;
    };
    walk("list");
    space.open(EventId(8));
    walk("fact");
    click(space.page(), QStringLiteral("log/step/-5"));
    walk("moved");
    EXPECT_GT(keepPicture(space, way.picture(QStringLiteral("daylog"))), 4);
    click(space.page(), QStringLiteral("log/takeback"));
    walk("taking back");
}

INSTANTIATE_TEST_SUITE_P(Everywhere, DayLogWalk, testing::ValuesIn(spokenWays()));

} // namespace
} // namespace mend::app
