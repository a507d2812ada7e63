#include "app/desktop/sleepwatch.h"

#include <QDBusMessage>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>

namespace mend::desktop {

SleepWatch::SleepWatch(const QDBusConnection& bus, QObject* parent) : QObject(parent), m_bus(bus)
{
    if (!m_bus.isConnected()) {
        m_offer = Offer::Absent;
        return;
    }
    // No service named: naming one would ask the bus for its owner, and wait.
    m_bus.connect(QString(), QStringLiteral("/org/freedesktop/login1"),
                  QStringLiteral("org.freedesktop.login1.Manager"), QStringLiteral("PrepareForSleep"), this,
                  SLOT(prepareForSleep(bool)));
    QDBusMessage message =
        QDBusMessage::createMethodCall(QStringLiteral("org.freedesktop.DBus"), QStringLiteral("/org/freedesktop/DBus"),
                                       QStringLiteral("org.freedesktop.DBus"), QStringLiteral("NameHasOwner"));
    message << QStringLiteral("org.freedesktop.login1");
    auto* asked = new QDBusPendingCallWatcher(m_bus.asyncCall(message), this);
    connect(asked, &QDBusPendingCallWatcher::finished, this, [this](QDBusPendingCallWatcher* answer) {
        const QDBusPendingReply<bool> reply = *answer;
        m_offer = reply.isValid() && reply.value() ? Offer::Present : Offer::Absent;
        answer->deleteLater();
    });
}

void SleepWatch::prepareForSleep(bool isStarting)
{
    if (isStarting) {
        Q_EMIT aboutToSleep();
    } else {
        Q_EMIT woke();
    }
}

} // namespace mend::desktop
