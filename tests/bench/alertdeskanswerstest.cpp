#include "core/bench/alertdesk.h"

#include "tests/bench/alertdesk_support.h"

#include <gtest/gtest.h>

// What people answer, and that it stays answered. Figures without a source are our own design.
namespace mend::bench::test {

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

TEST(AlertDesk, MakesNoSecondLastCallOfAWindowThatMovesOn)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    for (const bool restarts : {false, true}) {
        DeskRun run(*wipe.lastCall);
        run.alerts = {wipe};
        run.look();
        EXPECT_EQ(run.announced(wipe.key), 1);
        Alert later = wipe; // a cooler reading: it closes five minutes later, and stays raised
        later.lastCall = *wipe.lastCall + minutes(5);
        later.latestStart = *wipe.latestStart + minutes(5);
        later.closes = *wipe.closes + minutes(5);
        run.inputs.now += seconds(2);
        run.alerts = {later};
        if (restarts) {
            run.restart();
        }
        run.until(*later.lastCall + seconds(30));
        EXPECT_EQ(run.announced(wipe.key), 1);
        EXPECT_GT(run.bursts(Signal::A), 30) << "it goes on sounding all the same";
    }
}

TEST(AlertDesk, MakesAnotherLastCallOfWhatWasHeardAfterTheFirst)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    DeskRun run(*wipe.lastCall);
    run.alerts = {wipe};
    run.look();
    Alert later = wipe;
    later.lastCall = *wipe.lastCall + minutes(5);
    later.latestStart = *wipe.latestStart + minutes(5);
    later.closes = *wipe.closes + minutes(5);
    run.inputs.now += seconds(2);
    run.alerts = {later};
    run.answer(wipe.key, Answered::Heard); // there is time again
    run.heard.clear();
    run.until(*later.lastCall - milliseconds(1));
    EXPECT_TRUE(run.heard.empty());
    run.until(*later.lastCall);
    EXPECT_EQ(run.announced(wipe.key), 1);
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

} // namespace mend::bench::test
