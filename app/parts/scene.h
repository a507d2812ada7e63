#pragma once

#include "app/parts/hitmap.h"
#include "app/parts/look.h"

#include <QColor>
#include <QFont>
#include <QImage>
#include <QPainterPath>
#include <QRectF>
#include <QString>

#include <memory>
#include <vector>

class QPainter;

namespace mend::parts {

/// One thing that is drawn. A view is a list of these, so that painting, "what has changed"
/// and the tests that look for clipped text and weak contrast all read the same list.
struct Item {
    enum class Kind { Fill, Frame, Path, Stroke, Text, Picture };
    Kind kind = Kind::Fill;
    QRectF rect;
    QColor ink;
    QColor ground; ///< what it stands on, for the contrast
    double pen = 1.0;
    double radius = 0.0;
    Qt::PenStyle style = Qt::SolidLine;
    QPainterPath path;
    QString text;  ///< as drawn
    QString whole; ///< as meant; differs where it had to be shortened
    QFont font;
    Qt::Alignment align;
    QImage image;
    bool bears = true; ///< carries meaning: its contrast counts
    bool operator==(const Item& other) const;
};

/// What one view (or one card of it) shows and what can be hit in it.
struct Scene {
    std::vector<Item> items;
    std::vector<Hit> hits;
};
using ScenePtr = std::shared_ptr<const Scene>;

void paintItem(QPainter& painter, const Item& item);
/// Where an item leaves paint.
QRectF paintedRect(const Item& item);

} // namespace mend::parts
