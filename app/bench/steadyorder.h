#pragma once

#include "core/base/id.h"

#include <QtGlobal>
#include <vector>

namespace mend::app {

/// Keeps the cards where they are while somebody works with them: a new order waits until
/// two seconds after the last touch. Pieces that are new or gone are let in and out at once
/// at the end, so that nothing else moves.
class SteadyOrder {
public:
    /// The order the bench wants. `rises`: an alert of the highest urgency has come up, which may not wait.
    void want(std::vector<PieceId> order, bool rises);
    /// Takes the wanted order where nobody has touched the screen for long enough. True where it changed.
    bool settle(qint64 sinceLastTouch);
    /// How long until `settle` is worth asking; empty order changes: none.
    bool isWaiting() const { return m_waiting; }
    const std::vector<PieceId>& order() const { return m_order; }

    static constexpr qint64 rest = 2000; ///< milliseconds

private:
    std::vector<PieceId> m_order;
    std::vector<PieceId> m_wanted;
    bool m_waiting = false;
    bool m_rises = false;
};

} // namespace mend::app
