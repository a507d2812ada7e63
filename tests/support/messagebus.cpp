#include "tests/support/messagebus.h"

#include <QFile>
#include <QStandardPaths>

namespace mend::test {

bool MessageBus::isInstalled() { return !QStandardPaths::findExecutable(QStringLiteral("dbus-daemon")).isEmpty(); }

MessageBus::MessageBus()
{
    QFile configuration(m_folder.filePath(QStringLiteral("bus.conf")));
    if (!configuration.open(QIODevice::WriteOnly)) {
        return;
    }
    configuration.write("<!DOCTYPE busconfig PUBLIC \"-//freedesktop//DTD D-Bus Bus Configuration 1.0//EN\" "
                        "\"http://www.freedesktop.org/standards/dbus/1.0/busconfig.dtd\">\n"
                        "<busconfig><type>session</type><listen>unix:dir=" +
                        QFile::encodeName(m_folder.path()) +
                        "</listen><policy context=\"default\"><allow send_destination=\"*\"/>"
                        "<allow eavesdrop=\"true\"/>"
                        "<allow own=\"*\"/></policy></busconfig>\n");
    configuration.close();
    m_daemon.start(QStringLiteral("dbus-daemon"), {QStringLiteral("--config-file=") + configuration.fileName(),
                                                   QStringLiteral("--print-address"), QStringLiteral("--nofork")});
    while (!m_daemon.canReadLine() && m_daemon.waitForReadyRead(5000)) {}
    m_address = QString::fromUtf8(m_daemon.readLine()).trimmed();
}

MessageBus::~MessageBus()
{
    for (const QString& name : m_names) {
        QDBusConnection::disconnectFromBus(name);
    }
    m_daemon.kill();
    m_daemon.waitForFinished(5000);
}

QDBusConnection MessageBus::connection(const QString& name)
{
    const QString unique = name + QString::number(reinterpret_cast<quintptr>(this));
    m_names << unique;
    return QDBusConnection::connectToBus(m_address, unique);
}

} // namespace mend::test
