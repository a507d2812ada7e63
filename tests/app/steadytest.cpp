// What keeps a finger from hitting the wrong thing: the gate for taps, the order of the cards, the pedal, the flash.
#include "app/bench/flash.h"
#include "app/bench/pedal.h"
#include "app/bench/steadyorder.h"
#include "app/parts/tapgate.h"

#include <QKeyEvent>
#include <gtest/gtest.h>

namespace mend::app {
namespace {

using parts::Hit;
using parts::TapGate;

Hit spotAt(const char* key, int x)
{
    Hit hit;
    hit.key = QLatin1String(key);
    hit.rect = QRect(x, 0, 76, 76);
    return hit;
}

TEST(TapGate, RefusesASpotThatHasJustBecomeSomethingElse)
{
    qint64 now = 10'000;
    TapGate gate([&now] { return now; });
    const int view = 0;
    gate.shows(&view, {}, {spotAt("a", 0)});
    EXPECT_TRUE(gate.takes(&view, QStringLiteral("a")));
    gate.shows(&view, {spotAt("a", 0)}, {spotAt("b", 0), spotAt("a", 100)});
    for (const qint64 later : {0, 250, 499}) {
        now = 10'000 + later;
        EXPECT_FALSE(gate.takes(&view, QStringLiteral("b"))) << later;
        EXPECT_FALSE(gate.takes(&view, QStringLiteral("a"))) << "moved, " << later;
    }
    now = 10'500;
    EXPECT_TRUE(gate.takes(&view, QStringLiteral("b")));
    EXPECT_TRUE(gate.takes(&view, QStringLiteral("a")));
}

TEST(TapGate, TakesTheSecondOfADoubleTapForAnEcho)
{
    qint64 now = 0;
    TapGate gate([&now] { return now; });
    EXPECT_TRUE(gate.fires(QStringLiteral("a")));
    now = 249;
    EXPECT_FALSE(gate.fires(QStringLiteral("a")));
    EXPECT_TRUE(gate.fires(QStringLiteral("b")));
    now = 600;
    EXPECT_TRUE(gate.fires(QStringLiteral("b")));
}

TEST(TapGate, TakesNothingWhileTheGlassIsWiped)
{
    qint64 now = 0;
    TapGate gate([&now] { return now; });
    const int view = 0;
    gate.lockFor(20'000);
    now = 19'999;
    EXPECT_FALSE(gate.takes(&view, QStringLiteral("a")));
    now = 20'000;
    EXPECT_TRUE(gate.takes(&view, QStringLiteral("a")));
}

std::vector<PieceId> pieces(std::initializer_list<int> ids)
{
    std::vector<PieceId> all;
    for (const int id : ids) {
        all.emplace_back(id);
    }
    return all;
}

TEST(SteadyOrder, WaitsTwoSecondsAfterTheLastTouch)
{
    SteadyOrder order;
    order.want(pieces({1, 2, 3}), false);
    EXPECT_EQ(order.order(), pieces({1, 2, 3}));
    order.want(pieces({3, 1, 2}), false);
    EXPECT_FALSE(order.settle(1999));
    EXPECT_EQ(order.order(), pieces({1, 2, 3}));
    EXPECT_TRUE(order.settle(2000));
    EXPECT_EQ(order.order(), pieces({3, 1, 2}));
}

TEST(SteadyOrder, DoesNotWaitForAnAlertOfTheHighestUrgency)
{
    SteadyOrder order;
    order.want(pieces({1, 2, 3}), false);
    order.want(pieces({3, 1, 2}), true);
    EXPECT_TRUE(order.settle(0));
    EXPECT_EQ(order.order(), pieces({3, 1, 2}));
}

TEST(SteadyOrder, LetsPiecesInAtTheEndAndOutAtOnce)
{
    SteadyOrder order;
    order.want(pieces({1, 2, 3}), false);
    order.want(pieces({4, 1, 3}), false);
    EXPECT_EQ(order.order(), pieces({1, 3, 4}));
    EXPECT_TRUE(order.isWaiting());
}

TEST(Flash, LightsTheBorderOneAndAHalfTimesASecond)
{
    Flash flash;
    flash.start(bench::Urgency::A, false, 0);
    int flashes = 0;
    bool before = false;
    for (qint64 now = 0; now < 10'000; ++now) {
        const bool lit = flash.isLit(now);
        flashes += lit && !before ? 1 : 0;
        before = lit;
    }
    EXPECT_EQ(flashes, 16); // 10 s at 1.5 Hz, and the one it begins with
    flash.start(bench::Urgency::B, false, 0);
    EXPECT_EQ(flash.untilTurn(0), 1000);
}

TEST(Flash, IsSteadyWhereMotionIsUnwelcomeAndForTheLowestUrgency)
{
    Flash flash;
    flash.start(bench::Urgency::A, true, 0);
    EXPECT_TRUE(flash.isLit(500));
    EXPECT_FALSE(flash.untilTurn(0));
    flash.start(bench::Urgency::C, false, 0);
    EXPECT_FALSE(flash.untilTurn(0));
    flash.stop();
    EXPECT_FALSE(flash.isLit(0));
}

class PedalAtWork : public testing::Test {
protected:
    PedalAtWork() : pedal([this] { return now; }, [this] { return block; })
    {
        QObject::connect(&pedal, &Pedal::shortPress, [this](PieceId piece) { shorts.push_back(piece); });
        QObject::connect(&pedal, &Pedal::longPress, [this](PieceId piece) { longs.push_back(piece); });
    }
    void down(bool repeated = false)
    {
        EXPECT_TRUE(pedal.press(QKeyEvent(QEvent::KeyPress, Qt::Key_F13, {}, {}, repeated)));
    }
    void up(bool repeated = false)
    {
        EXPECT_TRUE(pedal.release(QKeyEvent(QEvent::KeyRelease, Qt::Key_F13, {}, {}, repeated)));
    }

    qint64 now = 0;
    PieceId block{1};
    Pedal pedal;
    std::vector<PieceId> shorts;
    std::vector<PieceId> longs;
};

TEST_F(PedalAtWork, TellsShortFromLongAtEightTenthsOfASecond)
{
    for (const auto& [held, isLong] :
         {std::pair(0, false), std::pair(799, false), std::pair(800, true), std::pair(5000, true)}) {
        shorts.clear();
        longs.clear();
        down();
        now += held;
        up();
        EXPECT_EQ(longs.size(), isLong ? 1U : 0U) << held;
        EXPECT_EQ(shorts.size(), isLong ? 0U : 1U) << held;
    }
}

TEST_F(PedalAtWork, ActsOnTheBlockThatStoodWhenItWentDown)
{
    down();
    block = PieceId(2);
    up();
    EXPECT_EQ(shorts, std::vector{PieceId(1)});
}

TEST_F(PedalAtWork, TakesTwoHundredRepeatsForOnePress)
{
    down();
    for (int i = 0; i < 200; ++i) {
        up(true);
        down(true);
    }
    now += 1000;
    up();
    EXPECT_TRUE(shorts.empty());
    EXPECT_EQ(longs.size(), 1U);
}

TEST_F(PedalAtWork, LeavesOtherKeysAlone)
{
    EXPECT_FALSE(pedal.press(QKeyEvent(QEvent::KeyPress, Qt::Key_A, {})));
    EXPECT_FALSE(pedal.release(QKeyEvent(QEvent::KeyRelease, Qt::Key_A, {})));
}

} // namespace
} // namespace mend::app
