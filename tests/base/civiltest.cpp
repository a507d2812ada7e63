#include "core/base/civil.h"

#include <gtest/gtest.h>

using namespace mend;

namespace {
CivilDay day(const char* text) { return dayFrom(text).value(); }
} // namespace

TEST(Civil, KnowsOnlyDaysThatExistF24)
{
    EXPECT_TRUE(dayFrom("2028-02-29"));
    EXPECT_FALSE(dayFrom("2027-02-29"));
    EXPECT_FALSE(dayFrom("2027-04-31"));
    EXPECT_FALSE(dayFrom("2027-4-3"));
    EXPECT_FALSE(dayFrom("0000-01-01"));
    EXPECT_FALSE(dayFrom("2201-01-01"));
    EXPECT_EQ(dayText(day("2100-12-31")), "2100-12-31");
}

TEST(Civil, AMonthAfterThe31stIsTheLastOfAShorterMonthF24)
{
    EXPECT_EQ(plusMonths(day("2027-01-31"), 1), day("2027-02-28"));
    EXPECT_EQ(plusMonths(day("2028-01-31"), 1), day("2028-02-29"));
    EXPECT_EQ(plusMonths(day("2027-08-31"), -6), day("2027-02-28"));
    EXPECT_EQ(plusMonths(day("2027-11-30"), 3), day("2028-02-29"));
    EXPECT_EQ(plusDays(day("2027-12-31"), 1), day("2028-01-01"));
    EXPECT_EQ(daysBetween(day("2028-02-28"), day("2028-03-01")), 2);
    EXPECT_EQ(daysBetween(day("2027-03-01"), day("2027-02-28")), -1);
}

// Weeks by ISO 8601, worked out from its rule: the first week is the one with the year's first Thursday.
TEST(Civil, CountsFiftyThreeWeeksWhereTheYearHasThemF24)
{
    EXPECT_EQ(isoWeekOf(day("2026-12-31")), (IsoWeek{2026, 53}));
    EXPECT_EQ(isoWeekOf(day("2027-01-03")), (IsoWeek{2026, 53}));
    EXPECT_EQ(isoWeekOf(day("2027-01-04")), (IsoWeek{2027, 1}));
    EXPECT_EQ(isoWeekOf(day("2024-12-30")), (IsoWeek{2025, 1}));
    EXPECT_EQ(isoWeekOf(day("2028-02-29")), (IsoWeek{2028, 9}));
}
