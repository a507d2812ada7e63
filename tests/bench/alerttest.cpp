#include "core/bench/alert.h"

#include "core/bench/alertanswer.h"
#include "tests/bench/alertdesk_support.h"

#include <gtest/gtest.h>
#include <random>

namespace mend::bench::test {

namespace {

/// Two pieces in hand, with windows laid down by hand: what the alerts make of them is asked, not how they came about.
class AlertsOfWindows : public testing::Test {
protected:
    AlertsOfWindows()
    {
        for (const std::int64_t id : {1, 2}) {
            PieceState& piece = bench.pieces[PieceId(id)];
            piece.piece.id = PieceId(id);
            piece.piece.benchName = id == 1 ? "Heron bowl" : "Tea cup";
        }
    }

    static Window wipe(std::int64_t piece = 1, Instant origin = noon)
    {
        Window window;
        window.piece = PieceId(piece);
        window.stage = {"wipeBack", 1};
        window.act = "Wipe back the filler";
        window.handsOn = minutes(5);
        window.opens = origin + minutes(2);
        window.closes = origin + minutes(62);
        window.latestStart = *window.closes - window.handsOn;
        window.miss = rules::Miss::Afternoon;
        Reckoning wait;
        wait.event = EventId(origin.time_since_epoch() / minutes(1));
        wait.origin = origin;
        wait.figure = minutes(2);
        Reckoning close = wait;
        close.figure = minutes(62);
        close.closing = true;
        close.result = window.closes;
        window.why = {wait, close};
        return window;
    }

    std::vector<Alert> alerts(Instant now) const { return alertsFor(bench, windows, book, now); }

    const Alert* find(const std::vector<Alert>& all, AlertKind kind, std::int64_t piece = 1) const
    {
        for (const Alert& alert : all) {
            if (alert.kind == kind && alert.piece == PieceId(piece)) {
                return &alert;
            }
        }
        return nullptr;
    }

    void answer(const std::string& key, Answered how, Instant at)
    {
        std::erase_if(bench.answers, [&](const AlertAnswer& held) { return held.key == key; });
        bench.answers.push_back({key, answeredKey(how), at, {}, PersonId(1)});
    }

    BenchFold bench;
    rules::RuleBook book;
    std::vector<Window> windows;
};

} // namespace

TEST(AlertTimes, MeetTheCheckRows)
{
    struct Row {
        Span width;
        Span hands;
        double first; ///< minutes before the close
        double lastCall;
    };
    // Worked out by hand from: latest start = close - hands, a = min(room / 2, clamp(W / 5, 2 min, 30 min)).
    const std::vector<Row> rows{{minutes(5), minutes(1), 3, 2},
                                {minutes(18), minutes(5), 8.6, 6},
                                {minutes(60), minutes(5), 17, 6},
                                {hours(4), minutes(20), 50, 21},
                                {hours(48), minutes(10), 40, 11}};
    for (const Row& row : rows) {
        const auto times = alertTimes(noon, noon + row.width, row.hands);
        ASSERT_TRUE(times.has_value());
        const auto before = [&](Instant instant) {
            return std::chrono::duration<double, std::ratio<60>>(noon + row.width - instant).count();
        };
        EXPECT_NEAR(before(times->first), row.first, 1e-9);
        EXPECT_NEAR(before(times->lastCall), row.lastCall, 1e-9);
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
    // The first to close opens four seconds after the two must be started, the other has long been open.
    Window wiping = wipe(1);
    wiping.handsOn = minutes(4);
    wiping.opens = noon + minutes(47) + seconds(4);
    wiping.closes = noon + minutes(53);
    Window smoothing = wipe(2);
    smoothing.handsOn = minutes(4);
    smoothing.miss = rules::Miss::Minutes;
    smoothing.opens = noon + minutes(39);
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
    EXPECT_EQ(desk.announced(head->key), 1);
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
