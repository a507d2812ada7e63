#include "app/whileaway/whileawayspace.h"

#include "tests/spaces/spacewalk.h"

#include <gtest/gtest.h>

namespace mend::app {
namespace {

using bench::ActKind;
using std::chrono::hours;

const Instant morning = std::chrono::sys_days{std::chrono::year{2026} / 11 / 28} + hours(8);

service::MissedLine lineOf(const char* key, const char* name, const char* time, bool savable)
{
    const auto act = [](ActKind kind) { return bench::CardAct{kind, {"wipeBack", 1}, {}}; };
    service::MissedLine line{key,
                             PieceId(1),
                             QString::fromLatin1(name),
                             QStringLiteral("Wipe back the filler"),
                             QString::fromLatin1(time),
                             savable,
                             {act(ActKind::WasInTime), act(ActKind::DoingLate), act(ActKind::NotDone)}};
    if (savable) {
        line.answers[0] = act(ActKind::HandsOnIt);
    }
    return line;
}

WhileAwayNow everything()
{
    WhileAwayNow now;
    now.away = {morning - hours(14), morning};
    now.missed = {lineOf("1/wipe/closes", "Heron bowl", "18 min left", true),
                  lineOf("2/dust/closed", "Celadon dish", "closed 42 min ago", false)};
    now.heated = {{PlaceId(3), QStringLiteral("Cabinet")}, {PlaceId(4), QStringLiteral("Humid box")}};
    now.nights = {{PlaceId(1), QStringLiteral("Bench")}};
    return now;
}

class WhileAwayScreen : public testing::Test {
protected:
    WhileAwayScreen()
    {
        space.resize(1148, 704);
        space.setLook(SpaceWay{{}, parts::Theme::Light}.look());
        space.setNow(everything(), morning);
        space.show();
        QObject::connect(&space, &WhileAwaySpace::missedAnswered, &space,
                         [this](const QString& key, PieceId, const bench::CardAct& act) {
                             answers.push_back({key, act.kind});
                         });
        QObject::connect(&space, &WhileAwaySpace::gapAnswered, &space,
                         [this](PlaceId place, InstantRange away, const QString& how) {
                             gaps.push_back({place, how});
                             EXPECT_EQ(away, everything().away);
                         });
        QObject::connect(&space, &WhileAwaySpace::nightTold, &space,
                         [this](PlaceId, InstantRange, Temperature lowest, Temperature highest) {
                             nights.push_back({lowest, highest});
                         });
    }
    GateClock clock;
    WhileAwaySpace space{clock.gate};
    std::vector<std::pair<QString, ActKind>> answers;
    std::vector<std::pair<PlaceId, QString>> gaps;
    std::vector<std::pair<Temperature, Temperature>> nights;
};

TEST_F(WhileAwayScreen, WhatCanBeSavedStandsFirstWithThreeEqualAnswers)
{
    const auto& sheet = space.sheet();
    const parts::Hit* saved = sheet.hit(QStringLiteral("missed/1/wipe/closes"));
    const parts::Hit* closed = sheet.hit(QStringLiteral("missed/2/dust/closed"));
    ASSERT_TRUE(saved && closed);
    EXPECT_LT(saved->rect.top(), closed->rect.top());
    for (const char* key : {"1/wipe/closes", "2/dust/closed"}) {
        std::vector<QSize> sizes;
        for (int i = 0; i < 3; ++i) {
            const parts::Hit* answer = sheet.hit(QStringLiteral("missed/%1/%2").arg(QLatin1String(key)).arg(i));
            ASSERT_TRUE(answer) << key << i;
            sizes.push_back(answer->rect.size());
        }
        EXPECT_EQ(sizes[0], sizes[1]);
        EXPECT_EQ(sizes[1], sizes[2]);
    }
}

TEST_F(WhileAwayScreen, EachAnswerIsToldOnceAndItsQuestionGoes)
{
    ASSERT_TRUE(click(space.sheet(), QStringLiteral("missed/1/wipe/closes/0")));
    ASSERT_TRUE(click(space.sheet(), QStringLiteral("missed/2/dust/closed/2")));
    ASSERT_EQ(answers.size(), 2U);
    EXPECT_EQ(answers[0], (std::pair{QStringLiteral("1/wipe/closes"), ActKind::HandsOnIt}));
    EXPECT_EQ(answers[1].second, ActKind::NotDone);
    EXPECT_FALSE(space.sheet().hit(QStringLiteral("missed/1/wipe/closes/0")));
    for (const char* how : {"gap/3/wentOff", "gap/4/unknown"}) {
        ASSERT_TRUE(click(space.sheet(), QString::fromLatin1(how)));
    }
    ASSERT_EQ(gaps.size(), 2U);
    EXPECT_EQ(gaps[0], (std::pair{PlaceId(3), QStringLiteral("wentOff")}));
    EXPECT_EQ(gaps[1], (std::pair{PlaceId(4), QStringLiteral("unknown")}));
    ASSERT_TRUE(click(space.sheet(), QStringLiteral("night/1/pass")));
    EXPECT_FALSE(space.hasQuestions());
}

TEST_F(WhileAwayScreen, TheThreeAnswersAboutHeatAreOfOneSize)
{
    const auto size = [&](const char* how) {
        return space.sheet().hit(QStringLiteral("gap/3/") + QLatin1String(how))->rect.size();
    };
    EXPECT_EQ(size("stayedOn"), size("wentOff"));
    EXPECT_EQ(size("wentOff"), size("unknown"));
}

TEST_F(WhileAwayScreen, TakesANightsLowestAndHighest)
{
    ASSERT_TRUE(click(space.sheet(), QStringLiteral("night/1/tell")));
    EXPECT_TRUE(nights.empty());
    EXPECT_TRUE(says(space.sheet(), QStringLiteral("Two temperatures are needed")));
    type(space.sheet(), QStringLiteral("night/1/lowest"), QStringLiteral("19"));
    type(space.sheet(), QStringLiteral("night/1/highest"), QStringLiteral("12.5"));
    click(space.sheet(), QStringLiteral("night/1/tell"));
    EXPECT_TRUE(nights.empty());
    EXPECT_TRUE(says(space.sheet(), QStringLiteral("wrong way round")));
    type(space.sheet(), QStringLiteral("night/1/lowest"), QStringLiteral("12.5"));
    type(space.sheet(), QStringLiteral("night/1/highest"), QStringLiteral("19"));
    ASSERT_TRUE(click(space.sheet(), QStringLiteral("night/1/tell")));
    ASSERT_EQ(nights.size(), 1U);
    EXPECT_EQ(nights.front().first, Temperature::fromCelsius(12.5));
    EXPECT_EQ(nights.front().second, Temperature::fromCelsius(19));
}

class WhileAwayWalk : public SpaceWalk {};

TEST_P(WhileAwayWalk, EverySpotCanBeHitReadAndNamed)
{
    const SpaceWay way = GetParam();
    GateClock clock;
    WhileAwaySpace space(clock.gate);
    way.dress(space);
    space.setNow(everything(), morning);
    space.show();
    const Walk found = walkSheets({&space.sheet()}, way.look());
    EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "");
    EXPECT_EQ(found.benchActs, 13);
    EXPECT_GT(keepPicture(space, way.picture(QStringLiteral("whileaway"))), 4);
}

INSTANTIATE_TEST_SUITE_P(Everywhere, WhileAwayWalk, testing::ValuesIn(spokenWays()));

} // namespace
} // namespace mend::app
