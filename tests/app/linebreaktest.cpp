#include "app/parts/linebreak.h"

#include <QFontMetricsF>
#include <gtest/gtest.h>

namespace mend::parts {
namespace {

class LineBreak : public testing::Test {
protected:
    Widths widths{QFont(QStringLiteral("Lato"), 12)};
    double of(const char* words) { return widths.of(QString::fromLatin1(words)); }
};

TEST_F(LineBreak, BreaksBetweenWords)
{
    const QStringList lines = brokenLines(QStringLiteral("say how to show it"), widths, of("say how to") + 1.0, 3);
    EXPECT_EQ(lines, (QStringList{QStringLiteral("say how to"), QStringLiteral("show it")}));
    EXPECT_TRUE(isWhole(lines, QStringLiteral("say how to show it"), widths, of("say how to") + 1.0));
}

TEST_F(LineBreak, BreaksAWordThatIsWiderThanALineRatherThanCutIt)
{
    const double wide = of("Einstell-") + 1.0;
    const QStringList lines = brokenLines(QStringLiteral("Einstellungen"), widths, wide, 2);
    EXPECT_EQ(lines, (QStringList{QStringLiteral("Einstell-"), QStringLiteral("ungen")}));
    EXPECT_FALSE(isWhole(lines, QStringLiteral("Einstellungen"), widths, wide)) << "smaller letters come first";
}

TEST_F(LineBreak, LeavesAWordWholeWhereThereIsOneLineOnly)
{
    EXPECT_EQ(brokenLines(QStringLiteral("Einstellungen"), widths, of("Ein"), 1),
              QStringList{QStringLiteral("Einstellungen")});
}

} // namespace
} // namespace mend::parts
