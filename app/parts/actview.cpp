#include "app/parts/actview.h"

#include "app/parts/actaccessible.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QTouchEvent>

#include <algorithm>
#include <cmath>

namespace mend::parts {

namespace {
constexpr int dragFrom = 16; // pixels a finger may tremble before it drags
} // namespace

ActView::ActView(TapGate& gate, QWidget* parent) : QWidget(parent), m_gate(gate)
{
    installActAccessibility();
    setAttribute(Qt::WA_AcceptTouchEvents);
    setAttribute(Qt::WA_OpaquePaintEvent, false);
    setFocusPolicy(Qt::StrongFocus);
}

ActView::~ActView() { m_gate.forget(this); }

void ActView::setSizeHint(QSize hint)
{
    if (hint != m_hint) {
        m_hint = hint;
        updateGeometry();
    }
}

void ActView::setFocusInk(const QColor& ink, double pen)
{
    m_focusInk = ink;
    m_focusPen = pen;
}

void ActView::setGround(const QColor& ground)
{
    if (m_ground != ground) {
        m_ground = ground;
        setAttribute(Qt::WA_OpaquePaintEvent, ground.isValid());
        repaint(rect());
    }
}

void ActView::repaint(const QRect& rect)
{
    const QRect seen = rect & this->rect();
    if (!seen.isEmpty() && isVisible()) {
        m_repainted += static_cast<qint64>(seen.width()) * seen.height();
        update(seen);
    }
}

void ActView::setFlash(const QRect& around, const QColor& ink, double pen, double radius)
{
    if (around == m_flashAround && ink == m_flashInk) {
        return;
    }
    const auto edges = [this, pen](const QRect& frame) {
        const int broad = static_cast<int>(std::ceil(pen)) + 2;
        repaint(QRect(frame.left(), frame.top(), frame.width(), broad));
        repaint(QRect(frame.left(), frame.bottom() - broad, frame.width(), broad + 2));
        repaint(QRect(frame.left(), frame.top(), broad, frame.height()));
        repaint(QRect(frame.right() - broad, frame.top(), broad + 2, frame.height()));
    };
    edges(m_flashAround);
    m_flashAround = around;
    m_flashInk = ink;
    m_flashPen = pen;
    m_flashRadius = radius;
    edges(m_flashAround);
}

qint64 ActView::takeRepainted() { return std::exchange(m_repainted, 0); }

namespace {

QRect boundsOf(const ActView::Part& part)
{
    QRectF all;
    for (const Item& item : part.scene->items) {
        all |= paintedRect(item);
    }
    const QRect placed = all.toAlignedRect().translated(part.at);
    return part.clip.isEmpty() ? placed : placed & part.clip;
}

} // namespace

void ActView::setParts(std::vector<Part> parts)
{
    const std::vector<Part> before = std::exchange(m_parts, std::move(parts));
    for (std::size_t i = 0; i < std::max(before.size(), m_parts.size()); ++i) {
        const Part* old = i < before.size() ? &before[i] : nullptr;
        const Part* fresh = i < m_parts.size() ? &m_parts[i] : nullptr;
        if (old && fresh && old->at == fresh->at && old->clip == fresh->clip) {
            if (old->scene == fresh->scene) {
                continue;
            }
            const auto& was = old->scene->items;
            const auto& is = fresh->scene->items;
            if (was.size() == is.size()) {
                for (std::size_t each = 0; each < is.size(); ++each) {
                    if (!(was[each] == is[each])) {
                        const QRectF changed = paintedRect(was[each]) | paintedRect(is[each]);
                        repaint(changed.toAlignedRect().translated(fresh->at));
                    }
                }
                continue;
            }
        }
        if (old) {
            repaint(boundsOf(*old));
        }
        if (fresh) {
            repaint(boundsOf(*fresh));
        }
    }
    collectHits();
}

void ActView::collectHits()
{
    std::vector<Hit> before = std::exchange(m_hits, {});
    for (const Part& part : m_parts) {
        for (const Hit& hit : part.scene->hits) {
            Hit placed = hit;
            placed.rect.translate(part.at);
            if (!part.clip.isEmpty()) {
                placed.rect &= part.clip;
            }
            if (const QString why = m_gate.curbOf(placed); !why.isEmpty()) {
                placed.act = nullptr;
                placed.more = placed.more.isEmpty() ? why : placed.more + QStringLiteral(", ") + why;
                placed.curbed = true;
            }
            m_hits.push_back(std::move(placed));
        }
    }
    m_gate.shows(this, before, m_hits);
    if (m_press && !m_press->key.isEmpty() && !hit(m_press->key)) {
        m_press->key.clear(); // what was aimed at is gone; the finger may still push
    }
    if (!m_focus.isEmpty() && !hit(m_focus)) {
        m_focus.clear();
    }
    if (before.size() != m_hits.size() && QAccessible::isActive()) {
        QAccessibleEvent changed(this, QAccessible::ObjectReorder);
        QAccessible::updateAccessibility(&changed);
    }
}

const Hit* ActView::hit(const QString& key) const
{
    const auto found = std::ranges::find(m_hits, key, &Hit::key);
    return found == m_hits.end() ? nullptr : &*found;
}

const Hit* ActView::buttonAt(QPoint at) const
{
    // The last one drawn lies on top.
    const auto found = std::find_if(m_hits.rbegin(), m_hits.rend(),
                                    [&](const Hit& each) { return each.canAct() && each.rect.contains(at); });
    return found == m_hits.rend() ? nullptr : &*found;
}

bool ActView::activate(const QString& key)
{
    const Hit* found = hit(key);
    if (!found || !found->canAct() || m_gate.lockedFor() > 0 || !m_gate.fires(key)) {
        return false;
    }
    const auto act = found->act; // the act may replace the hit map
    Q_EMIT acted(key);
    act();
    return true;
}

void ActView::repaintHit(const QString& key)
{
    if (const Hit* found = hit(key)) {
        const int spill = static_cast<int>(std::ceil(m_focusPen)) + 3;
        repaint(found->rect.adjusted(-spill, -spill, spill, spill));
    }
}

void ActView::press(QPoint at)
{
    m_gate.touched();
    Q_EMIT pressed();
    const Hit* found = buttonAt(at);
    const bool taken = found && m_gate.takes(this, found->key);
    m_press = Press{taken ? found->key : QString(), at, at, true, false};
    repaintHit(m_press->key);
}

void ActView::moveTo(QPoint at)
{
    if (!m_press) {
        return;
    }
    m_gate.touched();
    if (!m_press->dragging && std::abs(at.y() - m_press->down.y()) > dragFrom && takesDrags()) {
        const QString key = std::exchange(m_press->key, QString());
        m_press->dragging = true;
        m_press->last = at;
        repaintHit(key);
        return;
    }
    if (m_press->dragging) {
        Q_EMIT dragged(at.y() - m_press->last.y());
        if (m_press) {
            m_press->last = at;
        }
        return;
    }
    const Hit* found = hit(m_press->key);
    const bool inside = found && found->rect.contains(at);
    if (inside != m_press->inside) {
        m_press->inside = inside;
        repaintHit(m_press->key);
    }
}

void ActView::release(QPoint at)
{
    if (!m_press) {
        return;
    }
    m_gate.touched();
    const Press press = *m_press;
    cancel();
    const Hit* found = press.dragging || press.key.isEmpty() ? nullptr : hit(press.key);
    if (found && found->rect.contains(at)) {
        activate(press.key);
    }
}

void ActView::cancel()
{
    const QString key = m_press ? m_press->key : QString();
    m_press.reset();
    repaintHit(key);
}

bool ActView::event(QEvent* event)
{
    switch (event->type()) {
    case QEvent::TouchBegin:
    case QEvent::TouchUpdate:
    case QEvent::TouchEnd: {
        const auto* touch = static_cast<QTouchEvent*>(event);
        if (touch->points().isEmpty()) {
            return true;
        }
        const QPoint at = touch->points().front().position().toPoint();
        if (event->type() == QEvent::TouchBegin) {
            press(at);
        } else if (event->type() == QEvent::TouchUpdate) {
            moveTo(at);
        } else {
            release(at);
        }
        return true;
    }
    case QEvent::TouchCancel:
        cancel();
        return true;
    default:
        return QWidget::event(event);
    }
}

void ActView::mousePressEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton) {
        press(event->position().toPoint());
    }
}

void ActView::mouseMoveEvent(QMouseEvent* event) { moveTo(event->position().toPoint()); }

void ActView::mouseReleaseEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton) {
        release(event->position().toPoint());
    }
}

/// A button that may not be tapped now is pale; a figure that leads on when it is tapped stays as clear as it was.
void ActView::veilCurbed(QPainter& painter, const Scene& scene) const
{
    QColor veil = m_ground.isValid() ? m_ground : QColor(Qt::gray);
    veil.setAlpha(170);
    for (const Hit& hit : scene.hits) {
        if (m_gate.curbOf(hit).isEmpty()) {
            continue;
        }
        const bool isDrawnAsButton = std::ranges::any_of(scene.items, [&](const Item& item) {
            return (item.kind == Item::Kind::Fill || item.kind == Item::Kind::Frame) && item.rect == QRectF(hit.rect);
        });
        if (isDrawnAsButton && hit.isButton()) {
            painter.fillRect(hit.rect, veil);
        }
    }
}

void ActView::paintEvent(QPaintEvent* event)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    if (m_ground.isValid()) {
        painter.fillRect(event->rect(), m_ground);
    }
    for (const Part& part : m_parts) {
        const QRectF wanted = QRectF(event->rect()).translated(-part.at);
        painter.save();
        if (!part.clip.isEmpty()) {
            painter.setClipRect(part.clip);
        }
        painter.translate(part.at);
        for (const Item& item : part.scene->items) {
            if (paintedRect(item).intersects(wanted)) {
                paintItem(painter, item);
            }
        }
        veilCurbed(painter, *part.scene);
        painter.restore();
    }
    if (m_flashInk.isValid() && !m_flashAround.isEmpty()) {
        painter.setPen(QPen(m_flashInk, m_flashPen));
        painter.setBrush(Qt::NoBrush);
        const double in = m_flashPen / 2.0;
        painter.drawRoundedRect(QRectF(m_flashAround).adjusted(in, in, -in, -in), m_flashRadius, m_flashRadius);
    }
    const Hit* pressedHit = m_press && m_press->inside && !m_press->key.isEmpty() ? hit(m_press->key) : nullptr;
    if (pressedHit) {
        painter.fillRect(pressedHit->rect, QColor(m_focusInk.red(), m_focusInk.green(), m_focusInk.blue(), 56));
    }
    const Hit* focused = hasFocus() ? hit(m_focus) : nullptr;
    if (focused) {
        const double out = m_focusPen / 2.0 + 2.0;
        painter.setPen(QPen(m_focusInk, m_focusPen));
        painter.setBrush(Qt::NoBrush);
        // Whole at the edges of the view, too.
        const double half = m_focusPen / 2.0;
        painter.drawRoundedRect(QRectF(focused->rect)
                                    .adjusted(-out, -out, out, out)
                                    .intersected(QRectF(rect()).adjusted(half, half, -half, -half)),
                                8, 8);
    }
}

} // namespace mend::parts
