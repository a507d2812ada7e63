#pragma once

#include "core/base/time.h"

#include <QString>
#include <vector>

namespace mend::test {

/// A window whose latest start went by with no hands on it.
struct Passed {
    QString piece;
    QString window; ///< "wipeBack#1"
    Instant since;  ///< it was there from here on
    Instant latestStart;
};

struct CostlyWindows {
    int seen = 0; ///< in all
    std::vector<Passed> passed;
    bool isRead = false; ///< the file could be read
};

/// Walks through the day in that file as if it were told anew, second by second, and looks at every window of
/// which a miss costs an afternoon or more. It knows nothing of alerts.
CostlyWindows costlyWindows(const QString& file, InstantRange day);

} // namespace mend::test
