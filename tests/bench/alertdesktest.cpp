#include "core/bench/alertdesk.h"

#include "tests/bench/alertdesk_support.h"

#include <gtest/gtest.h>

// Where a figure has no source beside it, it is our own design: an alarm that is heard, understood and not resented.
namespace mend::bench::test {

TEST(AlertDesk, SoundsAnAAtItsFirstAlertAndNeverBefore)
{
    DeskRun run(noon);
    run.alerts = {closing("Heron bowl", noon, noon + minutes(60), minutes(5))};
    EXPECT_FALSE(run.until(noon + minutes(43) - milliseconds(1)).play.has_value());
    EXPECT_TRUE(run.heard.empty());
    run.inputs.now = noon + minutes(43); // 17 minutes before it closes
    ASSERT_TRUE(run.look().play.has_value());
    EXPECT_EQ(run.heard.front().play.signal, Signal::A);
}

TEST(AlertDesk, RepeatsAnAEightSecondsAfterEachBurst)
{
    DeskRun run(noon);
    run.alerts = {closing("Heron bowl", noon, noon + minutes(60), minutes(5))};
    run.until(noon + minutes(43) + seconds(40));
    ASSERT_GE(run.heard.size(), 4u);
    for (std::size_t i = 1; i < run.heard.size(); ++i) {
        EXPECT_EQ(run.heard[i].at - run.heard[i - 1].at, milliseconds(1725 + 8000));
        EXPECT_TRUE(run.heard[i].play.keys.empty()) << "a repeat announces nothing new";
    }
}

TEST(AlertDesk, RepeatsABAfterTwentyFiveSecondsForTwoMinutesThenEveryTwo)
{
    DeskRun run(noon);
    run.alerts = {opening("Heron bowl", noon, Urgency::B)};
    run.until(noon + minutes(8));
    std::vector<Span> gaps;
    for (std::size_t i = 1; i < run.heard.size(); ++i) {
        gaps.push_back(run.heard[i].at - run.heard[i - 1].at - milliseconds(950));
        EXPECT_EQ(run.heard[i].play.signal, Signal::B);
    }
    const std::vector<Span> expected{seconds(25), seconds(25),  seconds(25), seconds(25),
                                     seconds(25), seconds(120), seconds(120)};
    EXPECT_EQ(gaps, expected);
}

TEST(AlertDesk, NeverRepeatsAC)
{
    DeskRun run(noon);
    run.alerts = {opening("Heron bowl", noon)};
    run.until(noon + hours(20));
    EXPECT_EQ(run.heard.size(), 1u);
    EXPECT_EQ(run.heard.front().play.signal, Signal::C);
}

TEST(AlertDesk, GrowsLouderAndSpeaksAgainAfterAMinuteAndNotifiesAfterThree)
{
    DeskRun run(noon);
    run.alerts = {closing("Heron bowl", noon, noon + minutes(60), minutes(5))};
    const Instant first = noon + minutes(43);
    run.until(first + minutes(2));
    for (std::size_t i = 0; i < run.heard.size(); ++i) {
        const bool late = run.heard[i].at - first >= seconds(60);
        EXPECT_EQ(run.heard[i].play.decibelsLouder, late ? 6 : 0) << i;
        EXPECT_EQ(run.heard[i].play.speech.empty(), !late && i > 0) << i;
    }
    const Decision before = run.until(first + minutes(3) - milliseconds(1));
    EXPECT_TRUE(before.notify.empty());
    run.inputs.now = first + minutes(3);
    EXPECT_EQ(run.look().notify, std::vector<std::string>{"Heron bowl/closes"});
    EXPECT_TRUE(run.look().notify.empty()) << "once";
}

TEST(AlertDesk, FallsSilentWithHandsOnItAndAsksOnceWhetherItIsDone)
{
    DeskRun run(noon);
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    run.alerts = {wipe};
    run.until(noon + minutes(43) + seconds(5));
    const Instant hands = run.inputs.now;
    run.alerts = underHands(wipe, hands);
    run.heard.clear();
    run.until(hands + minutes(7) + seconds(30) - milliseconds(1));
    EXPECT_TRUE(run.heard.empty());
    run.until(*wipe.lastCall - milliseconds(1));
    ASSERT_EQ(run.heard.size(), 1u);
    EXPECT_EQ(run.heard.front().at, hands + minutes(7) + seconds(30));
    EXPECT_EQ(run.heard.front().play.signal, Signal::C);
    EXPECT_EQ(run.heard.front().play.speech, std::vector<std::string>{"Wipe done? Heron bowl."});
    run.until(*wipe.lastCall);
    EXPECT_EQ(run.heard.back().at, *wipe.lastCall);
    EXPECT_EQ(run.heard.back().play.signal, Signal::A) << "nobody said it is done: the last call is never held";
}

TEST(AlertDesk, StaysSilentUntilTheCloseWithHandsOnItAtTheLastCall)
{
    DeskRun run(noon);
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    run.inputs.now = *wipe.lastCall + seconds(2);
    run.alerts = underHands(wipe, *wipe.lastCall + seconds(1));
    run.until(*wipe.closes - milliseconds(1));
    EXPECT_TRUE(run.heard.empty());
    run.until(*wipe.closes);
    ASSERT_EQ(run.heard.size(), 1u);
    EXPECT_EQ(run.heard.front().play.signal, Signal::C);
}

TEST(AlertDesk, LetsHeardLastUntilTheLastCall)
{
    DeskRun run(noon);
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    run.alerts = {wipe};
    run.until(noon + minutes(43) + seconds(3));
    run.answer(wipe.key, Answered::Heard);
    run.heard.clear();
    run.until(*wipe.lastCall - milliseconds(1));
    EXPECT_TRUE(run.heard.empty());
    run.inputs.now = *wipe.lastCall;
    run.look();
    ASSERT_EQ(run.heard.size(), 1u);
    EXPECT_EQ(run.heard.front().play.signal, Signal::A);
    run.answer(wipe.key, Answered::Heard);
    run.until(*wipe.lastCall + seconds(30));
    EXPECT_GT(run.heard.size(), 2u) << "heard puts a last call off no more";
}

TEST(AlertDesk, PutsOffUntilATimeButNeverPastTheLastCall)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    for (const Instant asked : {noon + minutes(48), noon + minutes(58)}) {
        DeskRun run(wipe.due);
        run.alerts = {wipe};
        run.look();
        run.answer(wipe.key, Answered::StartAt, asked);
        run.heard.clear();
        const Decision shelved = run.look();
        const Instant back = std::min(asked, *wipe.lastCall);
        EXPECT_EQ(shelved.shelved, (std::vector<ShelvedAlert>{{wipe.key, back}}));
        EXPECT_TRUE(shelved.visible.empty());
        run.until(back - milliseconds(1));
        EXPECT_TRUE(run.heard.empty());
        run.until(back);
        ASSERT_EQ(run.heard.size(), 1u);
        EXPECT_EQ(run.heard.front().at, back);
    }
}

TEST(AlertDesk, PutsOffUntilTheStepUnderHandsEnds)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    Alert other = opening("Celadon dish", noon);
    other.handsOn = minutes(6);
    const auto step = underHands(other, wipe.due - minutes(1));
    DeskRun run(wipe.due);
    run.alerts = {wipe, step[1]};
    run.answer(wipe.key, Answered::AfterStep);
    EXPECT_EQ(run.look().shelved.size(), 1u);
    run.inputs.now = wipe.due + minutes(3);
    run.alerts = {wipe}; // the step is done
    const Decision after = run.look();
    ASSERT_TRUE(after.play.has_value());
    EXPECT_EQ(after.play->signal, Signal::A);
}

TEST(AlertDesk, JoinsWhatFallsDueWithinFifteenSecondsToTheFirstBurst)
{
    DeskRun run(noon);
    run.alerts = {opening("Heron bowl", noon), opening("Celadon dish", noon + seconds(14)),
                  opening("Tea cup", noon + seconds(16))};
    run.until(noon + minutes(1));
    ASSERT_EQ(run.heard.size(), 3u);
    EXPECT_EQ(run.heard[0].play.signal, Signal::C);
    EXPECT_EQ(run.heard[1].play.signal, Signal::None) << "joins the list: the voice, no burst";
    EXPECT_EQ(run.heard[1].play.keys, std::vector<std::string>{"Celadon dish/opens"});
    EXPECT_EQ(run.heard[2].play.signal, Signal::C);
}

TEST(AlertDesk, LetsAMoreUrgentOneBurstAtOnce)
{
    DeskRun run(noon);
    run.alerts = {opening("Celadon dish", noon)};
    run.look();
    const Alert wipe =
        closing("Heron bowl", noon + seconds(1) - minutes(43), noon + seconds(1) + minutes(17), minutes(5));
    run.alerts.push_back(wipe);
    run.until(noon + seconds(1));
    ASSERT_EQ(run.heard.size(), 2u);
    EXPECT_EQ(run.heard[1].at, noon + seconds(1));
    EXPECT_EQ(run.heard[1].play.signal, Signal::A);
    EXPECT_TRUE(run.heard[1].play.cutsOff) << "one sound at a time";
}

TEST(AlertDesk, MakesOneBurstAndOneListOfFiveHundred)
{
    DeskRun run(noon);
    for (int i = 0; i < 500; ++i) {
        const Span hands = minutes(1 + i % 7);
        const auto close = noon + minutes(20) + seconds(i % 11);
        Alert alert = closing("Piece " + std::to_string(i), noon - hours(1), close, hands,
                              i % 3 == 0 ? rules::Miss::Piece : rules::Miss::FreshMix);
        alert.due = noon;
        run.alerts.push_back(alert);
    }
    const Decision all = run.look();
    ASSERT_TRUE(all.play.has_value());
    EXPECT_EQ(all.play->signal, Signal::A);
    EXPECT_EQ(all.play->keys.size(), 500u);
    EXPECT_EQ(all.play->speech.size(), 4u);
    EXPECT_EQ(all.play->speech.back(), "And 497 more.");
    std::map<std::string, const Alert*> byKey;
    for (const Alert& alert : run.alerts) {
        byKey[alert.key] = &alert;
    }
    ASSERT_EQ(all.visible.size(), 500u);
    for (std::size_t i = 1; i < all.visible.size(); ++i) {
        const Alert& a = *byKey.at(all.visible[i - 1].key);
        const Alert& b = *byKey.at(all.visible[i].key);
        EXPECT_TRUE(a.urgency > b.urgency || (a.urgency == b.urgency && *a.latestStart <= *b.latestStart)) << i;
    }
    EXPECT_EQ(std::ranges::count(all.visible, Look::FlashFast, &VisibleAlert::look), 1);
    EXPECT_EQ(std::ranges::count(all.visible, Look::FlashSlow, &VisibleAlert::look), 0);
    EXPECT_FALSE(run.look().play.has_value()) << "not twice at one instant";
}

TEST(AlertDesk, SaysHowManyMoreWhenTooManyJoin)
{
    DeskRun run(noon);
    for (int i = 0; i < 6; ++i) {
        run.alerts.push_back(opening("Piece " + std::to_string(i), noon + seconds(i)));
    }
    run.until(noon + minutes(1));
    EXPECT_EQ(run.bursts(Signal::C), 1);
    int lines = 0;
    for (const auto& one : run.heard) {
        lines += static_cast<int>(one.play.speech.size());
    }
    EXPECT_EQ(lines, 4);
    EXPECT_EQ(run.heard.back().play.speech, std::vector<std::string>{"And 3 more."});
    EXPECT_EQ(run.heard.back().at, noon + seconds(15));
}

TEST(AlertDesk, KeepsTheSignInSightWhilePausedAndSoundsWhenThePauseEnds)
{
    DeskRun run(noon);
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    run.alerts = {wipe};
    run.inputs.now = wipe.due - minutes(1);
    run.inputs.soundPausedUntil = pausedUntil(run.inputs.now, minutes(5));
    const Decision paused = run.until(wipe.due + minutes(1));
    EXPECT_TRUE(run.heard.empty());
    ASSERT_EQ(paused.visible.size(), 1u);
    EXPECT_EQ(paused.visible.front().look, Look::FlashFast);
    ASSERT_EQ(paused.banners.size(), 1u);
    EXPECT_EQ(paused.banners.front(), (Banner{BannerKind::SoundPaused, wipe.due + minutes(4)}));
    const Decision after = run.until(wipe.due + minutes(4));
    EXPECT_EQ(run.heard.size(), 1u);
    EXPECT_TRUE(after.banners.empty());
}

TEST(AlertDesk, GrantsNoPauseLongerThanTenMinutes)
{
    EXPECT_EQ(pausedUntil(noon, hours(3)), noon + minutes(10));
    EXPECT_EQ(pausedUntil(noon, minutes(4)), noon + minutes(4));
    DeskRun run(noon);
    run.inputs.soundPausedUntil = noon + hours(5);
    EXPECT_EQ(run.look().banners.front().until, noon + minutes(10));
}

TEST(AlertDesk, SaysThatTheSoundIsOffAndStillShows)
{
    DeskRun run(noon);
    run.alerts = {closing("Heron bowl", noon - hours(1), noon + minutes(6), minutes(5))};
    run.inputs.soundOff = true;
    const Decision off = run.look();
    EXPECT_FALSE(off.play.has_value());
    EXPECT_EQ(off.banners, (std::vector<Banner>{{BannerKind::SoundOff, {}}}));
    EXPECT_EQ(off.visible.front().look, Look::FlashFast);
}

TEST(AlertDesk, SaysThatNoDeviceTakesTheSoundAndShowsTheSame)
{
    DeskRun run(noon);
    run.alerts = {closing("Heron bowl", noon - hours(1), noon + minutes(6), minutes(5))};
    const Decision with = run.look();
    run.inputs.soundWorks = false;
    const Decision without = run.look();
    EXPECT_EQ(without.banners, (std::vector<Banner>{{BannerKind::NoSoundDevice, {}}}));
    EXPECT_EQ(without.visible, with.visible);
}

TEST(AlertDesk, HoldsBAndCForBusyHandsAndDeliversThemAsOneGroup)
{
    Alert step = opening("Tea cup", noon);
    step.handsOn = minutes(10);
    const Alert done = underHands(step, noon)[1];
    DeskRun run(noon);
    run.alerts = {done, opening("Heron bowl", noon + minutes(2)),
                  opening("Celadon dish", noon + minutes(5), Urgency::B)};
    const Decision busy = run.until(noon + minutes(9));
    EXPECT_TRUE(run.heard.empty());
    EXPECT_EQ(busy.visible.size(), 2u);
    EXPECT_TRUE(std::ranges::all_of(busy.visible, &VisibleAlert::waits));
    run.alerts.erase(run.alerts.begin()); // done at nine minutes
    const Decision after = run.look();
    ASSERT_EQ(run.heard.size(), 1u);
    EXPECT_EQ(after.play->signal, Signal::B);
    EXPECT_EQ(after.play->keys.size(), 2u);
}

TEST(AlertDesk, LetsTheFirstCallOfAnAWaitOnlyForAnEndHalfAMinuteBeforeItsLatestStart)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5)); // first 43, latest start 55
    for (const Span left : {Span(minutes(11) + seconds(30)), Span(minutes(11) + seconds(31))}) {
        Alert step = opening("Tea cup", noon);
        step.handsOn = minutes(20);
        const Instant begun = wipe.due + left - step.handsOn;
        DeskRun run(wipe.due);
        run.alerts = {wipe, underHands(step, begun)[1]};
        const bool mayWait = left <= minutes(11) + seconds(30);
        EXPECT_EQ(run.look().play.has_value(), !mayWait);
        run.until(*wipe.lastCall);
        EXPECT_GE(run.bursts(Signal::A), 1) << "its last call is never held";
    }
}

TEST(AlertDesk, SoundsAnAThatWaitedWhenTheStepRunsOver)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    Alert step = opening("Tea cup", noon);
    step.handsOn = minutes(4);
    DeskRun run(wipe.due);
    run.alerts = {wipe, underHands(step, wipe.due - minutes(1))[1]};
    run.until(wipe.due + minutes(3) - milliseconds(1));
    EXPECT_TRUE(run.heard.empty());
    run.until(wipe.due + minutes(3));
    EXPECT_EQ(run.bursts(Signal::A), 1);
}

TEST(AlertDesk, KeepsQuietWhileAWindowIsCountedExceptForALastCall)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    DeskRun run(wipe.due);
    run.alerts = {wipe, opening("Celadon dish", wipe.due)};
    run.inputs.counting = Counting{wipe.due + seconds(90), {wipe.due + seconds(30), wipe.due + seconds(60)}};
    run.until(wipe.due + seconds(89));
    EXPECT_EQ(run.bursts(Signal::A) + run.bursts(Signal::C), 0);
    EXPECT_EQ(run.bursts(Signal::Tick), 2);
    run.until(wipe.due + seconds(90));
    EXPECT_EQ(run.bursts(Signal::A), 1);

    DeskRun last(*wipe.lastCall);
    last.alerts = {wipe};
    last.inputs.counting = Counting{*wipe.lastCall + seconds(90), {}};
    EXPECT_TRUE(last.look().play.has_value());
}

TEST(AlertDesk, SoundsAfterHoursOnlyWhatIsCostlyAndCanStillBeSaved)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    const Alert cheap = closing("Tea cup", noon, noon + minutes(60), minutes(5), rules::Miss::FreshMix);
    DeskRun run(noon);
    run.inputs.benchOpen = false;
    run.inputs.hoursChange = noon + hours(10);
    run.alerts = {cheap, opening("Celadon dish", noon + minutes(1))};
    run.until(noon + minutes(58));
    EXPECT_TRUE(run.heard.empty());
    run.inputs.benchOpen = true; // the morning's list
    const Decision morning = run.look();
    ASSERT_TRUE(morning.play.has_value());
    EXPECT_EQ(morning.play->keys.size(), 2u);

    DeskRun night(noon);
    night.inputs.benchOpen = false;
    night.alerts = {wipe};
    night.until(*wipe.closes - seconds(1));
    EXPECT_GT(night.bursts(Signal::A), 1);
    EXPECT_LT(night.heard.back().at, *wipe.latestStart) << "past its latest start it cannot be saved";
}

TEST(AlertDesk, SaysACloseOnceAndLeavesAMark)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    DeskRun run(*wipe.closes - seconds(60));
    run.alerts = {wipe, closed(wipe)};
    run.until(*wipe.closes - milliseconds(1));
    run.heard.clear();
    const Decision later = run.until(*wipe.closes + hours(3));
    EXPECT_EQ(run.heard.size(), 1u);
    EXPECT_EQ(run.bursts(Signal::C), 1);
    ASSERT_EQ(later.visible.size(), 1u);
    EXPECT_EQ(later.visible.front().look, Look::Steady);
}

TEST(AlertDesk, ReportsOnceWhatWasMissedAsleep)
{
    const Alert lost = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    const Alert savable = closing("Tea cup", noon, noon + minutes(115), minutes(5));
    DeskRun run(noon + minutes(102));
    run.alerts = {closed(lost), savable, opening("Celadon dish", noon + minutes(50))};
    run.inputs.gap = InstantRange{noon + minutes(30), run.inputs.now};
    const Decision woke = run.look();
    ASSERT_TRUE(woke.missed.has_value());
    ASSERT_EQ(woke.missed->lines.size(), 3u);
    EXPECT_EQ(woke.missed->lines[0], (MissedAlert{savable.key, true, minutes(8)}));
    EXPECT_EQ(woke.missed->lines[1].time, minutes(52)) << "opened 52 min ago";
    EXPECT_EQ(woke.missed->lines[2].time, minutes(42)) << "closed 42 min ago";
    ASSERT_TRUE(woke.play.has_value());
    EXPECT_EQ(woke.play->signal, Signal::A);
    EXPECT_EQ(woke.play->keys.size(), 3u);
    run.until(noon + minutes(103));
    EXPECT_EQ(run.bursts(Signal::C), 0) << "what the report said is not said again";
}

TEST(AlertDesk, ReportsWithABWhereNothingIsSavable)
{
    const Alert lost = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    DeskRun run(noon + minutes(102));
    run.alerts = {closed(lost)};
    run.inputs.gap = InstantRange{noon + minutes(30), run.inputs.now};
    EXPECT_EQ(run.look().play->signal, Signal::B);
}

TEST(AlertDesk, ReportsAHundredMissedAlertsWithOneBurst)
{
    DeskRun run(noon + hours(9));
    for (int i = 0; i < 100; ++i) {
        run.alerts.push_back(
            closed(closing("Piece " + std::to_string(i), noon, noon + hours(1) + minutes(i), minutes(5))));
    }
    run.inputs.gap = InstantRange{noon, run.inputs.now};
    const Decision woke = run.until(run.inputs.now + minutes(5));
    EXPECT_EQ(run.heard.size(), 1u);
    EXPECT_EQ(run.heard.front().play.keys.size(), 100u);
}

TEST(AlertDesk, SaysNothingOfASleepInWhichNothingHappened)
{
    DeskRun run(noon + minutes(30));
    run.alerts = {closing("Heron bowl", noon, noon + minutes(60), minutes(5))};
    run.inputs.gap = InstantRange{noon + minutes(1), run.inputs.now};
    EXPECT_FALSE(run.look().missed.has_value());
}

TEST(AlertDesk, RemembersOverARestartWhatWasAnswered)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    const Alert take = opening("Celadon dish", noon + minutes(10));
    DeskRun run(noon);
    run.alerts = {wipe, take};
    run.until(wipe.due + seconds(3));
    run.answer(wipe.key, Answered::Heard);
    run.look();
    run.heard.clear();
    run.memory = {}; // killed and started again: only the answers are left
    run.inputs.now += seconds(4);
    run.inputs.gap = InstantRange{run.inputs.now - seconds(4), run.inputs.now};
    run.until(*wipe.lastCall - milliseconds(1));
    EXPECT_TRUE(run.heard.empty());
    run.until(*wipe.lastCall);
    EXPECT_EQ(run.bursts(Signal::A), 1);
}

TEST(AlertDesk, GoesOnEscalatingAfterARestart)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    DeskRun run(wipe.due);
    run.alerts = {wipe};
    run.until(wipe.due + seconds(90));
    run.memory = {};
    run.heard.clear();
    run.inputs.now += seconds(3);
    const Decision again = run.look();
    ASSERT_TRUE(again.play.has_value());
    EXPECT_EQ(again.play->decibelsLouder, 6);
    EXPECT_TRUE(again.play->keys.empty()) << "it goes on; it is not announced anew";
}

TEST(AlertDesk, ShowsAPieceOnHoldAndSoundsNoneOfItsBAndC)
{
    Alert held = opening("Heron bowl", noon, Urgency::B);
    held.quiet = true;
    DeskRun run(noon);
    run.alerts = {held};
    const Decision later = run.until(noon + hours(1));
    EXPECT_TRUE(run.heard.empty());
    ASSERT_EQ(later.visible.size(), 1u);
    EXPECT_EQ(later.visible.front().look, Look::Steady);
}

TEST(AlertDesk, FlashesOneBlockAtOnceAndNeverFasterThanThreeTimesASecond)
{
    DeskRun run(noon);
    for (int i = 0; i < 30; ++i) {
        Alert alert = closing("Piece " + std::to_string(i), noon - hours(2), noon + minutes(30 + i), minutes(5));
        alert.due = noon;
        run.alerts.push_back(alert);
    }
    run.look();
    for (int second = 0; second < 60; ++second) {
        run.inputs.now = noon + seconds(second);
        const Decision decision = run.look();
        int milliHertzSummed = 0;
        for (const VisibleAlert& alert : decision.visible) {
            milliHertzSummed += milliHertz(alert.look);
        }
        EXPECT_EQ(milliHertzSummed, 1500); // WCAG 2.3.1: at most three flashes in any one second
        EXPECT_EQ(std::ranges::count(decision.visible, Look::Inverted, &VisibleAlert::look), 29);
    }
}

TEST(AlertDesk, StandsAClockThatIsPutBack)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    DeskRun run(wipe.due);
    run.alerts = {wipe};
    run.look();
    run.inputs.now = wipe.due - hours(1);
    run.look();
    run.inputs.now = wipe.due;
    run.until(wipe.due + seconds(20));
    EXPECT_EQ(run.announced(wipe.key), 1);
    EXPECT_GE(run.bursts(Signal::A), 2);
}

} // namespace mend::bench::test
