#include "app/parts/tokens.h"

#include "app/parts/measure.h"
#include "app/parts/type.h"

#include <QFontInfo>
#include <QFontMetricsF>
#include <gtest/gtest.h>

namespace mend::parts {
namespace {

struct Checked {
    const char* colour;
    double onWhite;
};

// Contrast by the formula of WCAG 2.2 (definition of relative luminance, threshold 0.04045), worked out apart
// from this program.
const Checked checked[] = {{"#000000", 21.000}, {"#595959", 7.005}, {"#767676", 4.542}, {"#777777", 4.478},
                           {"#949494", 3.034},  {"#959595", 2.995}, {"#0000FF", 8.592}, {"#FF0000", 3.998},
                           {"#00FF00", 1.372},  {"#FFFFFF", 1.000}};

TEST(Contrast, MeetsThePublishedFormula)
{
    for (const Checked& each : checked) {
        EXPECT_NEAR(contrast(QColor(QLatin1String(each.colour)), Qt::white), each.onWhite, 0.005) << each.colour;
    }
    EXPECT_NEAR(luminance(QColor(QStringLiteral("#767676"))), 0.181164, 0.000001);
    EXPECT_DOUBLE_EQ(contrast(Qt::black, Qt::white), contrast(Qt::white, Qt::black));
}

TEST(Tokens, HighContrastIsBlackAndWhiteOnly)
{
    const Tokens& t = tokensOf(Theme::HighContrast);
    for (const QColor& each :
         {t.ground, t.card, t.ink, t.ink2, t.hair, t.gold, t.goldText, t.block, t.onBlock, t.onBlock2, t.goldOnBlock}) {
        EXPECT_TRUE(each == QColor(Qt::black) || each == QColor(Qt::white)) << each.name().toStdString();
    }
}

TEST(Tokens, TextIsAtLeastFourAndAHalfToOneInEveryTheme)
{
    for (const Theme theme : {Theme::Light, Theme::Dark, Theme::HighContrast}) {
        const Tokens& t = tokensOf(theme);
        for (const auto& [ink, ground] :
             {std::pair(t.ink, t.card), std::pair(t.ink2, t.card), std::pair(t.ink2, t.ground),
              std::pair(t.goldText, t.card), std::pair(t.onBlock, t.block), std::pair(t.onBlock2, t.block)}) {
            EXPECT_GE(contrast(ink, ground), 4.5) << ink.name().toStdString() << " on " << ground.name().toStdString();
        }
        for (const auto& [ink, ground] :
             {std::pair(t.gold, t.card), std::pair(t.gold, t.ground), std::pair(t.hair, t.card),
              std::pair(t.hair, t.ground), std::pair(t.goldOnBlock, t.block)}) {
            EXPECT_GE(contrast(ink, ground), 3.0) << ink.name().toStdString() << " on " << ground.name().toStdString();
        }
    }
}

TEST(Measure, TurnsMillimetresIntoPixelsOfTheRealScreen)
{
    EXPECT_EQ(Measure(96.0).mm(20.0), 76);   // 20 / 25.4 * 96 = 75.6
    EXPECT_EQ(Measure(96.0).mm(12.0), 46);   // 45.4
    EXPECT_EQ(Measure(96.0).mm(3.0), 12);    // 11.3
    EXPECT_EQ(Measure(149.0).mm(20.0), 118); // 117.3
    EXPECT_EQ(Measure(96.0, 1.5).mm(20.0), 114);
    EXPECT_NEAR(Measure(149.0).inMillimetres(118), 20.1, 0.05);
    EXPECT_NEAR(Measure(96.0, 1.5).inMillimetres(114), 30.2, 0.05);
}

TEST(Measure, DoesNotBelieveAScreenThatLies)
{
    for (const double lie : {0.0, 10.0, 69.9, 350.1, 5000.0}) {
        EXPECT_EQ(Measure(lie), Measure(96.0)) << lie;
    }
    EXPECT_EQ(Measure(70.0).dpi(), 70.0);
    EXPECT_EQ(Measure(350.0).dpi(), 350.0);
}

TEST(Type, IsNamedAndItsFiguresAreAllOfOneWidth)
{
    EXPECT_EQ(Type::family(), QStringLiteral("Lato"));
    for (const Role role : {Role::BlockDigits, Role::CardDigits, Role::Clock}) {
        const QFont font = Type().font(role);
        EXPECT_FALSE(QFontInfo(font).family().isEmpty());
        const QFontMetricsF metrics(font);
        for (const char digit : {'0', '1', '2', '3', '4', '5', '6', '7', '8'}) {
            EXPECT_EQ(metrics.horizontalAdvance(QLatin1Char(digit)), metrics.horizontalAdvance(QLatin1Char('9')))
                << digit;
        }
    }
}

// From memory of NUREG-0700: capitals of 16 minutes of arc at 60 cm are 2.79 mm; 12 mm are read from two metres.
TEST(Type, IsLargeEnoughForItsDistance)
{
    const Measure measure(96.0);
    const auto capital = [&](Role role) {
        return measure.inMillimetres(QFontMetricsF(Type(measure).font(role)).capHeight());
    };
    EXPECT_GE(capital(Role::Reason), 2.79);
    EXPECT_GE(capital(Role::BlockDigits), 12.0);
    EXPECT_GE(capital(Role::BlockVerb), 9.3); // 16 minutes at two metres
}

} // namespace
} // namespace mend::parts
