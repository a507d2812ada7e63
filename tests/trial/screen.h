#pragma once

#include <QPoint>
#include <QProcess>
#include <QSize>
#include <QString>

namespace mend::test {

/// An X server that nobody sees, of the test's own, and a hand that clicks on it.
class Screen {
public:
    static bool isInstalled();

    explicit Screen(QSize size);
    ~Screen();
    /// ":7"; empty if the server did not come.
    const QString& display() const { return m_display; }
    /// Moves the pointer there, presses and lets go, as the X server tells any mouse.
    bool click(QPoint at) const;
    /// What xdotool answers; empty where it fails.
    QByteArray ask(const QStringList& arguments) const;

private:
    QProcess m_server;
    QString m_display;
};

} // namespace mend::test
