#include "app/parts/scribe.h"

#include "app/parts/linebreak.h"

#include <QTransform>

#include <cmath>

namespace mend::parts {

Scribe::Scribe(const Look& look, QSize size, bool mirrored) : m_look(look), m_size(size), m_mirrored(mirrored) {}

QRectF Scribe::placed(const QRectF& rect) const
{
    if (m_stretch) {
        return rect.translated(shift(), 0.0);
    }
    return m_mirrored ? QRectF(m_size.width() - rect.right(), rect.top(), rect.width(), rect.height()) : rect;
}

Qt::Alignment Scribe::aligned(Qt::Alignment align) const
{
    // Absolute: what is "left" has been decided here, so that the words' own direction cannot turn it round again.
    Qt::Alignment across = align & Qt::AlignHorizontal_Mask;
    const bool turns = m_mirrored && !m_stretch;
    if (turns && (across & Qt::AlignLeft)) {
        across = Qt::AlignRight;
    } else if (turns && (across & Qt::AlignRight)) {
        across = Qt::AlignLeft;
    }
    const Qt::Alignment down = align & Qt::AlignVertical_Mask;
    return across | Qt::AlignAbsolute | (down ? down : Qt::Alignment(Qt::AlignVCenter));
}

void Scribe::fill(const QRectF& rect, const QColor& colour, double radius)
{
    Item item;
    item.kind = Item::Kind::Fill;
    item.rect = placed(rect);
    item.ink = item.ground = colour;
    item.radius = radius;
    item.bears = false;
    m_scene.items.push_back(std::move(item));
}

void Scribe::frame(const QRectF& rect, const QColor& colour, double pen, const QColor& ground, double radius,
                   Qt::PenStyle style)
{
    Item item;
    item.kind = Item::Kind::Frame;
    item.rect = placed(rect);
    item.ink = colour;
    item.ground = ground;
    item.pen = pen;
    item.radius = radius;
    item.style = style;
    m_scene.items.push_back(std::move(item));
}

void Scribe::line(QPointF from, QPointF to, const QColor& colour, double pen, const QColor& ground, Qt::PenStyle style,
                  bool bears)
{
    QPainterPath straight;
    straight.moveTo(from);
    straight.lineTo(to);
    stroke(straight, colour, pen, ground, style);
    m_scene.items.back().bears = bears;
}

void Scribe::path(const QPainterPath& path, const QColor& colour, const QColor& ground)
{
    Item item;
    item.kind = Item::Kind::Path;
    item.path = m_stretch    ? path.translated(shift(), 0.0)
                : m_mirrored ? QTransform(-1, 0, 0, 1, m_size.width(), 0).map(path)
                             : path;
    item.rect = item.path.boundingRect();
    item.ink = colour;
    item.ground = ground;
    m_scene.items.push_back(std::move(item));
}

void Scribe::stroke(const QPainterPath& path, const QColor& colour, double pen, const QColor& ground,
                    Qt::PenStyle style)
{
    this->path(path, colour, ground);
    Item& item = m_scene.items.back();
    item.kind = Item::Kind::Stroke;
    item.pen = pen;
    item.style = style;
}

void Scribe::picturePath(const QPainterPath& path, const QRectF& within, const QColor& colour, double pen,
                         const QColor& ground, bool filled)
{
    const QRectF to = placed(within);
    Item item;
    item.kind = filled ? Item::Kind::Path : Item::Kind::Stroke;
    item.path = path.translated(to.left() - within.left(), 0.0);
    item.rect = item.path.boundingRect();
    item.ink = colour;
    item.ground = ground;
    item.pen = pen;
    item.bears = !filled;
    m_scene.items.push_back(std::move(item));
}

void Scribe::picture(const QRectF& rect, const QImage& image)
{
    Item item;
    item.kind = Item::Kind::Picture;
    item.rect = placed(rect);
    item.image = image;
    item.bears = false;
    m_scene.items.push_back(std::move(item));
}

double Scribe::text(const QRectF& rect, const QString& words, const Ink& ink, Qt::Alignment align, double shrink)
{
    if (words.isEmpty()) {
        return 0.0;
    }
    Item item;
    item.kind = Item::Kind::Text;
    item.rect = placed(rect);
    item.ink = ink.ink;
    item.ground = ink.ground;
    item.font = m_look.type.font(ink.role, shrink);
    item.align = aligned(align);
    item.whole = words;
    Widths& widths = m_look.type.widths(ink.role, shrink);
    item.text = widths.of(words) <= rect.width() + 0.5 ? words : widths.shortened(words, rect.width());
    const double taken = widths.of(item.text);
    m_scene.items.push_back(std::move(item));
    return taken;
}

double Scribe::lines(const QRectF& rect, const QString& words, const Ink& ink, int most, Qt::Alignment align)
{
    const double height = lineHeight(ink.role);
    const int room = std::max(1, std::min(most, static_cast<int>((rect.height() + 0.5) / height)));
    const QStringList broken = brokenLines(words, m_look.type.widths(ink.role), rect.width(), room);
    double top = rect.top();
    for (const QString& each : broken) {
        text(QRectF(rect.left(), top, rect.width(), height), each, ink, align);
        top += height;
    }
    return top - rect.top();
}

double Scribe::width(const QString& words, Role role, double shrink) const
{
    return std::ceil(m_look.type.widths(role, shrink).of(words));
}

double Scribe::lineHeight(Role role, double shrink) const
{
    return std::ceil(m_look.type.widths(role, shrink).height());
}

void Scribe::hit(Hit hit)
{
    hit.rect = placed(QRectF(hit.rect)).toRect();
    m_scene.hits.push_back(std::move(hit));
}

void Scribe::button(const Button& button)
{
    using Weight = Button::Weight;
    const Tokens& t = tokens();
    const QRectF rect(button.hit.rect);
    const double radius = px(6);
    const bool onBlock = button.weight == Weight::OnBlock || button.weight == Weight::OnBlockPlain;
    const QColor ground = onBlock ? t.block : t.card;
    QColor ink = onBlock ? t.onBlock : t.ink;
    QColor face = ground;
    switch (button.weight) {
    case Weight::Strong:
        fill(rect, face, radius);
        frame(rect, t.ink, px(2), ground, radius);
        break;
    case Weight::Plain:
        fill(rect, face, radius);
        frame(rect, t.hair, px(1.4), ground, radius);
        break;
    case Weight::Barred:
        ink = t.ink2;
        fill(rect, face, radius);
        frame(rect, t.ink2, px(2), ground, radius, Qt::DashLine);
        break;
    case Weight::OnBlock:
        face = t.onBlock;
        ink = t.block;
        fill(rect, face, radius);
        break;
    case Weight::OnBlockPlain:
        fill(rect, face, radius);
        frame(rect, t.onBlock2, px(1.4), ground, radius);
        break;
    }
    label(rect, button, ink, face);
    hit(button.hit);
}

void Scribe::label(const QRectF& rect, const Button& button, const QColor& ink, const QColor& ground)
{
    const double pad = px(8);
    const QRectF inner = rect.adjusted(pad, px(3), -pad, -px(3));
    const QStringList below = brokenLines(button.below, m_look.type.widths(Role::Reason), inner.width(), 2);
    const double lower = lineHeight(Role::Reason) * static_cast<double>(below.size());
    // The largest size at which every word is whole; the smallest is that of a reason line.
    const double least = unitsOf(Role::Reason) / unitsOf(button.role);
    QStringList broken;
    double shrink = 1.0;
    for (;; shrink = std::max(least, shrink - 0.08)) {
        const int room =
            std::max(1, static_cast<int>((inner.height() - lower + 1.0) / lineHeight(button.role, shrink)));
        Widths& widths = m_look.type.widths(button.role, shrink);
        broken = brokenLines(button.label, widths, inner.width(), room);
        if (isWhole(broken, button.label, widths, inner.width()) || shrink <= least) {
            break;
        }
    }
    const double height = lineHeight(button.role, shrink);
    double top = inner.top() + (inner.height() - height * broken.size() - lower) / 2.0;
    for (const QString& each : broken) {
        text(QRectF(inner.left(), top, inner.width(), height), each, {button.role, ink, ground}, Qt::AlignHCenter,
             shrink);
        top += height;
    }
    for (const QString& each : below) {
        text(QRectF(inner.left(), top, inner.width(), lineHeight(Role::Reason)), each, {Role::Reason, ink, ground},
             Qt::AlignHCenter);
        top += lineHeight(Role::Reason);
    }
}

} // namespace mend::parts
