#pragma once

#include "app/parts/actview.h"

#include <QStringList>
#include <vector>

namespace mend::app {

/// What is wrong with the spots and the words of a window, one line each: targets too small or
/// too near, names missing, words cut off or laid over each other, contrast too weak.
struct Walk {
    QStringList faults;
    int acts = 0;      ///< spots that do something
    int benchActs = 0; ///< of them those of the bench
    int texts = 0;
    int pairs = 0;            ///< pairs of colours measured
    bool wholeLabels = false; ///< wanted: no words on a button of the bench are shortened

    void over(const parts::ActView& view, const parts::Look& look);
    /// Gaps between the spots of several views of one window.
    void gaps(const std::vector<const parts::ActView*>& views, const parts::Look& look);
};

} // namespace mend::app
