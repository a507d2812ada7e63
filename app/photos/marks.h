#pragma once

#include "core/record/photo.h"

#include <QPainter>

namespace mend::photos {

/// Draws the sign of a mark with its middle at `at`, `size` across. Each kind has a shape of its own (a notch, a
/// jagged line, an open ring, stitches, dots), dark on a light border, so that it is told apart on any photo
/// and in any colours.
void drawMark(QPainter& painter, record::MarkKind kind, QPointF at, double size);

/// All marks of one photo that is shown in `picture`, each with its number from 1.
void drawMarks(QPainter& painter, const std::vector<record::PhotoMark>& marks, const QRectF& picture, double size,
               const QFont& font);

} // namespace mend::photos
