#include "app/bench/benchplan.h"

#include <algorithm>

namespace mend::app {

BenchPlan planFor(QSize size, const parts::Look& look, int pieces)
{
    // Heights and widths as if drawn at 96 dpi, so that one ladder serves every screen.
    const double unit = look.measure.exact(1.0);
    const double high = size.height() / unit;
    const double wide = size.width() / unit;
    BenchPlan plan;
    plan.stripRows = std::min(pieces, high >= 1000 ? 8 : 6);
    if (high < 780) {
        plan.stripRows = std::min(pieces, 3);
    }
    plan.photos = high >= 690;
    plan.largeBlock = high >= 620;
    plan.railIsButton = high < 560 || wide < 860;
    plan.oneAtATime = high * 25.4 / 96.0 < 133.0;
    if (plan.oneAtATime) {
        plan.stripRows = 0;
    }
    plan.columns = plan.oneAtATime || wide < 900 ? 1 : wide < 1500 ? 2 : 3;
    return plan;
}

} // namespace mend::app
