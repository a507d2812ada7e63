#pragma once

#include "app/parts/look.h"

#include <QSize>

namespace mend::app {

/// How the Bench shares out its room. As height runs out, in this order: the common strip shows
/// three pieces, photos go, the block takes card height, the rail becomes one button; below
/// 133 mm of height one card stands at a time.
struct BenchPlan {
    int stripRows = 6; ///< pieces in the common strip; 0: no strip
    bool photos = true;
    bool largeBlock = true;
    bool railIsButton = false;
    bool oneAtATime = false;
    int columns = 2; ///< of cards
    bool operator==(const BenchPlan&) const = default;
};

/// `size` is that of the whole window. `pieces` wanting a row of the strip.
BenchPlan planFor(QSize size, const parts::Look& look, int pieces);

} // namespace mend::app
