#include "core/base/time.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace std::chrono;

TEST(Time, IsWrittenAsRfc3339InUtcWithMilliseconds)
{
    // The example of RFC 3339 section 5.8, with milliseconds filled up.
    EXPECT_EQ(toRfc3339(Instant{sys_days{1985y / April / 12d} + 23h + 20min + 50s + 520ms}),
              "1985-04-12T23:20:50.520Z");
    EXPECT_EQ(toRfc3339(Instant{sys_days{2038y / January / 19d} + 3h + 14min + 8s}), "2038-01-19T03:14:08.000Z");
}

TEST(Time, TextOrderIsTimeOrder)
{
    const Instant early{sys_days{1999y / December / 31d} + 23h + 59min + 59s + 999ms};
    EXPECT_LT(toRfc3339(early), toRfc3339(early + 1ms));
}
