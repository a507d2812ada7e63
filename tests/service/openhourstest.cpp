#include "core/service/openhours.h"

#include "core/service/studio.h"

#include <gtest/gtest.h>

namespace mend::service {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::year;
using std::chrono::year_month_day;

namespace {

record::Hours everyDay(const std::string& parts)
{
    std::string text;
    for (const char* day : {"mon", "tue", "wed", "thu", "fri", "sat", "sun"}) {
        text += std::string(day) + ' ' + parts + '\n';
    }
    return record::hoursFromText(text).value();
}

Instant at(const char* text) { return fromRfc3339(text).value(); }

/// The hours of one local day.
std::vector<InstantRange> onDay(const std::string& parts, const char* zone, year_month_day day)
{
    const QTimeZone there(zone);
    const Instant noon = wallTime(day, minutes(720), there, Twice::First);
    return openHours(everyDay(parts), there, noon, noon);
}

constexpr year_month_day springBerlin = year(2027) / 3 / 28;
constexpr year_month_day autumnBerlin = year(2027) / 10 / 31;

} // namespace

// When clocks change in 2027: IANA time zone database.
TEST(OpenHours, LastTwentyThreeHoursOnTheDayClocksGoForward)
{
    const auto open = onDay("00:00-24:00", "Europe/Berlin", springBerlin);
    ASSERT_EQ(open.size(), 1U);
    EXPECT_EQ(open.front().to - open.front().from, hours(23));
    EXPECT_EQ(open.front().from, at("2027-03-27T23:00:00.000Z"));
}

TEST(OpenHours, LastTwentyFiveHoursOnTheDayClocksGoBack)
{
    const auto open = onDay("00:00-24:00", "Europe/Berlin", autumnBerlin);
    ASSERT_EQ(open.size(), 1U);
    EXPECT_EQ(open.front().to - open.front().from, hours(25));
}

TEST(OpenHours, AreAsLongAsEverWhereTheChangeIsAtNight)
{
    for (const auto day : {springBerlin, autumnBerlin}) {
        const auto open = onDay("09:00-17:30", "Europe/Berlin", day);
        ASSERT_EQ(open.size(), 1U);
        EXPECT_EQ(open.front().to - open.front().from, hours(8) + minutes(30));
    }
    EXPECT_EQ(onDay("09:00-17:30", "Europe/Berlin", springBerlin).front().from, at("2027-03-28T07:00:00.000Z"));
    EXPECT_EQ(onDay("09:00-17:30", "Europe/Berlin", autumnBerlin).front().from, at("2027-10-31T08:00:00.000Z"));
}

TEST(OpenHours, BeginWhereTheSkippedHourEnds)
{
    const auto open = onDay("02:30-05:00", "Europe/Berlin", springBerlin);
    ASSERT_EQ(open.size(), 1U);
    EXPECT_EQ(open.front().from, at("2027-03-28T01:00:00.000Z"));
    EXPECT_EQ(open.front().to, at("2027-03-28T03:00:00.000Z"));
    EXPECT_TRUE(onDay("02:10-02:50", "Europe/Berlin", springBerlin).empty()) << "nobody was there in no time";
}

TEST(OpenHours, HoldBothOfAnHourThatComesTwice)
{
    const auto open = onDay("02:00-03:00", "Europe/Berlin", autumnBerlin);
    ASSERT_EQ(open.size(), 1U);
    EXPECT_EQ(open.front().to - open.front().from, hours(2));
    const auto untilHalfPast = onDay("01:00-02:30", "Europe/Berlin", autumnBerlin);
    ASSERT_EQ(untilHalfPast.size(), 1U);
    EXPECT_EQ(untilHalfPast.front().to, at("2027-10-31T01:30:00.000Z")) << "half past two for the second time";
}

TEST(OpenHours, KnowOfChangesByHalfAnHourAndOfNone)
{
    EXPECT_EQ(onDay("00:00-24:00", "Australia/Lord_Howe", year(2027) / 4 / 4).front().to -
                  onDay("00:00-24:00", "Australia/Lord_Howe", year(2027) / 4 / 4).front().from,
              hours(24) + minutes(30));
    EXPECT_EQ(onDay("09:00-17:00", "Asia/Kathmandu", year(2027) / 6 / 1).front().from, at("2027-06-01T03:15:00.000Z"));
}

TEST(OpenHours, OverMidnightAreOnePart)
{
    const QTimeZone there("America/New_York");
    const auto open = openHours(everyDay("00:00-01:30 18:00-24:00"), there, at("2027-06-02T04:00:00.000Z"),
                                at("2027-06-03T04:00:00.000Z"));
    ASSERT_EQ(open.size(), 3U);
    EXPECT_EQ(open[1].to - open[1].from, hours(7) + minutes(30));
}

TEST(OpenHours, GiveWayToADateOfItsOwn)
{
    record::Hours told = everyDay("09:00-17:00");
    told.exceptions[year(2027) / 6 / 2] = {};
    told.exceptions[year(2027) / 6 / 3] = {{minutes(600), minutes(660)}};
    const auto open = openHours(told, QTimeZone::utc(), at("2027-06-01T12:00:00.000Z"), at("2027-06-03T12:00:00.000Z"));
    ASSERT_EQ(open.size(), 2U);
    EXPECT_EQ(open[0].from, at("2027-06-01T09:00:00.000Z"));
    EXPECT_EQ(open[1].from, at("2027-06-03T10:00:00.000Z"));
    EXPECT_EQ(open[1].to, at("2027-06-03T11:00:00.000Z"));
}

TEST(Studio, IsTheSameOutOfItsSettings)
{
    Studio studio;
    studio.name = "Lark Lane";
    studio.zone = "Asia/Kathmandu";
    studio.hours = everyDay("09:00-12:30 13:00-17:30");
    studio.hours.exceptions[year(2028) / 2 / 29] = {};
    studio.fahrenheit = true;
    studio.language = "pt-BR";
    studio.ownHours[PersonId(3)] = everyDay("13:00-17:00");
    studio.ownHours[PersonId(12)].exceptions[year(2028) / 2 / 29] = {};
    EXPECT_EQ(studioOf(settingsOf(studio)), studio);
    EXPECT_EQ(studioOf({}), Studio{}) << "nothing told is nothing known";
}

TEST(Studio, PassesOverSettingsThatMakeNoSense)
{
    const Studio studio = studioOf({{"studio.hours", "mon 17:00-09:00"}, {"studio.zone", "Nowhere/Atlantis"}});
    EXPECT_FALSE(studio.hours.isTold());
    EXPECT_EQ(studio.timeZone(), QTimeZone::utc());
    EXPECT_TRUE(openHoursOf(studio, at("2027-06-01T12:00:00.000Z")).empty());
}

} // namespace mend::service
