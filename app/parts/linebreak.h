#pragma once

#include "app/parts/type.h"

#include <QString>
#include <QStringList>

namespace mend::parts {

/// Breaks words into at most `most` lines of that width, between words. What does not fit stays
/// on the last line, so that whoever draws it can shorten it there and nothing is lost unseen.
QStringList brokenLines(const QString& words, Widths& widths, double width, int most);

/// True where the lines hold all of the words and each fits the width.
bool isWhole(const QStringList& lines, const QString& words, Widths& widths, double width);

} // namespace mend::parts
