#pragma once

#include "app/parts/sheetview.h"
#include "app/parts/tapgate.h"
#include "tests/app/walker.h"
#include "tests/language/spoken.h"

#include <QTest>
#include <QWidget>
#include <gtest/gtest.h>

#include <vector>

namespace mend::app {

/// One way in which a person may have the window: its size, theme, screen and direction.
struct SpaceWay {
    QSize size;
    parts::Theme theme = parts::Theme::Light;
    double dpi = 96.0;
    double scale = 1.0;
    bool rtl = false;
    QString language = {}; ///< that every word comes in; empty: English

    parts::Look look() const { return parts::lookOf(theme, parts::Measure(dpi, scale)); }
    /// Gives a space its direction, size and look.
    template <class Space> void dress(Space& space) const
    {
        space.setLayoutDirection(rtl ? Qt::RightToLeft : Qt::LeftToRight);
        space.resize(size);
        space.setLook(look());
    }
    /// What a picture of it is kept as.
    QString picture(const QString& what) const;
};
std::ostream& operator<<(std::ostream& out, const SpaceWay& way);
std::vector<SpaceWay> spaceWays();
/// The same, and those that give words another room in every other language.
std::vector<SpaceWay> spokenWays();

/// A walk in one of these ways.
class SpaceWalk : public testing::TestWithParam<SpaceWay> {
    const Spoken m_spoken{GetParam().language};
};

/// Everything that the walker finds in these sheets of a shown space: their spots, words and colours, and
/// the lines to type into, which have to be as high as a finger and named.
Walk walkSheets(const std::vector<parts::SheetView*>& sheets, const parts::Look& look);

/// Keeps a picture where MEND_PICTURES names a folder; the number of colours in it.
int keepPicture(QWidget& window, const QString& name);

/// A clock for the gate that a test moves, so that no tap has to wait for its spot to settle.
class GateClock {
public:
    parts::TapGate gate{[this] { return m_now += 1000; }};

private:
    qint64 m_now = 0;
};

/// A real click in the middle of a spot, which is brought into sight first. False where it is not there.
bool click(parts::SheetView& sheet, const QString& key);
/// Real keys into a line. False where it is not there.
bool type(parts::SheetView& sheet, const QString& field, const QString& words);
/// Whether these words can be read anywhere on the sheet.
bool says(const parts::SheetView& sheet, const QString& words);

} // namespace mend::app
