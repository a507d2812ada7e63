#include "core/service/figurewording.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::service;
using namespace std::chrono;

namespace {

rules::FigureAt span(Span value, Span least, Span most)
{
    return {"/x", rules::SpanFigure{value, least, most, {"common practice, no source", rules::Mark::Practice}}};
}

rules::FigureAt warmth(double value)
{
    const auto at = [](double celsius) { return Temperature::fromCelsius(celsius); };
    return {"/t", rules::TemperatureFigure{at(value), at(0), at(50), {"a sheet", rules::Mark::Museum}}};
}

Manner mannerOf(const char* locale, bool fahrenheit = false)
{
    Manner manner;
    manner.locale = QLocale(QString::fromLatin1(locale));
    manner.fahrenheit = fahrenheit;
    return manner;
}

} // namespace

// The rows on "1,5" and "1,500" are those of Qt 6.4.2's own QLocale, tried out.
TEST(TypedNumber, TakesTheLanguagesOwnMarkOrAPlainPointAndNoGroups)
{
    struct Row {
        const char* typed;
        const char* locale;
        std::optional<double> read;
    };
    const Row rows[] = {{"1.5", "en", 1.5},      {"1,5", "de", 1.5},    {"1.5", "de", 1.5},   {"1,5", "en", {}},
                        {"1,500", "en", {}},     {"1.500,0", "de", {}}, {"nan", "en", {}},    {"inf", "en", {}},
                        {"", "en", {}},          {"12 min", "en", {}},  {" 12 ", "en", 12.0}, {"-3", "en", -3.0},
                        {"12.5", "ar_EG", 12.5}, {"1e400", "en", {}}};
    for (const Row& row : rows) {
        EXPECT_EQ(typedNumber(QString::fromUtf8(row.typed), QLocale(QString::fromLatin1(row.locale))), row.read)
            << row.typed << " in " << row.locale;
    }
}

TEST(TypedFigure, ReadsBackWhatItShowsInEveryLanguageAndUnit)
{
    const rules::FigureAt figures[] = {span(minutes(12), minutes(8), minutes(20)),
                                       span(hours(24), hours(12), hours(72)),
                                       span(days(7), days(3), days(21)),
                                       span(seconds(90), seconds(45), seconds(150)),
                                       span(minutes(90), minutes(30), hours(8)),
                                       span(milliseconds(1500), seconds(1), seconds(2)),
                                       warmth(23.5)};
    for (const char* locale : {"en", "de", "fr", "ar_EG"}) {
        for (const rules::FigureAt& figure : figures) {
            const Manner manner = mannerOf(locale);
            const auto read = readFigure(typedFigure(figure, manner).digits, figure, manner);
            ASSERT_TRUE(read) << locale << typedFigure(figure, manner).digits.toStdString();
            std::visit(
                [&](const auto& held) { EXPECT_EQ(std::get<decltype(held.value)>(*read), held.value) << locale; },
                figure.figure);
        }
    }
}

TEST(TypedFigure, CountsInTheLargestUnitThatIsWhole)
{
    const Manner manner = mannerOf("en");
    EXPECT_EQ(typedFigure(span(minutes(12), minutes(8), minutes(20)), manner).unit, QStringLiteral("min"));
    EXPECT_EQ(typedFigure(span(hours(24), hours(12), hours(72)), manner).unit, QStringLiteral("h"));
    EXPECT_EQ(typedFigure(span(days(7), days(3), days(21)), manner).unit, QStringLiteral("days"));
    EXPECT_EQ(typedFigure(warmth(23), mannerOf("en", true)).digits, QStringLiteral("73.4"));
}

TEST(TypedFigure, RefusesWhatIsNoNumber)
{
    const auto figure = span(minutes(12), minutes(8), minutes(20));
    for (const char* typed : {"", "twelve", "1e300", "nan", "12,5"}) {
        EXPECT_FALSE(readFigure(QString::fromLatin1(typed), figure, mannerOf("en"))) << typed;
    }
    EXPECT_EQ(std::get<Span>(*readFigure(QStringLiteral("12.5"), figure, mannerOf("en"))), seconds(750));
}

TEST(FigureWords, SayRangeAndSourceOnce)
{
    const Manner manner = mannerOf("en");
    EXPECT_EQ(figureRange(span(minutes(12), minutes(8), minutes(20)), manner), QStringLiteral("8 min to 20 min"));
    EXPECT_EQ(sourceWords({"common practice, no source", rules::Mark::Practice}),
              QStringLiteral("common practice, no source"));
    EXPECT_EQ(sourceWords({"a sheet", rules::Mark::Museum}), QStringLiteral("a sheet · museum or maker's sheet"));
}
