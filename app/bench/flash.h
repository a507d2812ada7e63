#pragma once

#include "core/bench/alert.h"

#include <QtGlobal>
#include <optional>

namespace mend::app {

/// When the border of the block is lit: 1.5 times a second for the highest urgency, once in
/// two seconds for the middle one, half of the time each. Steady for the lowest and where
/// motion is unwelcome. (IEC 60601-1-8 asks 1.4 to 2.8 Hz and 0.4 to 0.8 Hz at 20 to 60 %;
/// WCAG 2.2 allows no more than three flashes in a second.)
class Flash {
public:
    void start(bench::Urgency urgency, bool reduceMotion, qint64 now);
    void stop() { m_urgency.reset(); }
    bool isRunning() const { return m_urgency.has_value(); }
    bool isSteady() const { return m_steady; }

    bool isLit(qint64 now) const;
    /// Milliseconds until it turns; empty where it never does.
    std::optional<qint64> untilTurn(qint64 now) const;

private:
    qint64 half() const;

    std::optional<bench::Urgency> m_urgency;
    bool m_steady = false;
    qint64 m_since = 0;
};

} // namespace mend::app
