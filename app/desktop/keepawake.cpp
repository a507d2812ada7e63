#include "app/desktop/keepawake.h"

#include <QDBusMessage>
#include <QDBusObjectPath>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>
#include <QVariantMap>
#include <utility>

namespace mend::desktop {
namespace {

constexpr uint suspendAndIdle = 4 | 8; // org.freedesktop.portal.Inhibit, version 3

QString portalService() { return QStringLiteral("org.freedesktop.portal.Desktop"); }
QString saverService() { return QStringLiteral("org.freedesktop.ScreenSaver"); }
QString saverPath() { return QStringLiteral("/org/freedesktop/ScreenSaver"); }

void closePortal(const QDBusConnection& bus, const QString& request)
{
    bus.send(QDBusMessage::createMethodCall(portalService(), request, QStringLiteral("org.freedesktop.portal.Request"),
                                            QStringLiteral("Close")));
}

void closeScreenSaver(const QDBusConnection& bus, uint cookie)
{
    QDBusMessage message =
        QDBusMessage::createMethodCall(saverService(), saverPath(), saverService(), QStringLiteral("UnInhibit"));
    message << cookie;
    bus.send(message);
}

} // namespace

KeepAwake::KeepAwake(const QDBusConnection& session, const QDBusConnection& system, QObject* parent)
    : QObject(parent), m_session(session), m_system(system)
{
}

KeepAwake::~KeepAwake() { giveBack(); }

template <class Answer> void KeepAwake::call(const QDBusConnection& bus, const QDBusMessage& message, Answer answer)
{
    ++m_open;
    auto* asked = new QDBusPendingCallWatcher(bus.asyncCall(message, answerLimitMs), this);
    connect(asked, &QDBusPendingCallWatcher::finished, this,
            [this, answer, turn = m_turn](QDBusPendingCallWatcher* reply) {
                const bool isWanted = turn == m_turn;
                if (isWanted) {
                    --m_open;
                }
                answer(*reply, isWanted);
                if (isWanted) {
                    answered();
                }
                reply->deleteLater();
            });
}

void KeepAwake::hold(const QString& reason)
{
    if (m_state == State::Asking || m_state == State::Held) {
        return;
    }
    ++m_turn;
    m_open = 0;
    m_reason = reason;
    setState(State::Asking);
    if (m_session.isConnected()) {
        askPortal();
    } else if (m_system.isConnected()) {
        askLogin();
    } else {
        setState(State::Refused);
    }
}

void KeepAwake::release()
{
    ++m_turn;
    giveBack();
    setState(State::Released);
}

void KeepAwake::askPortal()
{
    QDBusMessage message =
        QDBusMessage::createMethodCall(portalService(), QStringLiteral("/org/freedesktop/portal/desktop"),
                                       QStringLiteral("org.freedesktop.portal.Inhibit"), QStringLiteral("Inhibit"));
    message << QString() << suspendAndIdle << QVariantMap{{QStringLiteral("reason"), m_reason}};
    call(m_session, message, [this](const QDBusPendingReply<QDBusObjectPath>& reply, bool isWanted) {
        if (reply.isError()) {
            if (isWanted) {
                askScreenSaver();
                askLogin();
            }
        } else if (isWanted) {
            m_portalRequest = reply.value().path();
            m_cover = {true, true};
        } else {
            closePortal(m_session, reply.value().path());
        }
    });
}

void KeepAwake::askScreenSaver()
{
    QDBusMessage message =
        QDBusMessage::createMethodCall(saverService(), saverPath(), saverService(), QStringLiteral("Inhibit"));
    message << QStringLiteral("Mendbench") << m_reason;
    call(m_session, message, [this](const QDBusPendingReply<uint>& reply, bool isWanted) {
        if (reply.isError()) {
            return;
        }
        if (isWanted) {
            m_cookie = reply.value();
            m_hasCookie = true;
            m_cover.isIdleHeld = true;
        } else {
            closeScreenSaver(m_session, reply.value());
        }
    });
}

void KeepAwake::askLogin()
{
    if (!m_system.isConnected()) {
        return;
    }
    QDBusMessage message = QDBusMessage::createMethodCall(
        QStringLiteral("org.freedesktop.login1"), QStringLiteral("/org/freedesktop/login1"),
        QStringLiteral("org.freedesktop.login1.Manager"), QStringLiteral("Inhibit"));
    message << QStringLiteral("sleep:idle") << QStringLiteral("Mendbench") << m_reason << QStringLiteral("block");
    call(m_system, message, [this](const QDBusPendingReply<QDBusUnixFileDescriptor>& reply, bool isWanted) {
        if (!reply.isError() && isWanted) {
            m_lock = reply.value(); // an unwanted one closes by itself
            m_cover = {true, true};
        }
    });
}

void KeepAwake::giveBack()
{
    if (!m_portalRequest.isEmpty()) {
        closePortal(m_session, std::exchange(m_portalRequest, QString()));
    }
    if (std::exchange(m_hasCookie, false)) {
        closeScreenSaver(m_session, m_cookie);
    }
    m_lock = QDBusUnixFileDescriptor();
    m_cover = {};
}

void KeepAwake::answered()
{
    if (m_open == 0) {
        setState(m_cover == Cover{} ? State::Refused : State::Held);
    }
}

void KeepAwake::setState(State state)
{
    if (std::exchange(m_state, state) != state) {
        Q_EMIT stateChanged(state);
    }
}

} // namespace mend::desktop
