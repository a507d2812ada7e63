#include "core/plan/startranges.h"

#include <gtest/gtest.h>

namespace mend::plan {
namespace {

TEST(StartRanges, RoundsToTheNextOpening)
{
    StartRanges starts(0, 5000);
    starts.keepInside({{600, 780}, {840, 1110}}, 30);
    EXPECT_EQ(starts.first(), 600);
    EXPECT_EQ(starts.last(), 1080);
    EXPECT_EQ(starts.atOrAfter(0), 600);
    EXPECT_EQ(starts.atOrAfter(750), 750);
    EXPECT_EQ(starts.atOrAfter(751), 840); // would still be at it when the bench closes
    EXPECT_EQ(starts.atOrAfter(1081), StartRanges::none);
    EXPECT_EQ(starts.atOrBefore(839), 750);
    EXPECT_EQ(starts.atOrBefore(9999), 1080);
    EXPECT_EQ(starts.atOrBefore(599), -StartRanges::none);
}

TEST(StartRanges, AStepLongerThanEveryOpeningHasNoStart)
{
    StartRanges starts(0, 5000);
    starts.keepInside({{600, 780}, {840, 1110}}, 271);
    EXPECT_TRUE(starts.isEmpty());
}

TEST(StartRanges, CutsSplitAndShorten)
{
    StartRanges starts(10, 20);
    starts.cut(14, 15);
    EXPECT_EQ(starts.atOrAfter(14), 16);
    EXPECT_EQ(starts.atOrBefore(15), 13);
    starts.keepFrom(12);
    starts.keepUntil(18);
    EXPECT_EQ(starts.first(), 12);
    EXPECT_EQ(starts.last(), 18);
    starts.cut(0, 100);
    EXPECT_TRUE(starts.isEmpty());
    EXPECT_TRUE(StartRanges(5, 4).isEmpty());
}

} // namespace
} // namespace mend::plan
