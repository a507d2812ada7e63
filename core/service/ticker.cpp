#include "core/service/ticker.h"

#include <algorithm>

namespace mend::service {

using std::chrono::minutes;
using std::chrono::seconds;

Ticker::Ticker(const Clock& clock, QObject* parent) : QObject(parent), m_clock(clock)
{
    m_timer.setSingleShot(true);
    m_timer.setTimerType(Qt::PreciseTimer);
    connect(&m_timer, &QTimer::timeout, this, &Ticker::fire);
    arm();
}

void Ticker::aim(std::optional<Instant> due)
{
    m_due = due;
    arm();
}

void Ticker::showSeconds(bool shown)
{
    if (m_seconds != shown) {
        m_seconds = shown;
        arm();
    }
}

void Ticker::arm()
{
    const Instant now = m_clock.now().utc;
    m_target = std::chrono::floor<minutes>(now) + minutes(1);
    if (m_seconds) {
        m_target = std::chrono::floor<seconds>(now) + seconds(1);
    }
    if (m_due) {
        m_target = std::min(m_target, std::max(*m_due, now));
    }
    m_timer.start(m_target - now);
}

void Ticker::fire()
{
    const Moment now = m_clock.now();
    if (now.utc < m_target) {
        arm(); // a clock that was set back, or a timer that came early: nothing is due yet
        return;
    }
    m_due.reset();
    arm();
    Q_EMIT ticked(now);
}

} // namespace mend::service
