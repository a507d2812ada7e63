#pragma once

#include "app/parts/actview.h"

#include <QStringList>

namespace mend::app {

/// Whether one of the languages of the tests is spoken.
bool isTestLanguage();

/// The words of a view that never passed through a translation: in the languages of the tests (en_XA, he_XB) every
/// letter of a translated word is another, so that a plain one has escaped. Names, and what comes from the rule files
/// or from the samples, is not translated and not looked at. Empty in any other language.
QStringList escapedFrom(const parts::ActView& view);

} // namespace mend::app
