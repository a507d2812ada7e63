#include "app/parts/scene.h"

#include <QPainter>

#include <algorithm>

namespace mend::parts {

bool Item::operator==(const Item& other) const
{
    return kind == other.kind && rect == other.rect && ink == other.ink && text == other.text && pen == other.pen &&
           radius == other.radius && style == other.style && align == other.align && font == other.font &&
           path == other.path && ground == other.ground && image.cacheKey() == other.image.cacheKey();
}

QRectF paintedRect(const Item& item)
{
    const double spill = item.kind == Item::Kind::Stroke || item.kind == Item::Kind::Path ? item.pen + 1.0 : 1.0;
    return item.rect.adjusted(-spill, -spill, spill, spill);
}

namespace {

void paintFrame(QPainter& painter, const Item& item)
{
    QPen pen(item.ink, item.pen, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
    if (item.style != Qt::SolidLine) {
        pen.setDashPattern({4.0, 3.0});
    }
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    const double half = item.pen / 2.0;
    const QRectF inner = item.rect.adjusted(half, half, -half, -half);
    painter.drawRoundedRect(inner, std::max(0.0, item.radius - half), std::max(0.0, item.radius - half));
}

void paintStroke(QPainter& painter, const Item& item)
{
    QPen pen(item.ink, item.pen, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
    if (item.style == Qt::DotLine) {
        pen.setDashPattern({0.01, 3.2});
    } else if (item.style == Qt::DashLine) {
        pen.setDashPattern({4.0, 3.0});
    }
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(item.path);
}

/// Words that hold no letter of a language that runs from the right are read from the left there too: their full stop
/// stands at their end.
Qt::LayoutDirection directionOf(const QString& words, Qt::LayoutDirection layout)
{
    const bool turns = std::ranges::any_of(
        words, [](QChar each) { return each.direction() == QChar::DirR || each.direction() == QChar::DirAL; });
    return turns ? layout : Qt::LeftToRight;
}

void paintText(QPainter& painter, const Item& item)
{
    const Qt::LayoutDirection layout = painter.layoutDirection();
    painter.setLayoutDirection(directionOf(item.text, layout));
    painter.setPen(item.ink);
    painter.setFont(item.font);
    painter.drawText(item.rect, static_cast<int>(item.align) | Qt::TextSingleLine | Qt::TextDontClip, item.text);
    painter.setLayoutDirection(layout);
}

} // namespace

void paintItem(QPainter& painter, const Item& item)
{
    switch (item.kind) {
    case Item::Kind::Fill:
        painter.setPen(Qt::NoPen);
        painter.setBrush(item.ink);
        if (item.radius > 0.0) {
            painter.drawRoundedRect(item.rect, item.radius, item.radius);
        } else {
            painter.fillRect(item.rect, item.ink);
        }
        break;
    case Item::Kind::Frame:
        paintFrame(painter, item);
        break;
    case Item::Kind::Path:
        painter.setPen(Qt::NoPen);
        painter.setBrush(item.ink);
        painter.drawPath(item.path);
        break;
    case Item::Kind::Stroke:
        paintStroke(painter, item);
        break;
    case Item::Kind::Text:
        paintText(painter, item);
        break;
    case Item::Kind::Picture:
        painter.drawImage(item.rect, item.image);
        break;
    }
}

} // namespace mend::parts
