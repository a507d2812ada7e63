#include "core/service/heartbeat.h"

#include "core/base/clockstep.h"

#include <algorithm>

namespace mend::service {

namespace {
/// The one timer fires at least once a minute; who was away for longer slept.
constexpr Span longestSilence = std::chrono::seconds(90);
} // namespace

Heartbeat::Heartbeat(const Clock& clock, BenchService& bench, AlertService& alerts, LastSeen lastSeen, QObject* parent)
    : QObject(parent), m_clock(clock), m_bench(bench), m_alerts(alerts), m_lastSeen(std::move(lastSeen)),
      m_ticker(clock), m_before(clock.now())
{
    connect(&m_ticker, &Ticker::ticked, this, &Heartbeat::tick);
    connect(&m_bench, &BenchService::benchChanged, this, &Heartbeat::lookAgain);
}

void Heartbeat::begin()
{
    m_before = m_clock.now();
    const Instant now = m_before.utc;
    if (const auto last = m_lastSeen.read()) {
        if (*last > now) {
            Q_EMIT clockBehind(*last, now);
        } else if (now - *last > longestSilence) {
            m_alerts.slept({*last, now});
            Q_EMIT sleptThrough({*last, now});
        }
    }
    lookNow();
}

void Heartbeat::tick(const Moment& now)
{
    const Moment before = std::exchange(m_before, now);
    m_ticking = true;
    if (const auto step = clockStep(before, now)) {
        m_bench.stepClock(*step);
        Q_EMIT clockStepped(*step);
    }
    if (elapsed(before, now) > longestSilence) {
        const InstantRange asleep{now.utc - elapsed(before, now), now.utc};
        m_alerts.slept(asleep);
        Q_EMIT sleptThrough(asleep);
    }
    if (!m_touched || now.utc - *m_touched >= std::chrono::minutes(1) || now.utc < *m_touched) {
        m_touched = now.utc;
        m_lastSeen.touch(now.utc);
    }
    m_bench.refresh(now.utc);
    m_ticking = false;
    m_alerts.look(now.utc);
    aim();
    Q_EMIT ticked(now.utc);
}

void Heartbeat::lookAgain()
{
    if (m_ticking) {
        return;
    }
    m_alerts.look(m_clock.now().utc);
    aim();
}

void Heartbeat::aim()
{
    const Instant now = m_clock.now().utc;
    std::optional<Instant> due = m_bench.nextChange(now);
    if (m_alerts.next() && (!due || *m_alerts.next() < *due)) {
        due = m_alerts.next();
    }
    m_ticker.aim(due);
}

} // namespace mend::service
