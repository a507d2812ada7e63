#include "core/bench/alertdesk.h"

#include "tests/bench/alertdesk_support.h"

#include <gtest/gtest.h>

// When the bench keeps quiet, and what is heard all the same. Figures without a source are our own design.
namespace mend::bench::test {

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

} // namespace mend::bench::test
