#pragma once

#include "app/parts/scribe.h"

#include <QString>

namespace mend::parts {

/// Which line drawing stands for a piece: by a word of its bench name, else by its number, so
/// that the same piece always looks the same. An index into the shapes of resources/look.
int shapeFor(const QString& benchName, qint64 number);
int shapeCount();

/// A small drawing of the pot with its breaks; the share that is mended is gold and broader.
void drawOutline(Scribe& scribe, const QRectF& rect, int shape, double mended, bool onBlock);

} // namespace mend::parts
