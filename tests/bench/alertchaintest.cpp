#include "core/bench/alert.h"

#include "core/bench/chain.h"
#include "tests/bench/alertsofwindows.h"

// Several windows that want the same hands: one call that names the order, in time for all of them.
namespace mend::bench::test {

TEST_F(AlertsOfWindows, OfAChainStayRaisedThoughTheFirstOfItOpensLater)
{
    windows = {wipe(1), wipe(2, noon + minutes(1))};
    windows[0].opens = noon + minutes(50);
    const std::string alone = find(alerts(noon), AlertKind::Closes, 2)->key;
    answer(alone, Answered::Shown, noon + minutes(45)); // it called before the two were a chain
    chainThroughOnePairOfHands(windows, noon + minutes(45));
    ASSERT_EQ(windows[1].chain.size(), 2u);
    EXPECT_EQ(find(alerts(noon + minutes(45)), AlertKind::Closes, 1)->due, noon + minutes(45));
}

TEST_F(AlertsOfWindows, OfOneChainCallOnceAndNameTheOrder)
{
    Window first = wipe(1);
    first.miss = rules::Miss::FreshMix;
    windows = {first, wipe(2, noon + minutes(1))};
    chainThroughOnePairOfHands(windows, noon);
    ASSERT_EQ(windows[1].chain.size(), 2u);
    const auto all = alerts(noon);
    const Alert* head = find(all, AlertKind::Closes, 1);
    ASSERT_NE(head, nullptr);
    EXPECT_EQ(find(all, AlertKind::Closes, 2), nullptr);
    EXPECT_EQ(head->urgency, Urgency::A) << "as costly as the costliest of them";
    EXPECT_EQ(head->chainNames, (std::vector<std::string>{"Heron bowl", "Tea cup"}));
    EXPECT_EQ(head->latestStart, windows[1].latestStart);
    EXPECT_LT(head->due, *windows[1].latestStart);
}

TEST_F(AlertsOfWindows, OfAChainCountTheHandsOfAllThatIsServedBefore)
{
    // Sixty minutes, two minutes of hands for the one and three for the other: as one window of five, 17 and 6 minutes
    // before the close.
    windows = {wipe(1), wipe(2)};
    windows[0].handsOn = minutes(2);
    windows[1].handsOn = minutes(3);
    chainThroughOnePairOfHands(windows, noon);
    const auto all = alerts(noon);
    const Alert* head = find(all, AlertKind::Closes, 1);
    ASSERT_NE(head, nullptr);
    EXPECT_EQ(head->due, noon + minutes(62 - 17));
    EXPECT_EQ(head->lastCall, noon + minutes(62 - 6));
    EXPECT_EQ(head->latestStart, noon + minutes(62 - 5));
}

TEST_F(AlertsOfWindows, OfAChainCallAloneForWhatWaitsBehindBusyHands)
{
    windows = {wipe(1), wipe(2, noon + minutes(1))};
    chainThroughOnePairOfHands(windows, noon);
    answer(find(alerts(noon), AlertKind::Closes, 1)->key, Answered::HandsOn, noon + minutes(44));
    EXPECT_NE(find(alerts(noon + minutes(45)), AlertKind::Closes, 2), nullptr);
}

TEST_F(AlertsOfWindows, CallAtOnceWhereTheirChainLeavesNoRoom)
{
    Window one = wipe(1);
    Window other = wipe(2);
    one.closes = one.latestStart = noon + minutes(9);
    one.handsOn = other.handsOn = minutes(6);
    other.closes = other.latestStart = noon + minutes(9);
    windows = {one, other};
    chainThroughOnePairOfHands(windows, noon);
    ASSERT_LT(*windows[0].latestStart, *windows[0].opens);
    const auto all = alerts(noon);
    const bool calls = std::ranges::any_of(all, [](const Alert& alert) {
        return alert.kind == AlertKind::Closes && alert.due <= noon + minutes(2) && alert.chain.size() == 2;
    });
    EXPECT_TRUE(calls);
}

TEST_F(AlertsOfWindows, OfAChainCallBeforeItsLatestStartThoughTheFirstOpensLater)
{
    // The first to close opens four seconds after the two must be started; in the other order it would be worse.
    Window wiping = wipe(1);
    wiping.handsOn = minutes(4);
    wiping.opens = noon + minutes(47) + seconds(4);
    wiping.closes = noon + minutes(53);
    Window smoothing = wipe(2);
    smoothing.handsOn = minutes(4);
    smoothing.miss = rules::Miss::Minutes;
    smoothing.opens = noon + minutes(46);
    smoothing.closes = noon + minutes(55);
    windows = {wiping, smoothing};
    chainThroughOnePairOfHands(windows, noon);
    ASSERT_EQ(windows[0].latestStart, noon + minutes(47));

    DeskRun desk(noon);
    desk.alerts = alerts(noon);
    const Alert* head = find(desk.alerts, AlertKind::Closes, 1);
    ASSERT_NE(head, nullptr);
    EXPECT_EQ(head->urgency, Urgency::A);
    EXPECT_EQ(head->due, noon + minutes(47) - leastWarning);
    EXPECT_GE(*head->lastCall, head->due);
    desk.until(noon + minutes(47) - milliseconds(1));
    EXPECT_GE(desk.announced(head->key), 1);
}

TEST_F(AlertsOfWindows, OfAChainCallBeforeItsLatestStartThoughNoneHasOpened)
{
    windows = {wipe(1), wipe(2)};
    for (Window& window : windows) {
        window.handsOn = minutes(6);
        window.opens = noon + minutes(50);
        window.closes = noon + minutes(60);
    }
    chainThroughOnePairOfHands(windows, noon);
    ASSERT_EQ(windows[0].latestStart, noon + minutes(48));
    for (const auto& [opens, lastCall] :
         std::vector<std::pair<Span, Span>>{{minutes(50), minutes(50)},    // "heard" puts it off until hands can begin
                                            {minutes(48), minutes(48)}}) { // no room to the millisecond
        windows[0].opens = windows[1].opens = noon + opens;
        const auto all = alerts(noon);
        const Alert* head = find(all, AlertKind::Closes, 1);
        ASSERT_NE(head, nullptr);
        EXPECT_EQ(head->chain.size(), 2u);
        EXPECT_EQ(head->due, noon + minutes(48) - leastWarning);
        EXPECT_EQ(head->lastCall, noon + lastCall);
    }
}

TEST_F(AlertsOfWindows, OfAChainCallInTimeAloneWhileTheOtherIsUnderHands)
{
    windows = {wipe(1), wipe(2)};
    windows[0].closes = noon + minutes(53);
    windows[0].opens = noon + minutes(45);
    windows[1].closes = noon + minutes(54);
    chainThroughOnePairOfHands(windows, noon);
    ASSERT_LT(*windows[0].latestStart, *windows[0].opens);
    answer(find(alerts(noon), AlertKind::Opens, 2)->key, Answered::HandsOn, noon + minutes(40));
    const auto all = alerts(noon + minutes(40));
    const Alert* alone = find(all, AlertKind::Closes, 1);
    ASSERT_NE(alone, nullptr);
    EXPECT_TRUE(alone->chain.empty());
    EXPECT_EQ(alone->due, *windows[0].latestStart - leastWarning);
}

} // namespace mend::bench::test
