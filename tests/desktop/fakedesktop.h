#pragma once

#include <QDBusConnection>
#include <QDBusContext>
#include <QDBusObjectPath>
#include <QDBusUnixFileDescriptor>
#include <QObject>
#include <QStringList>
#include <QVariantMap>
#include <fcntl.h>
#include <unistd.h>

namespace mend::test {

/// Stands in for the desktop's notice service and writes down what it is asked.
class FakeNotices : public QObject {
    Q_OBJECT
    Q_CLASSINFO("D-Bus Interface", "org.freedesktop.Notifications")
public:
    struct Asked {
        uint replaces = 0;
        QString summary;
        QString body;
        QVariantMap hints;
        int expires = -1;
    };
    QList<Asked> asked;
    QList<uint> closed;

    explicit FakeNotices(QDBusConnection bus)
    {
        bus.registerObject(QStringLiteral("/org/freedesktop/Notifications"), this,
                           QDBusConnection::ExportAllSlots | QDBusConnection::ExportAllSignals);
        bus.registerService(QStringLiteral("org.freedesktop.Notifications"));
    }

public Q_SLOTS:
    uint Notify(const QString& program, uint replaces, const QString& icon, const QString& summary, const QString& body,
                const QStringList& actions, const QVariantMap& hints, int expires)
    {
        Q_UNUSED(program)
        Q_UNUSED(icon)
        Q_UNUSED(actions)
        asked.append({replaces, summary, body, hints, expires});
        return replaces != 0 ? replaces : static_cast<uint>(asked.size() + 40);
    }
    void CloseNotification(uint id) { closed.append(id); }
    QString GetServerInformation() { return QStringLiteral("fake"); }

Q_SIGNALS:
    void NotificationClosed(uint id, uint reason);
    void ActionInvoked(uint id, const QString& action);
};

/// Stands in for the portal's inhibit call and for its request objects.
class FakePortal : public QObject, protected QDBusContext {
    Q_OBJECT
    Q_CLASSINFO("D-Bus Interface", "org.freedesktop.portal.Inhibit")
public:
    QList<uint> flags;
    QString reason;
    int refusals = 0; ///< so many calls are refused

    explicit FakePortal(QDBusConnection bus)
    {
        bus.registerObject(QStringLiteral("/org/freedesktop/portal/desktop"), this, QDBusConnection::ExportAllSlots);
        bus.registerService(QStringLiteral("org.freedesktop.portal.Desktop"));
    }

public Q_SLOTS:
    QDBusObjectPath Inhibit(const QString& window, uint what, const QVariantMap& options)
    {
        Q_UNUSED(window)
        if (refusals > 0) {
            --refusals;
            sendErrorReply(QDBusError::AccessDenied, QStringLiteral("no"));
            return QDBusObjectPath(QStringLiteral("/"));
        }
        flags.append(what);
        reason = options.value(QStringLiteral("reason")).toString();
        return QDBusObjectPath(QStringLiteral("/org/freedesktop/portal/desktop/request/%1").arg(flags.size()));
    }
};

class FakeRequest : public QObject {
    Q_OBJECT
    Q_CLASSINFO("D-Bus Interface", "org.freedesktop.portal.Request")
public:
    int closed = 0;
    FakeRequest(QDBusConnection bus, int number)
    {
        bus.registerObject(QStringLiteral("/org/freedesktop/portal/desktop/request/%1").arg(number), this,
                           QDBusConnection::ExportAllSlots);
    }
public Q_SLOTS:
    void Close() { ++closed; }
};

class FakeScreenSaver : public QObject {
    Q_OBJECT
    Q_CLASSINFO("D-Bus Interface", "org.freedesktop.ScreenSaver")
public:
    QList<uint> held;
    explicit FakeScreenSaver(QDBusConnection bus)
    {
        bus.registerObject(QStringLiteral("/org/freedesktop/ScreenSaver"), this, QDBusConnection::ExportAllSlots);
        bus.registerService(QStringLiteral("org.freedesktop.ScreenSaver"));
    }
public Q_SLOTS:
    uint Inhibit(const QString& program, const QString& reason)
    {
        Q_UNUSED(program)
        Q_UNUSED(reason)
        held.append(7);
        return 7;
    }
    void UnInhibit(uint cookie) { held.removeOne(cookie); }
};

/// Stands in for logind: its lock is the writing end of a pipe, so its release can be seen.
class FakeLogin : public QObject {
    Q_OBJECT
    Q_CLASSINFO("D-Bus Interface", "org.freedesktop.login1.Manager")
public:
    QString what;
    QString mode;
    int readEnd = -1;

    explicit FakeLogin(QDBusConnection bus)
    {
        bus.registerObject(QStringLiteral("/org/freedesktop/login1"), this,
                           QDBusConnection::ExportAllSlots | QDBusConnection::ExportAllSignals);
        bus.registerService(QStringLiteral("org.freedesktop.login1"));
    }
    ~FakeLogin() override { close(readEnd); }
    bool isHeld() const
    {
        char byte = 0;
        return readEnd >= 0 && read(readEnd, &byte, 1) != 0; // end of file once every writer has let go
    }

public Q_SLOTS:
    QDBusUnixFileDescriptor Inhibit(const QString& kinds, const QString& who, const QString& why, const QString& how)
    {
        Q_UNUSED(who)
        Q_UNUSED(why)
        what = kinds;
        mode = how;
        int ends[2] = {-1, -1};
        if (pipe2(ends, O_CLOEXEC | O_NONBLOCK) != 0) {
            return {};
        }
        readEnd = ends[0];
        QDBusUnixFileDescriptor lock;
        lock.giveFileDescriptor(ends[1]);
        return lock;
    }

Q_SIGNALS:
    void PrepareForSleep(bool isStarting);
};

} // namespace mend::test
