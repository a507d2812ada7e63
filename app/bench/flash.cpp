#include "app/bench/flash.h"

namespace mend::app {

namespace {
constexpr qint64 halfOfA = 333;  // 1.5 Hz
constexpr qint64 halfOfB = 1000; // 0.5 Hz
} // namespace

void Flash::start(bench::Urgency urgency, bool reduceMotion, qint64 now)
{
    m_steady = reduceMotion || urgency == bench::Urgency::C;
    if (m_urgency != urgency) {
        m_urgency = urgency;
        m_since = now;
    }
}

qint64 Flash::half() const { return m_urgency == bench::Urgency::A ? halfOfA : halfOfB; }

bool Flash::isLit(qint64 now) const
{
    if (!m_urgency) {
        return false;
    }
    return m_steady || (now - m_since) / half() % 2 == 0;
}

std::optional<qint64> Flash::untilTurn(qint64 now) const
{
    if (!m_urgency || m_steady) {
        return std::nullopt;
    }
    return half() - (now - m_since) % half();
}

} // namespace mend::app
