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

TEST(Time, ReadsBackWhatItWrites)
{
    for (const auto moment :
         {Instant{sys_days{1900y / January / 1d}}, Instant{sys_days{1985y / April / 12d} + 23h + 20min + 50s + 520ms},
          Instant{sys_days{2100y / February / 28d} + 1ms}, Instant{sys_days{2200y / December / 31d} + 23h}}) {
        EXPECT_EQ(fromRfc3339(toRfc3339(moment)), moment);
    }
}

TEST(Time, RefusesWhatIsNoInstantF24F25)
{
    // Leap years: 2028 is one, 2027 and 2100 are not (Gregorian rule, ISO 8601).
    for (const char* const text : {"",
                                   "2026-03-09",
                                   "2026-03-09T08:00:00.000",
                                   "2026-03-09T08:00:00.000+00:00",
                                   "2026-03-09T08:00:00Z",
                                   "2026-03-09t08:00:00.000Z",
                                   "2026-03-09 08:00:00.000Z",
                                   "2027-02-29T00:00:00.000Z",
                                   "2100-02-29T00:00:00.000Z",
                                   "2026-13-01T00:00:00.000Z",
                                   "2026-00-01T00:00:00.000Z",
                                   "2026-01-00T00:00:00.000Z",
                                   "2026-01-01T24:00:00.000Z",
                                   "2026-01-01T00:60:00.000Z",
                                   "2026-01-01T00:00:61.000Z",
                                   "1899-12-31T23:59:59.999Z",
                                   "2201-01-01T00:00:00.000Z",
                                   "0000-01-01T00:00:00.000Z",
                                   "9999-12-31T00:00:00.000Z",
                                   "-044-03-15T00:00:00.000Z",
                                   "2026-03-09T08:00:00.0x0Z"}) {
        EXPECT_FALSE(fromRfc3339(text).has_value()) << text;
    }
    EXPECT_TRUE(fromRfc3339("2028-02-29T00:00:00.000Z").has_value());
    EXPECT_TRUE(fromRfc3339("2038-01-19T03:14:08.000Z").has_value());
}

TEST(Time, TakesALeapSecondAsTheLastMillisecondBeforeItF26)
{
    // The last leap second so far: IERS Bulletin C 52.
    EXPECT_EQ(fromRfc3339("2016-12-31T23:59:60.000Z"), fromRfc3339("2016-12-31T23:59:59.999Z"));
    EXPECT_EQ(fromRfc3339("2016-12-31T23:59:60.750Z"), fromRfc3339("2016-12-31T23:59:59.999Z"));
}
