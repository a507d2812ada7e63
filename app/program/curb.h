#pragma once

#include <QString>

namespace mend::app {

/// Whether a spot of the window only looks or leads somewhere, and so may still be tapped while nothing can be
/// written. A key that is not known here counts as one that writes.
bool onlyLooks(const QString& key);

} // namespace mend::app
