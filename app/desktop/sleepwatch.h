#pragma once

#include "app/desktop/bus.h"

#include <QObject>

namespace mend::desktop {

/// Tells when the machine is about to sleep and when it has woken, so that what closed in
/// between can be told at once (systemd-logind's PrepareForSleep). Where it is absent the clocks still show
/// that time was slept away, only later.
class SleepWatch : public QObject {
    Q_OBJECT
public:
    /// The machine's bus.
    explicit SleepWatch(const QDBusConnection& bus, QObject* parent = nullptr);
    /// Unknown until the bus has answered.
    Offer offer() const { return m_offer; }

Q_SIGNALS:
    void aboutToSleep();
    void woke();

private Q_SLOTS:
    void prepareForSleep(bool isStarting);

private:
    QDBusConnection m_bus;
    Offer m_offer = Offer::Unknown;
};

} // namespace mend::desktop
