#include "app/bench/benchspace.h"
#include "tests/app/samples.h"

#include <QDir>
#include <gtest/gtest.h>

namespace mend::app {
namespace {

/// Writes pictures of a made-up Bench where MEND_PICTURES names a folder, to be looked at.
TEST(BenchPictures, AreWrittenWhereAFolderIsNamed)
{
    const QString folder = qEnvironmentVariable("MEND_PICTURES");
    struct Shot {
        const char* name;
        QSize size;
        parts::Theme theme;
        double dpi;
        double scale;
        bool rtl;
    };
    for (const Shot& shot : {Shot{"light-1280", {1280, 800}, parts::Theme::Light, 96, 1, false},
                             Shot{"dark-1280", {1280, 800}, parts::Theme::Dark, 96, 1, false}}) {
        parts::TapGate gate;
        BenchSpace space(gate);
        space.resize(shot.size - QSize(132, 0));
        const parts::Look look = parts::lookOf(shot.theme, parts::Measure(shot.dpi, shot.scale));
        space.setLook(look);
        space.setManner(samples::manner());
        space.setPlan(planFor(shot.size, look, 8));
        space.setLayoutDirection(shot.rtl ? Qt::RightToLeft : Qt::LeftToRight);
        space.setBoard(samples::richBoard(), samples::richExtras());
        const QImage image = space.grab().toImage();
        EXPECT_EQ(image.size(), space.size());
        if (!folder.isEmpty()) {
            QDir().mkpath(folder);
            EXPECT_TRUE(image.save(folder + QLatin1Char('/') + QLatin1String(shot.name) + QStringLiteral(".png")));
        }
    }
}

} // namespace
} // namespace mend::app
