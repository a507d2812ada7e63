#include "core/bench/alertdesk.h"

#include "tests/bench/alertdesk_support.h"

#include <gtest/gtest.h>

// What closed, and what was missed while nobody looked. Figures without a source are our own design.
namespace mend::bench::test {

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

} // namespace mend::bench::test
