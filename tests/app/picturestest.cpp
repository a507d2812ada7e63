#include "app/shell/mainwindow.h"
#include "tests/app/samples.h"

#include <QDir>
#include <QSet>
#include <gtest/gtest.h>

namespace mend::app {
namespace {

struct Shot {
    const char* name;
    QSize size;
    parts::Theme theme;
    double dpi;
    double scale;
    bool rtl;
    bool left;
};

const Shot shots[] = {
    {"light-1280", {1280, 800}, parts::Theme::Light, 96, 1, false, false},
    {"dark-1280", {1280, 800}, parts::Theme::Dark, 96, 1, false, false},
    {"contrast-1280", {1280, 800}, parts::Theme::HighContrast, 96, 1, false, false},
    {"light-1280-150", {1280, 800}, parts::Theme::Light, 96, 1.5, false, false},
    {"light-1920", {1920, 1080}, parts::Theme::Light, 96, 1, false, false},
    {"tablet-1920x1200-149", {1920, 1200}, parts::Theme::Light, 149, 1, false, false},
    {"rtl-1280", {1280, 800}, parts::Theme::Light, 96, 1, true, false},
    {"left-1280", {1280, 800}, parts::Theme::Dark, 96, 1, false, true},
    {"small-640x400", {640, 400}, parts::Theme::Light, 96, 1, false, false},
    {"mid-1024x600", {1024, 600}, parts::Theme::Light, 96, 1, false, false},
};

class Pictures : public testing::TestWithParam<Shot> {};

QImage keep(QWidget& window, const QString& name)
{
    const QImage image = window.grab().toImage();
    const QString folder = qEnvironmentVariable("MEND_PICTURES");
    if (!folder.isEmpty()) {
        QDir().mkpath(folder);
        EXPECT_TRUE(image.save(folder + QLatin1Char('/') + name + QStringLiteral(".png")));
    }
    return image;
}

/// Colours that are really there, so that an empty picture is noticed.
int coloursIn(const QImage& image)
{
    QSet<QRgb> seen;
    for (int y = 0; y < image.height(); y += 3) {
        for (int x = 0; x < image.width(); x += 3) {
            seen.insert(image.pixel(x, y));
        }
    }
    return static_cast<int>(seen.size());
}

// Where MEND_PICTURES names a folder the pictures are kept there, to be looked at.
TEST_P(Pictures, ShowTheWholeBench)
{
    const Shot shot = GetParam();
    parts::TapGate gate;
    MainWindow window(gate);
    window.setLayoutDirection(shot.rtl ? Qt::RightToLeft : Qt::LeftToRight);
    window.resize(shot.size);
    window.setLookSettings({shot.theme, shot.scale, false, shot.left, shot.dpi});
    window.bench().setManner(samples::manner());
    window.setBoard(samples::richBoard(), samples::richExtras());
    const QImage image = keep(window, QLatin1String(shot.name));
    EXPECT_EQ(image.size(), shot.size);
    EXPECT_GT(coloursIn(image), 8);
    window.setBoard(samples::handsBoard(), samples::richExtras());
    EXPECT_GT(coloursIn(keep(window, QLatin1String(shot.name) + QStringLiteral("-hands"))), 8);
    window.setBoard(samples::richBoard(), samples::richExtras());
    window.bench().panel().openMore(PieceId(1));
    EXPECT_GT(coloursIn(keep(window, QLatin1String(shot.name) + QStringLiteral("-more"))), 8);
    window.bench().panel().openWhy(PieceId(1));
    EXPECT_GT(coloursIn(keep(window, QLatin1String(shot.name) + QStringLiteral("-why"))), 8);
    window.bench().panel().openPlace(PlaceId(1));
    EXPECT_GT(coloursIn(keep(window, QLatin1String(shot.name) + QStringLiteral("-reading"))), 8);
}

INSTANTIATE_TEST_SUITE_P(Everywhere, Pictures, testing::ValuesIn(shots));

} // namespace
} // namespace mend::app
