#include "app/desktop/notifier.h"

#include <QDBusMessage>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>
#include <QRegularExpression>
#include <QStringList>
#include <QVariantMap>
#include <utility>

namespace mend::desktop {
namespace {

constexpr uchar critical = 2;
constexpr int staysUntilClosed = 0;

QString service() { return QStringLiteral("org.freedesktop.Notifications"); }
QString path() { return QStringLiteral("/org/freedesktop/Notifications"); }

QDBusMessage call(const char* method)
{
    return QDBusMessage::createMethodCall(service(), path(), service(), QLatin1String(method));
}

/// A lock screen shows this: a number may pass, a name may not.
QString onlyNumber(const QString& text)
{
    static const QRegularExpression number(QStringLiteral("^[0-9]{1,12}[0-9X]$"));
    return number.match(text).hasMatch() ? text : QString();
}

} // namespace

Notifier::Notifier(const QDBusConnection& bus, QObject* parent) : QObject(parent), m_bus(bus)
{
    if (!m_bus.isConnected()) {
        m_offer = Offer::Absent;
        return;
    }
    // No service named: naming one would ask the bus for its owner, and wait.
    // The signatures stand as Qt keeps them.
    // clang-format off
    m_bus.connect(QString(), path(), service(), QStringLiteral("NotificationClosed"), this,
                  SLOT(noticeClosed(uint,uint)));
    m_bus.connect(QString(), path(), service(), QStringLiteral("ActionInvoked"), this,
                  SLOT(actionInvoked(uint,QString)));
    // clang-format on
    auto* asked = new QDBusPendingCallWatcher(m_bus.asyncCall(call("GetServerInformation"), answerLimitMs), this);
    connect(asked, &QDBusPendingCallWatcher::finished, this, [this](QDBusPendingCallWatcher* answer) {
        takeOffer(answer->isError() ? Offer::Absent : Offer::Present);
        answer->deleteLater();
    });
}

void Notifier::show(const Notice& notice)
{
    if (!m_bus.isConnected()) {
        return;
    }
    Shown& shown = m_shown[notice.key];
    shown.isWithdrawn = false;
    if (shown.isAsking) {
        shown.next = notice;
    } else {
        ask(notice);
    }
}

void Notifier::ask(const Notice& notice)
{
    Shown& shown = m_shown[notice.key];
    shown.isAsking = true;
    QStringList lines{onlyNumber(notice.pieceNumber), notice.detail};
    lines.removeAll(QString());
    QDBusMessage message = call("Notify");
    message << QStringLiteral("Mendbench") << shown.id << QString() << notice.act << lines.join(QLatin1Char('\n'))
            << QStringList{QStringLiteral("default"), QString()}
            << QVariantMap{{QStringLiteral("urgency"), QVariant::fromValue(critical)}} << staysUntilClosed;
    auto* asked = new QDBusPendingCallWatcher(m_bus.asyncCall(message, answerLimitMs), this);
    connect(asked, &QDBusPendingCallWatcher::finished, this,
            [this, key = notice.key](QDBusPendingCallWatcher* answer) { answered(key, answer); });
}

void Notifier::answered(const QString& key, QDBusPendingCallWatcher* call)
{
    const QDBusPendingReply<uint> reply = *call;
    call->deleteLater();
    takeOffer(reply.isError() ? Offer::Absent : Offer::Present);
    Shown& shown = m_shown[key];
    shown.isAsking = false;
    shown.id = reply.isError() ? 0 : reply.value();
    if (shown.isWithdrawn) {
        close(shown.id);
        m_shown.remove(key);
    } else if (shown.next) {
        ask(*std::exchange(shown.next, std::nullopt));
    }
}

void Notifier::withdraw(const QString& key)
{
    const auto found = m_shown.find(key);
    if (found == m_shown.end()) {
        return;
    }
    if (found->isAsking) {
        found->isWithdrawn = true;
        found->next.reset();
        return;
    }
    close(found->id);
    m_shown.remove(key);
}

void Notifier::close(uint id)
{
    if (id != 0) {
        QDBusMessage message = call("CloseNotification");
        message << id;
        m_bus.send(message);
    }
}

void Notifier::noticeClosed(uint id, uint reason)
{
    Q_UNUSED(reason)
    for (auto entry = m_shown.begin(); entry != m_shown.end(); ++entry) {
        if (entry->id == id && !entry->isAsking) {
            m_shown.remove(QString(entry.key()));
            return;
        }
    }
}

void Notifier::actionInvoked(uint id, const QString& action)
{
    Q_UNUSED(action)
    for (auto entry = m_shown.cbegin(); entry != m_shown.cend(); ++entry) {
        if (entry->id == id) {
            Q_EMIT chosen(entry.key());
            return;
        }
    }
}

void Notifier::takeOffer(Offer offer)
{
    if (std::exchange(m_offer, offer) != offer) {
        Q_EMIT offerChanged(offer);
    }
}

} // namespace mend::desktop
