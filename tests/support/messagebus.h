#pragma once

#include <QDBusConnection>
#include <QProcess>
#include <QString>
#include <QTemporaryDir>

namespace mend::test {

/// A message bus of the test's own, which starts no services: only what the test puts on it is there.
class MessageBus {
public:
    static bool isInstalled();
    MessageBus();
    ~MessageBus();
    /// Empty if the bus did not come.
    const QString& address() const { return m_address; }
    /// A connection of its own, so that a fake service and its customer are two parties.
    QDBusConnection connection(const QString& name);

private:
    QTemporaryDir m_folder;
    QProcess m_daemon;
    QString m_address;
    QStringList m_names;
};

} // namespace mend::test
