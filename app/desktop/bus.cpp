#include "app/desktop/bus.h"

#include <QFileInfo>

namespace mend::desktop {
namespace {

QDBusConnection noBus() { return QDBusConnection(QStringLiteral("mendbench-no-bus")); }

} // namespace

QDBusConnection sessionBus()
{
    // Without this look the bus library would try to launch a bus of its own, and wait for it.
    const QString socket = qEnvironmentVariable("XDG_RUNTIME_DIR") + QStringLiteral("/bus");
    const bool isThere = qEnvironmentVariableIsSet("DBUS_SESSION_BUS_ADDRESS") || QFileInfo::exists(socket);
    return isThere ? QDBusConnection::sessionBus() : noBus();
}

QDBusConnection systemBus()
{
    const bool isThere = qEnvironmentVariableIsSet("DBUS_SYSTEM_BUS_ADDRESS") ||
                         QFileInfo::exists(QStringLiteral("/run/dbus/system_bus_socket"));
    return isThere ? QDBusConnection::systemBus() : noBus();
}

} // namespace mend::desktop
