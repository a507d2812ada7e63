#pragma once

#include "app/papers/paper.h"
#include "core/base/result.h"

namespace mend::papers {

/// What became of a paper.
struct Written {
    int pages = 0;
    QStringList undrawable; ///< characters that no installed face has; they stand as "[U+6F06]"
};

/// Writes a paper as PDF/A-1b (ISO 19005-1): every face embedded, nothing transparent, its words to
/// be selected and found. The whole file takes the place of an older one, or none of it does.
/// Faults: Unwritable with the path where the file cannot be made there.
Result<Written> writePdf(const Paper& paper, Sheet sheet, const QString& path);

} // namespace mend::papers
