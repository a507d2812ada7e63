#include "core/bench/alertcall.h"

#include "tests/bench/alertdesk_support.h"

#include <gtest/gtest.h>

namespace mend::bench::test {

TEST(AlertCall, IsBusyFromTheBeginUntilHalfAsLongAgainAsItTakes)
{
    Alert step = opening("Tea cup", noon);
    step.handsOn = minutes(10);
    const auto alerts = underHands(step, noon);
    EXPECT_FALSE(busyOf(alerts, noon - milliseconds(1)).has_value());
    EXPECT_EQ(busyOf(alerts, noon), (Busy{noon, noon + minutes(10), noon + minutes(15)}));
    EXPECT_FALSE(busyOf(alerts, noon + minutes(15)).has_value());
}

TEST(AlertCall, CanBeSavedUntilItsLatestStart)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    EXPECT_TRUE(isSavable(wipe, *wipe.latestStart - milliseconds(1)));
    EXPECT_FALSE(isSavable(wipe, *wipe.latestStart));
    EXPECT_FALSE(isSavable(closed(wipe), noon));
}

TEST(AlertCall, SaysWhenItChangesByItself)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    EXPECT_EQ(callOf(wipe, nullptr, {}, noon), (Call{CallState::NotYet, CallStage::First, {}, wipe.due}));
    EXPECT_EQ(callOf(wipe, nullptr, {}, wipe.due),
              (Call{CallState::Calling, CallStage::First, wipe.due, wipe.lastCall}));
    EXPECT_EQ(callOf(wipe, nullptr, {}, *wipe.lastCall),
              (Call{CallState::Calling, CallStage::Last, *wipe.lastCall, wipe.closes}));
    EXPECT_EQ(callOf(wipe, nullptr, {}, *wipe.closes).state, CallState::Silent);
}

} // namespace mend::bench::test
