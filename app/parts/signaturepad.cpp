#include "app/parts/signaturepad.h"

#include <QMouseEvent>
#include <QPainter>

#include <cmath>

namespace mend::parts {

namespace {

/// More points than the longest signature has; what is beyond is a sleeve on the glass.
constexpr std::size_t mostPoints = 20'000;

} // namespace

SignaturePad::SignaturePad(QWidget* parent) : QWidget(parent), m_look(lookOf(Theme::Light, Measure()))
{
    setFocusPolicy(Qt::NoFocus);
    setCursor(Qt::CrossCursor);
    setAccessibleName(tr("Sign here with a finger, a pen or the mouse"));
}

void SignaturePad::setLook(const Look& look)
{
    m_look = look;
    update();
}

void SignaturePad::clear()
{
    m_strokes.clear();
    m_drawing = false;
    update();
    Q_EMIT changed();
}

QImage SignaturePad::picture() const
{
    QRectF drawn;
    for (const QPolygonF& stroke : m_strokes) {
        drawn |= stroke.boundingRect().adjusted(-1, -1, 1, 1);
    }
    if (drawn.isEmpty()) {
        return {};
    }
    constexpr double air = 8.0;
    drawn.adjust(-air, -air, air, air);
    QImage image(drawn.size().toSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.translate(-drawn.topLeft());
    drawStrokes(painter, Qt::black);
    return image;
}

void SignaturePad::drawStrokes(QPainter& painter, const QColor& ink) const
{
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(ink, m_look.measure.px(2.6), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    for (const QPolygonF& stroke : m_strokes) {
        if (stroke.size() == 1) {
            painter.drawPoint(stroke.front());
        } else {
            painter.drawPolyline(stroke);
        }
    }
}

void SignaturePad::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    const Tokens& t = m_look.tokens();
    const double radius = m_look.measure.px(6);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(t.hair, m_look.measure.px(1.4)));
    painter.setBrush(t.card);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), radius, radius);
    const double line = height() * 0.74;
    const double pad = m_look.measure.px(20);
    painter.drawLine(QPointF(pad, line), QPointF(width() - pad, line));
    if (m_strokes.empty()) {
        painter.setPen(t.ink2);
        painter.setFont(m_look.type.font(Role::Reason));
        painter.drawText(QRectF(pad, line, width() - 2 * pad, height() - line), Qt::AlignCenter, tr("Sign here"));
    }
    drawStrokes(painter, t.ink);
}

void SignaturePad::mousePressEvent(QMouseEvent* event)
{
    std::size_t points = 0;
    for (const QPolygonF& stroke : m_strokes) {
        points += static_cast<std::size_t>(stroke.size());
    }
    if (event->button() != Qt::LeftButton || points > mostPoints) {
        return;
    }
    m_drawing = true;
    m_strokes.push_back(QPolygonF{event->position()});
    update();
}

void SignaturePad::mouseMoveEvent(QMouseEvent* event)
{
    if (!m_drawing || m_strokes.empty() || static_cast<std::size_t>(m_strokes.back().size()) > mostPoints) {
        return;
    }
    const QPointF at(std::clamp(event->position().x(), 0.0, double(width())),
                     std::clamp(event->position().y(), 0.0, double(height())));
    m_strokes.back().append(at);
    update();
}

void SignaturePad::mouseReleaseEvent(QMouseEvent*)
{
    if (m_drawing) {
        m_drawing = false;
        Q_EMIT changed();
    }
}

} // namespace mend::parts
