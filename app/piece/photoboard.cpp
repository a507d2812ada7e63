#include "app/piece/photoboard.h"

#include "app/photos/marks.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace mend::app {

namespace {
constexpr double step = 0.02; // of the photo, for one press of an arrow
}

PhotoBoard::PhotoBoard(QWidget* parent) : QWidget(parent), m_look(parts::lookOf(parts::Theme::Light, parts::Measure()))
{
    setAccessibleName(tr("The photo: the arrows move a cross, Enter marks the place"));
}

void PhotoBoard::setLook(const parts::Look& look)
{
    m_look = look;
    update();
}

void PhotoBoard::setPhoto(const QImage& photo)
{
    m_photo = photo;
    update();
}

void PhotoBoard::setMarks(std::vector<record::PhotoMark> marks)
{
    m_marks = std::move(marks);
    update();
}

void PhotoBoard::setTakesMarks(bool takes)
{
    m_takesMarks = takes;
    setCursor(takes ? Qt::CrossCursor : Qt::ArrowCursor);
    setFocusPolicy(takes ? Qt::StrongFocus : Qt::NoFocus);
    update();
}

QRectF PhotoBoard::pictureRect() const
{
    QSizeF size = m_photo.isNull() ? QSizeF(4, 3) : QSizeF(m_photo.size());
    size.scale(QSizeF(this->size()), Qt::KeepAspectRatio);
    QRectF inner(QPointF(), size);
    inner.moveCenter(QRectF(rect()).center());
    return inner;
}

void PhotoBoard::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    const auto& t = m_look.tokens();
    painter.fillRect(rect(), t.plinth);
    const QRectF picture = pictureRect();
    if (!m_photo.isNull()) {
        painter.setRenderHint(QPainter::SmoothPixmapTransform);
        painter.drawImage(picture, m_photo);
    }
    photos::drawMarks(painter, m_marks, picture, m_look.measure.px(26), m_look.type.font(parts::Role::BodyBold));
    if (hasFocus() && m_takesMarks) {
        const QPointF at(picture.left() + picture.width() * m_cross.x(),
                         picture.top() + picture.height() * m_cross.y());
        const double arm = m_look.measure.px(16);
        for (const auto& [ink, pen] : {std::pair(QColor(Qt::white), 5.0), std::pair(t.block, 2.0)}) {
            painter.setPen(QPen(ink, m_look.measure.px(pen)));
            painter.drawLine(at - QPointF(arm, 0), at + QPointF(arm, 0));
            painter.drawLine(at - QPointF(0, arm), at + QPointF(0, arm));
        }
        painter.setPen(QPen(t.ink, m_look.measure.px(3)));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(rect()).adjusted(1.5, 1.5, -1.5, -1.5));
    }
}

void PhotoBoard::mousePressEvent(QMouseEvent* event) { m_pressed = event->button() == Qt::LeftButton; }

void PhotoBoard::mouseReleaseEvent(QMouseEvent* event)
{
    const QRectF picture = pictureRect();
    if (m_pressed && m_takesMarks && picture.contains(event->position())) { // sliding off cancels
        m_cross = QPointF((event->position().x() - picture.left()) / picture.width(),
                          (event->position().y() - picture.top()) / picture.height());
        point(m_cross);
    }
    m_pressed = false;
}

void PhotoBoard::point(QPointF at)
{
    Q_EMIT pointed(static_cast<int>(std::lround(at.x() * 10'000)), static_cast<int>(std::lround(at.y() * 10'000)));
}

void PhotoBoard::keyPressEvent(QKeyEvent* event)
{
    QPointF by;
    switch (event->key()) {
    case Qt::Key_Left:
        by = {-step, 0};
        break;
    case Qt::Key_Right:
        by = {step, 0};
        break;
    case Qt::Key_Up:
        by = {0, -step};
        break;
    case Qt::Key_Down:
        by = {0, step};
        break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Space:
        if (m_takesMarks && !event->isAutoRepeat()) {
            point(m_cross);
        }
        return;
    default:
        QWidget::keyPressEvent(event);
        return;
    }
    m_cross = {std::clamp(m_cross.x() + by.x(), 0.0, 1.0), std::clamp(m_cross.y() + by.y(), 0.0, 1.0)};
    update();
}

void PhotoBoard::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    update();
}

void PhotoBoard::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    update();
}

} // namespace mend::app
