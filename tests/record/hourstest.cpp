#include "core/record/hours.h"

#include <gtest/gtest.h>

namespace mend::record {

using std::chrono::minutes;
using std::chrono::year;

TEST(Hours, AreReadBackAsTheyWereWritten)
{
    Hours hours;
    hours.week[0] = {{minutes(9 * 60), minutes(12 * 60 + 30)}, {minutes(13 * 60), minutes(17 * 60 + 30)}};
    hours.week[6] = {{minutes(0), minutes(24 * 60)}};
    hours.exceptions[year(2026) / 12 / 24] = {};
    hours.exceptions[year(2028) / 2 / 29] = {{minutes(600), minutes(601)}};
    const std::string text =
        "mon 09:00-12:30 13:00-17:30\nsun 00:00-24:00\n2026-12-24 closed\n2028-02-29 10:00-10:01\n";
    EXPECT_EQ(hoursText(hours), text);
    EXPECT_EQ(hoursFromText(text), hours);
}

TEST(Hours, RefuseWhatMakesNoSense)
{
    for (const char* text : {"mon", "mon 9-17", "mon 09:00", "mon 09:00-", "mon 17:00-09:00", "mon 09:00-09:00",
                             "mon 09:00-13:00 12:00-17:00", "mon 09:00-24:01", "mon 09:60-10:00", "moon 09:00-10:00",
                             "mon 09:00-10:00\nmon 11:00-12:00", "2027-02-29 closed", "2026-13-01 closed",
                             "2026-12-24 closed 09:00-10:00", "2026-12-24 closed\n2026-12-24 closed"}) {
        EXPECT_FALSE(hoursFromText(text)) << text;
    }
}

TEST(Hours, OfADateStandInPlaceOfItsWeekday)
{
    const Hours hours = hoursFromText("thu 09:00-17:00\n2026-12-24 closed").value();
    EXPECT_EQ(hours.on(year(2026) / 12 / 17).size(), 1U);
    EXPECT_TRUE(hours.on(year(2026) / 12 / 24).empty());
    EXPECT_TRUE(hours.isTold());
    EXPECT_FALSE(hoursFromText("\n")->isTold());
}

} // namespace mend::record
