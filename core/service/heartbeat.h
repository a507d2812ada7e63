#pragma once

#include "core/base/time.h"
#include "core/service/alertservice.h"
#include "core/service/benchservice.h"
#include "core/service/lastseen.h"
#include "core/service/ticker.h"

#include <QObject>

namespace mend::service {

/// Keeps the bench going: at each tick it compares the clocks, looks at the bench and its
/// alerts, and aims the one timer at the next instant that matters to any of them.
class Heartbeat : public QObject {
    Q_OBJECT

public:
    /// `lastSeen`: when the program last ran, to tell what was missed; `clock` outlives this.
    Heartbeat(const Clock& clock, BenchService& bench, AlertService& alerts, LastSeen lastSeen,
              QObject* parent = nullptr);

    /// The first look: reports what was missed since the program last ran.
    void begin();
    /// Looks at once, as at a tick: the clock was set, or the machine has woken.
    void lookNow() { tick(m_clock.now()); }
    Ticker& ticker() { return m_ticker; }

Q_SIGNALS:
    /// The wall clock was set; windows keep real elapsed time.
    void clockStepped(mend::Span amount);
    /// The wall clock is behind the time at which the program last ran: a person has to say which is right.
    void clockBehind(mend::Instant lastSeen, mend::Instant now);
    /// Nobody was looking from then to then: heated places have to be asked about.
    void sleptThrough(mend::InstantRange asleep);
    void ticked(mend::Instant now);

private:
    void tick(const Moment& now);
    void lookAgain();
    void aim();

    const Clock& m_clock;
    BenchService& m_bench;
    AlertService& m_alerts;
    LastSeen m_lastSeen;
    Ticker m_ticker;
    Moment m_before;
    std::optional<Instant> m_touched;
    bool m_ticking = false; ///< the tick itself looks once, whatever it changes
};

} // namespace mend::service
