#pragma once

#include "core/base/clock.h"

#include <QObject>
#include <QTimer>
#include <optional>

namespace mend::service {

/// The one tick of the program: a single timer, aimed anew at each firing at the earliest
/// instant anybody asked for, and at the next minute where nobody did. Never early.
class Ticker : public QObject {
    Q_OBJECT

public:
    explicit Ticker(const Clock& clock, QObject* parent = nullptr);

    /// The next instant at which something is due; asked again after every tick.
    void aim(std::optional<Instant> due);
    /// Whether a figure with seconds is on the screen: then it also ticks at each second's edge.
    void showSeconds(bool shown);
    Instant aimedAt() const { return m_target; }

Q_SIGNALS:
    void ticked(mend::Moment now);

private:
    void arm();
    void fire();

    const Clock& m_clock;
    QTimer m_timer;
    std::optional<Instant> m_due;
    Instant m_target;
    bool m_seconds = false;
};

} // namespace mend::service
