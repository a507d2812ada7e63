#include "core/base/clockstep.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace std::chrono;

namespace {
Moment at(seconds wall, seconds boot, const char* id = "one") { return {Instant(wall), {id, boot}}; }
} // namespace

TEST(ClockStep, SeesAnHourPutOnAndTakenOff)
{
    EXPECT_EQ(clockStep(at(1000s, 10s), at(4601s, 11s)), Span(1h));
    EXPECT_EQ(clockStep(at(5000s, 10s), at(1401s, 11s)), Span(-1h));
}

TEST(ClockStep, TakesSleepForWhatItIs)
{
    // CLOCK_BOOTTIME counts sleep (clock_gettime(2)): eight hours went by on both clocks.
    EXPECT_FALSE(clockStep(at(1000s, 10s), at(1000s + 8h, 10s + 8h)).has_value());
}

TEST(ClockStep, LetsSlewingPass)
{
    EXPECT_FALSE(clockStep(at(1000s, 10s), at(1062s, 70s)).has_value());
    EXPECT_TRUE(clockStep(at(1000s, 10s), at(1063s, 70s)).has_value());
}

TEST(ClockStep, CannotKnowOverAReboot)
{
    EXPECT_FALSE(clockStep(at(1000s, 500s), at(9000s, 5s, "two")).has_value());
    EXPECT_EQ(elapsed(at(1000s, 500s), at(9000s, 5s, "two")), Span(8000s));
    EXPECT_EQ(elapsed(at(9000s, 500s), at(1000s, 5s, "two")), Span(0s));
}
