#pragma once

#include <QFont>
#include <QString>
#include <QStringList>

namespace mend::papers {

/// The faces of a paper: Lato, and others for the scripts it lacks, as far as they are installed.
QFont paperFont(double points, QFont::Weight weight = QFont::Normal);

/// The characters of these words that no installed face can draw, each once, in the order met:
/// they would be empty boxes on the paper.
QStringList undrawable(const QString& words);

/// The words with each such character written as its number, "[U+6F06]", so that nothing on the
/// paper is an empty box and what was meant can still be found.
QString drawable(const QString& words);

} // namespace mend::papers
