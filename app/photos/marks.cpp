#include "app/photos/marks.h"

#include <QPainterPath>

namespace mend::photos {

namespace {

using record::MarkKind;

constexpr double wholePhoto = 10'000.0; // marks are kept in ten-thousandths

/// The lines of a sign, in a square from -1 to 1.
QPainterPath shapeOf(MarkKind kind)
{
    QPainterPath shape;
    switch (kind) {
    case MarkKind::Chip: // a notch
        shape.moveTo(-0.9, -0.7);
        shape.lineTo(0.0, 0.8);
        shape.lineTo(0.9, -0.7);
        shape.closeSubpath();
        break;
    case MarkKind::Crack: // a jagged line
        shape.moveTo(-1.0, 0.6);
        shape.lineTo(-0.35, -0.5);
        shape.lineTo(0.15, 0.5);
        shape.lineTo(0.6, -0.35);
        shape.lineTo(1.0, 0.2);
        break;
    case MarkKind::Loss: // an open ring
        shape.addEllipse(QPointF(0, 0), 0.8, 0.8);
        break;
    case MarkKind::OldMend: // a seam with three stitches over it
        shape.moveTo(-1.0, 0.0);
        shape.lineTo(1.0, 0.0);
        for (const double x : {-0.6, 0.0, 0.6}) {
            shape.moveTo(x, -0.55);
            shape.lineTo(x, 0.55);
        }
        break;
    case MarkKind::Stain: // dots
        for (const QPointF& dot :
             {QPointF(-0.55, -0.4), QPointF(0.5, -0.5), QPointF(0.05, 0.15), QPointF(-0.5, 0.65), QPointF(0.65, 0.6)}) {
            shape.addEllipse(dot, 0.16, 0.16);
        }
        break;
    }
    return shape;
}

} // namespace

void drawMark(QPainter& painter, MarkKind kind, QPointF at, double size)
{
    const QTransform to = QTransform().translate(at.x(), at.y()).scale(size / 2.0, size / 2.0);
    const QPainterPath shape = to.map(shapeOf(kind));
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(Qt::white, size / 4.5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(shape);
    painter.setPen(QPen(QColor(0x1F, 0x1C, 0x18), size / 10.0, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(shape);
    painter.restore();
}

void drawMarks(QPainter& painter, const std::vector<record::PhotoMark>& marks, const QRectF& picture, double size,
               const QFont& font)
{
    int number = 0;
    for (const record::PhotoMark& mark : marks) {
        const QPointF at(picture.left() + picture.width() * mark.x / wholePhoto,
                         picture.top() + picture.height() * mark.y / wholePhoto);
        drawMark(painter, mark.kind, at, size);
        QPainterPath figure;
        figure.addText(at + QPointF(size * 0.6, -size * 0.3), font, QString::number(++number));
        painter.save();
        painter.setRenderHint(QPainter::Antialiasing);
        painter.strokePath(figure, QPen(Qt::white, size / 5.0, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        painter.fillPath(figure, QColor(0x1F, 0x1C, 0x18));
        painter.restore();
    }
}

} // namespace mend::photos
