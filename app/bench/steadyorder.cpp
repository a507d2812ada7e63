#include "app/bench/steadyorder.h"

#include <algorithm>

namespace mend::app {

namespace {
bool holds(const std::vector<PieceId>& pieces, PieceId piece)
{
    return std::ranges::find(pieces, piece) != pieces.end();
}
} // namespace

void SteadyOrder::want(std::vector<PieceId> order, bool rises)
{
    m_wanted = std::move(order);
    m_rises = m_rises || rises;
    std::erase_if(m_order, [this](PieceId piece) { return !holds(m_wanted, piece); });
    for (const PieceId piece : m_wanted) {
        if (!holds(m_order, piece)) {
            m_order.push_back(piece);
        }
    }
    m_waiting = m_order != m_wanted;
}

bool SteadyOrder::settle(qint64 sinceLastTouch)
{
    if (!m_waiting || (sinceLastTouch < rest && !m_rises)) {
        return false;
    }
    m_order = m_wanted;
    m_waiting = false;
    m_rises = false;
    return true;
}

} // namespace mend::app
