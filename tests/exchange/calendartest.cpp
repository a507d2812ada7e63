#include "core/exchange/calendar.h"

#include <gtest/gtest.h>

#include <sstream>

using namespace mend;
using namespace mend::exchange;

namespace {

std::string calendar(std::vector<CalendarDay> days)
{
    std::ostringstream out;
    writeCalendar(out, days, *fromRfc3339("2027-03-01T09:30:00.000Z"));
    return out.str();
}

CivilDay day(const char* text) { return dayFrom(text).value(); }

} // namespace

// RFC 5545: UID and DTSTAMP in every entry, whole days as DATE, the end exclusive, CRLF.
TEST(Calendar, WritesWholeDaysWithUidsThatStay)
{
    const std::string text = calendar({{"2604175-promised", day("2027-03-20"), "260417-5 is promised"}});
    EXPECT_EQ(text, "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Mendbench//Pieces//EN\r\nBEGIN:VEVENT\r\n"
                    "UID:2604175-promised@mendbench.invalid\r\nDTSTAMP:20270301T093000Z\r\n"
                    "DTSTART;VALUE=DATE:20270320\r\nDTEND;VALUE=DATE:20270321\r\nSUMMARY:260417-5 is promised\r\n"
                    "TRANSP:TRANSPARENT\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n");
}

TEST(Calendar, EndsADayOnTheRightOneF24)
{
    EXPECT_NE(calendar({{"k", day("2028-02-29"), "w"}}).find("DTEND;VALUE=DATE:20280301"), std::string::npos);
    EXPECT_NE(calendar({{"k", day("2027-12-31"), "w"}}).find("DTEND;VALUE=DATE:20280101"), std::string::npos);
}

// F23: a whole day has no hour, so no gap, no repeated hour and no zone can move it.
TEST(Calendar, HasNoHourThatAZoneCouldMoveF23)
{
    const std::string text = calendar({{"k", day("2027-03-28"), "w"}, {"l", day("2027-10-31"), "w"}});
    EXPECT_NE(text.find("DTSTART;VALUE=DATE:20270328\r\nDTEND;VALUE=DATE:20270329"), std::string::npos);
    EXPECT_NE(text.find("DTSTART;VALUE=DATE:20271031\r\nDTEND;VALUE=DATE:20271101"), std::string::npos);
    EXPECT_EQ(text.find("TZID"), std::string::npos);
}

TEST(Calendar, FoldsLongLinesBetweenCharactersAndEscapes)
{
    std::string words = "a,b;c\\d\ne";
    for (int i = 0; i < 60; ++i) {
        words += "漆";
    }
    const std::string text = calendar({{"k", day("2027-03-20"), words}});
    std::istringstream lines(text);
    std::string unfolded;
    for (std::string line; std::getline(lines, line);) {
        ASSERT_TRUE(line.ends_with('\r'));
        line.pop_back();
        EXPECT_LE(line.size(), 75U);
        const std::size_t first = line.starts_with(' ') ? 1 : 0;
        EXPECT_NE(static_cast<unsigned char>(line[first]) & 0xC0U, 0x80U) << "never inside a character";
        unfolded += line.starts_with(' ') ? line.substr(1) : "\n" + line;
    }
    EXPECT_NE(unfolded.find("SUMMARY:a\\,b\\;c\\\\d\\ne漆漆"), std::string::npos);
}
