#pragma once

#include "app/bench/picture.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace mend::app {

/// Everything a card says at one moment, in words. Two equal faces look the same, but for the
/// seam, which is compared by the pixel.
struct CardFace {
    QString act;
    QString repetition;
    QString name;  ///< bench name and number
    QString owner; ///< empty where owners are hidden
    QString whose; ///< owner and place
    service::CountWords count;
    struct Line {
        QString words;
        bool grave = false;
        bool fits = false; ///< a whole plan stands behind it: in gold
        bool operator==(const Line&) const = default;
    };
    std::vector<Line> lines;
    QString window; ///< "opens 13:56 · closes 14:36"
    QString mark;   ///< "not stored yet"
    std::optional<UndoOffer> undo;
    QString sentence; ///< the whole card for a screen reader

    QString key() const; ///< changes when anything seen changes
};

CardFace faceOf(const bench::Card& card, const Picture& picture);

} // namespace mend::app
