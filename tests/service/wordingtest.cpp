#include "core/service/wording.h"

#include <gtest/gtest.h>

namespace mend::service {
namespace {

using namespace std::chrono;

struct Said {
    Span span;
    const char* counted;
    const char* waited;
    const char* words;
};

const Said said[] = {
    {milliseconds{-5'000}, "0:00", "0:00", "0 s"},
    {milliseconds{0}, "0:00", "0:00", "0 s"},
    {milliseconds{999}, "0:00", "0:01", "1 s"},
    {seconds{40}, "0:40", "0:40", "40 s"},
    {seconds{132}, "2:12", "2:12", "2 min"},
    {milliseconds{131'001}, "2:11", "2:12", "2 min"},
    {minutes{12}, "12:00", "12:00", "12 min"},
    {seconds{3599}, "59:59", "59:59", "1 h"},
    {hours{1}, "1 h 00", "1 h 00", "1 h"},
    {hours{1} + minutes{2} + seconds{59}, "1 h 02", "1 h 03", "1 h 03"},
    {hours{1} + minutes{30}, "1 h 30", "1 h 30", "1 h 30"},
    {hours{23} + minutes{59} + seconds{59}, "23 h 59", "1 d 0 h", "1 day"},
    {hours{60}, "2 d 12 h", "2 d 12 h", "2 days 12 h"},
    {hours{168}, "7 d 0 h", "7 d 0 h", "7 days"},
};

TEST(Wording, CountsDownRoundedDownAndWaitsRoundedUp)
{
    for (const Said& each : said) {
        EXPECT_EQ(countDigits(each.span).toStdString(), each.counted);
        EXPECT_EQ(waitDigits(each.span).toStdString(), each.waited);
        EXPECT_EQ(spanWords(each.span).toStdString(), each.words);
    }
}

TEST(Wording, NeverPromisesMoreTimeThanThereIs)
{
    for (Span left{0}; left < minutes{3}; left += milliseconds{137}) {
        const QStringList parts = countDigits(left).split(QLatin1Char(':'));
        const Span shown = minutes{parts[0].toInt()} + seconds{parts[1].toInt()};
        EXPECT_LE(shown, left);
        EXPECT_GT(shown + seconds{1}, left);
    }
}

TEST(Wording, SaysARangeOnceWhereBothEndsReadTheSame)
{
    EXPECT_EQ(rangeWords(minutes{70}, minutes{95}).toStdString(), "about 1 h 10 to 1 h 35");
    EXPECT_EQ(rangeWords(minutes{70}, minutes{70} + seconds{10}).toStdString(), "1 h 10");
}

TEST(Wording, GivesTheTimeOfDayWhereTheStudioIs)
{
    Manner berlin;
    berlin.zone = QTimeZone(QByteArrayLiteral("Europe/Berlin"));
    const Instant now = sys_days{2026y / November / 28} + hours{12} + minutes{42}; // a Saturday
    EXPECT_EQ(clockTime(now, now, berlin).toStdString(), "13:42");
    EXPECT_EQ(clockTime(now + hours{24}, now, berlin).toStdString(), "Sun 13:42");
    EXPECT_EQ(clockTime(now - hours{48}, now, berlin).toStdString(), "Thu 13:42");
    EXPECT_EQ(clockTime(now + hours{24 * 7}, now, berlin).toStdString(), "5 Dec 13:42");
    // Midnight belongs to the next day.
    EXPECT_EQ(clockTime(sys_days{2026y / November / 28} + hours{23}, now, berlin).toStdString(), "Sun 00:00");
}

// Germany goes to summer time on 28 March 2027 at 02:00 (tzdata).
TEST(Wording, FollowsTheChangeToSummerTime)
{
    Manner berlin;
    berlin.zone = QTimeZone(QByteArrayLiteral("Europe/Berlin"));
    const Instant before = sys_days{2027y / March / 28} + minutes{59};
    EXPECT_EQ(timeOfDay(before, berlin).toStdString(), "01:59");
    EXPECT_EQ(timeOfDay(before + minutes{1}, berlin).toStdString(), "03:00");
}

TEST(Wording, SpeaksCelsiusOrFahrenheit)
{
    Manner metric;
    Manner other;
    other.fahrenheit = true;
    const Temperature warm = Temperature::fromCelsius(26.4);
    EXPECT_EQ(temperatureWords(warm, metric), QStringLiteral("26.4 °C"));
    EXPECT_EQ(temperatureWords(warm, other), QStringLiteral("80 °F")); // 79.52
    EXPECT_EQ(temperatureWords(Temperature::fromCelsius(-0.5), metric), QStringLiteral("-0.5 °C"));
    metric.locale = QLocale(QLocale::German);
    EXPECT_EQ(temperatureWords(warm, metric), QStringLiteral("26,4 °C"));
    EXPECT_EQ(humidityWords(percentHumidity(41.4), metric), QStringLiteral("41 %"));
}

TEST(Wording, WritesAPieceNumberAsOnItsTag)
{
    EXPECT_EQ(numberWords("2604175").toStdString(), "260417-5");
    EXPECT_EQ(numberWords("260417-5").toStdString(), "260417-5");
    EXPECT_EQ(numberWords("").toStdString(), "");
}

TEST(Wording, KeepsANameThatRunsTheOtherWayTogether)
{
    EXPECT_EQ(isolated(QStringLiteral("Ines Varga")), QStringLiteral("Ines Varga"));
    const QString arabic = QString::fromUtf8("نور");
    EXPECT_EQ(isolated(arabic), QChar(0x2068) + arabic + QChar(0x2069));
    const QLocale before;
    QLocale::setDefault(QLocale(QLocale::Hebrew)); // what is spoken runs from the right: now it is the others that turn
    EXPECT_EQ(isolated(arabic), arabic);
    EXPECT_EQ(isolated(QStringLiteral("Ines Varga")), QChar(0x2068) + QStringLiteral("Ines Varga") + QChar(0x2069));
    QLocale::setDefault(before);
}

TEST(Wording, SaysWhatEveryMissCosts)
{
    QStringList all;
    for (const auto miss :
         {rules::Miss::Minutes, rules::Miss::FreshMix, rules::Miss::Afternoon, rules::Miss::Day, rules::Miss::Piece}) {
        EXPECT_FALSE(missWords(miss).isEmpty());
        EXPECT_FALSE(all.contains(missWords(miss)));
        all << missWords(miss);
    }
    EXPECT_TRUE(missWords(rules::Miss::Nothing).isEmpty());
}

} // namespace
} // namespace mend::service
