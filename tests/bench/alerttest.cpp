#include "core/bench/alert.h"

#include "tests/bench/alertsofwindows.h"

#include <gtest/gtest.h>
#include <random>

namespace mend::bench::test {

namespace {

struct CheckRow {
    Span width;
    Span hands;
    double first; ///< minutes before the close
    double lastCall;
};

/// Worked out by hand from: latest start = close - hands, a = min(room / 2, clamp(W / 5, 2 min, 30 min)).
const std::vector<CheckRow> checkRows{{minutes(5), minutes(1), 3, 2},
                                      {minutes(18), minutes(5), 8.6, 6},
                                      {minutes(60), minutes(5), 17, 6},
                                      {hours(4), minutes(20), 50, 21},
                                      {hours(48), minutes(10), 40, 11}};

double minutesBefore(std::optional<Instant> close, std::optional<Instant> instant)
{
    return std::chrono::duration<double, std::ratio<60>>(close.value() - instant.value()).count();
}

} // namespace

TEST(AlertTimes, MeetTheCheckRows)
{
    for (const CheckRow& row : checkRows) {
        const auto times = alertTimes(noon, noon + row.width, row.hands);
        ASSERT_TRUE(times.has_value());
        EXPECT_NEAR(minutesBefore(noon + row.width, times->first), row.first, 1e-9);
        EXPECT_NEAR(minutesBefore(noon + row.width, times->lastCall), row.lastCall, 1e-9);
        EXPECT_EQ(times->latestStart, noon + row.width - row.hands);
    }
}

TEST(AlertTimes, AreNoneWithoutRoomOrUnderThreeMinutes)
{
    EXPECT_FALSE(alertTimes(noon, noon + minutes(4), minutes(5)).has_value());
    EXPECT_TRUE(alertTimes(noon, noon + minutes(5), minutes(5)).has_value());
    EXPECT_FALSE(alertTimes(noon, noon + minutes(3) - milliseconds(1), minutes(1)).has_value());
    EXPECT_TRUE(alertTimes(noon, noon + minutes(3), minutes(1)).has_value());
    EXPECT_FALSE(alertTimes(noon, noon - minutes(1), Span{0}).has_value());
}

TEST(AlertTimes, NeverCallBeforeTheOpeningNorAfterTheLatestStart)
{
    std::mt19937_64 random(1); // a fixed seed
    std::uniform_int_distribution<std::int64_t> width(180'000, 172'800'000);
    for (int i = 0; i < 10'000; ++i) {
        const Span whole(width(random));
        const Span hands(std::uniform_int_distribution<std::int64_t>(0, whole.count())(random));
        const auto times = alertTimes(noon, noon + whole, hands);
        ASSERT_TRUE(times.has_value());
        EXPECT_GE(times->first, noon);
        EXPECT_LE(times->first, times->lastCall);
        EXPECT_LE(times->lastCall, times->latestStart);
        EXPECT_GE(times->latestStart - times->first, std::min<Span>((whole - hands) / 2, minutes(2)));
    }
}

TEST(AlertKey, NamesPieceStageRepetitionAndWhatCalls)
{
    EXPECT_EQ(alertKey(PieceId(12), {"wipeBack", 2}, "closes@0"), "12/wipeBack#2/closes@0");
}

TEST_F(AlertsOfWindows, CallAtTheOpeningAndBeforeTheClose)
{
    windows = {wipe()};
    const auto all = alerts(noon);
    const Alert* opens = find(all, AlertKind::Opens);
    ASSERT_NE(opens, nullptr);
    EXPECT_EQ(opens->due, noon + minutes(2));
    EXPECT_EQ(opens->urgency, Urgency::C);
    const Alert* closes = find(all, AlertKind::Closes);
    ASSERT_NE(closes, nullptr);
    EXPECT_EQ(closes->urgency, Urgency::A);
    EXPECT_EQ(closes->due, noon + minutes(45));
    EXPECT_EQ(closes->lastCall, noon + minutes(56));
    EXPECT_EQ(closes->spoken, "Wipe");
    EXPECT_EQ(closes->benchName, "Heron bowl");
    EXPECT_EQ(remaining(*closes, noon), remaining(windows.front(), noon)) << "one figure everywhere";
}

TEST_F(AlertsOfWindows, MeetTheCheckRowsFromTheWindowToTheSound)
{
    for (const CheckRow& row : checkRows) {
        Window window = wipe();
        window.opens = noon;
        window.handsOn = row.hands;
        window.closes = window.why.back().result = noon + row.width;
        window.latestStart = *window.closes - row.hands;
        windows = {window};
        DeskRun desk(noon);
        desk.alerts = alerts(noon);
        std::erase_if(desk.alerts, [](const Alert& alert) { return alert.kind != AlertKind::Closes; });
        const Alert wiping = *find(desk.alerts, AlertKind::Closes);
        EXPECT_NEAR(minutesBefore(wiping.closes, wiping.due), row.first, 1e-9);
        EXPECT_NEAR(minutesBefore(wiping.closes, wiping.lastCall), row.lastCall, 1e-9);
        desk.until(wiping.due - milliseconds(1));
        EXPECT_TRUE(desk.heard.empty());
        desk.until(wiping.due + seconds(1));
        desk.answer(wiping.key, Answered::Heard);
        desk.until(*wiping.lastCall);
        ASSERT_EQ(desk.heard.size(), 2U);
        EXPECT_NEAR(minutesBefore(wiping.closes, desk.heard.front().at), row.first, 1e-4);
        EXPECT_NEAR(minutesBefore(wiping.closes, desk.heard.back().at), row.lastCall, 1e-4);
    }
}

TEST_F(AlertsOfWindows, CallWithABAtTheRecommendedMinute)
{
    windows = {wipe()};
    windows.front().recommended = noon + minutes(5);
    const auto all = alerts(noon);
    EXPECT_EQ(find(all, AlertKind::Opens)->due, noon + minutes(5));
    EXPECT_EQ(find(all, AlertKind::Opens)->urgency, Urgency::B);
}

TEST_F(AlertsOfWindows, TakeTheirUrgencyFromWhatAMissCosts)
{
    using rules::Miss;
    for (const auto& [miss, urgency] : std::vector<std::pair<Miss, Urgency>>{{Miss::Minutes, Urgency::B},
                                                                             {Miss::FreshMix, Urgency::B},
                                                                             {Miss::Afternoon, Urgency::A},
                                                                             {Miss::Day, Urgency::A},
                                                                             {Miss::Piece, Urgency::A}}) {
        windows = {wipe()};
        windows.front().miss = miss;
        EXPECT_EQ(find(alerts(noon), AlertKind::Closes)->urgency, urgency);
    }
}

TEST_F(AlertsOfWindows, SayNothingOfWhatMayBeDoneAtAnyTime)
{
    Window free = wipe();
    free.closes.reset();
    free.latestStart.reset();
    free.why.clear();
    windows = {free};
    EXPECT_TRUE(alerts(noon).empty());
}

TEST_F(AlertsOfWindows, SayNothingOfACountedWindow)
{
    windows = {wipe()};
    windows.front().counted = true;
    EXPECT_TRUE(alerts(noon).empty());
    EXPECT_TRUE(alerts(noon + hours(2)).empty());
}

TEST_F(AlertsOfWindows, AskAgainAfterNotYetUnderAKeyOfItsOwn)
{
    windows = {wipe()};
    windows.front().waitsForTest = true;
    const std::string first = find(alerts(noon), AlertKind::Opens)->key;
    windows.front().askAgain = noon + minutes(9);
    const auto all = alerts(noon + minutes(4));
    EXPECT_EQ(find(all, AlertKind::Opens)->due, noon + minutes(9));
    EXPECT_NE(find(all, AlertKind::Opens)->key, first);
}

TEST_F(AlertsOfWindows, KeepTheirKeyWhenAReadingMovesTheWindow)
{
    windows = {wipe()};
    const std::string before = find(alerts(noon), AlertKind::Closes)->key;
    windows.front().closes = noon + minutes(50);
    windows.front().latestStart = noon + minutes(45);
    EXPECT_EQ(find(alerts(noon), AlertKind::Closes)->key, before);
}

TEST_F(AlertsOfWindows, KeepTheirKeyWhenTheClockIsPutRight)
{
    windows = {wipe()};
    windows.front().askAgain = noon + minutes(9);
    const auto before = alerts(noon);
    Window& moved = windows.front();
    for (std::optional<Instant>* instant : {&moved.opens, &moved.closes, &moved.latestStart, &moved.askAgain}) {
        **instant += hours(1);
    }
    for (Reckoning& reckoning : moved.why) {
        reckoning.origin += hours(1);
    }
    const auto after = alerts(noon + hours(1));
    EXPECT_EQ(find(after, AlertKind::Closes)->key, find(before, AlertKind::Closes)->key);
    EXPECT_EQ(find(after, AlertKind::Opens)->key, find(before, AlertKind::Opens)->key);
}

TEST_F(AlertsOfWindows, AreNotWithdrawnByAReadingOnceShown)
{
    windows = {wipe()};
    const Alert shown = *find(alerts(noon), AlertKind::Closes);
    answer(shown.key, Answered::Shown, shown.due);
    windows.front().closes = noon + minutes(90); // a cooler reading
    windows.front().latestStart = noon + minutes(85);
    EXPECT_EQ(find(alerts(shown.due), AlertKind::Closes)->due, shown.due);
    windows.front().opens = noon + minutes(88); // and a stalled opening, which leaves no room at all
    ASSERT_NE(find(alerts(shown.due), AlertKind::Closes), nullptr);
    EXPECT_LE(find(alerts(shown.due), AlertKind::Closes)->due, shown.due);
}

TEST_F(AlertsOfWindows, CallAtOnceWhereAReadingLeavesNoRoomThoughTheyHadNotCalled)
{
    windows = {wipe()};
    const Instant before = noon + minutes(30);
    ASSERT_GT(find(alerts(before), AlertKind::Closes)->due, before);
    // A cold reading: nothing may be wiped before minute 61 now, and it still closes at minute 62. At minute 59 hands
    // must be on it; that it is not ready is for a mender to find out by touch, not for the bench to keep to itself.
    for (const Instant opens : {noon + minutes(58), noon + minutes(61), noon + hours(2)}) {
        windows.front().opens = opens;
        const auto all = alerts(before);
        const Alert* alert = find(all, AlertKind::Closes);
        ASSERT_NE(alert, nullptr) << toRfc3339(opens);
        EXPECT_EQ(alert->due, noon + minutes(57) - leastWarning);
        EXPECT_EQ(alert->lastCall, alert->due);
        EXPECT_EQ(alert->urgency, Urgency::A);
    }
}

TEST_F(AlertsOfWindows, CallAtOnceWhereASecondCoatMakesTheFirstWaitPastItsClose)
{
    Window window = wipe();
    Reckoning second = window.why.front();
    second.event = EventId(second.event.value() + 30);
    second.origin = noon + minutes(50); // one more coat went on: nothing may be done for a quarter of an hour
    second.figure = minutes(15);
    window.why.insert(window.why.begin() + 1, second);
    window.opens = second.origin + second.figure;
    windows = {window};
    ASSERT_NE(find(alerts(noon + minutes(50)), AlertKind::Closes), nullptr);
    EXPECT_EQ(find(alerts(noon + minutes(50)), AlertKind::Closes)->due, noon + minutes(57) - leastWarning);
}

TEST_F(AlertsOfWindows, SayNothingWhereTheRuleLeavesNoRoom)
{
    Window window = wipe();
    for (Reckoning& why : window.why) {
        why.figure = why.closing ? minutes(4) + seconds(59) : minutes(2); // a minute short of five of hands
    }
    window.closes = window.why.back().result = noon + minutes(4) + seconds(59);
    window.latestStart = *window.closes - window.handsOn;
    windows = {window};
    EXPECT_EQ(find(alerts(noon), AlertKind::Closes), nullptr);
    EXPECT_FALSE(callTimes(window).has_value());
}

TEST_F(AlertsOfWindows, StayRaisedWhenTheyLastCalledAndTheWindowMovesOn)
{
    windows = {wipe()};
    const Alert wiping = *find(alerts(noon), AlertKind::Closes);
    answer(wiping.key + "/last", Answered::Shown, *wiping.lastCall);
    windows.front().closes = noon + minutes(90); // a cooler reading, and nothing was kept of a first call
    windows.front().latestStart = noon + minutes(85);
    EXPECT_EQ(find(alerts(*wiping.lastCall), AlertKind::Closes)->due, *wiping.lastCall);
}

TEST_F(AlertsOfWindows, AreNewOnesForANewRunOfTheSameStage)
{
    windows = {wipe(1, noon)};
    const Alert first = *find(alerts(noon), AlertKind::Closes);
    answer(first.key, Answered::HandsOn, noon + minutes(46));
    windows = {wipe(1, noon + hours(3))}; // sent back and filled again
    const Alert again = *find(alerts(noon + hours(3)), AlertKind::Closes);
    EXPECT_NE(again.key, first.key);
    EXPECT_FALSE(again.handsSince.has_value());
}

TEST_F(AlertsOfWindows, TakeHandsOnItFromAnyAlertOfTheSameWindow)
{
    windows = {wipe()};
    answer(find(alerts(noon), AlertKind::Opens)->key, Answered::HandsOn, noon + minutes(3));
    const auto all = alerts(noon + minutes(3));
    EXPECT_EQ(find(all, AlertKind::Opens), nullptr);
    EXPECT_EQ(find(all, AlertKind::Closes)->handsSince, noon + minutes(3));
    ASSERT_NE(find(all, AlertKind::Done), nullptr);
    EXPECT_EQ(find(all, AlertKind::Done)->due, noon + minutes(3) + seconds(450));
    answer(find(all, AlertKind::Done)->key, Answered::HandsOn, noon + minutes(11)); // "still at it"
    EXPECT_EQ(find(alerts(noon + minutes(12)), AlertKind::Done)->due, noon + minutes(11) + seconds(450));
}

TEST_F(AlertsOfWindows, AskDoneAtTheCloseAtTheLatestAndSayItOnce)
{
    windows = {wipe()};
    windows.front().begunAt = noon + minutes(60);
    const auto all = alerts(noon + minutes(61));
    EXPECT_EQ(find(all, AlertKind::Done)->due, noon + minutes(62));
    EXPECT_EQ(find(all, AlertKind::Closed), nullptr);
}

TEST_F(AlertsOfWindows, MarkACloseThatNobodyAnsweredUntilSomebodyDoes)
{
    windows = {wipe()};
    const auto all = alerts(noon + minutes(70));
    EXPECT_EQ(find(all, AlertKind::Closes), nullptr);
    EXPECT_EQ(find(all, AlertKind::Opens), nullptr);
    ASSERT_NE(find(all, AlertKind::Closed), nullptr);
    EXPECT_EQ(find(all, AlertKind::Closed)->due, noon + minutes(62));
    StageRecord told;
    told.at = {"wipeBack", 1};
    told.missed = true;
    bench.pieces[PieceId(1)].stages = {told};
    EXPECT_EQ(find(alerts(noon + minutes(70)), AlertKind::Closed), nullptr);
}

TEST_F(AlertsOfWindows, OnHoldSoundOnlyWhatIsCostly)
{
    bench.pieces[PieceId(1)].onHold = true;
    windows = {wipe()};
    EXPECT_FALSE(find(alerts(noon), AlertKind::Closes)->quiet);
    EXPECT_TRUE(find(alerts(noon), AlertKind::Opens)->quiet);
    windows.front().miss = rules::Miss::FreshMix;
    EXPECT_TRUE(find(alerts(noon), AlertKind::Closes)->quiet);
}

TEST(ClosingWithin, ListsTheCostlyOnesWhoseLatestStartFallsInside)
{
    const Alert soon = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    const Alert later = closing("Tea cup", noon, noon + minutes(80), minutes(5));
    const Alert cheap = closing("Jug", noon, noon + minutes(60), minutes(5), rules::Miss::Minutes);
    const auto inside = closingWithin({later, cheap, soon}, noon + minutes(50), minutes(30));
    ASSERT_EQ(inside.size(), 2u);
    EXPECT_EQ(inside.front().key, soon.key);
    EXPECT_TRUE(closingWithin({soon, later}, noon + minutes(40), minutes(15)).empty());
}

} // namespace mend::bench::test
