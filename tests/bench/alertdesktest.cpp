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
