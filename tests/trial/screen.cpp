#include "tests/trial/screen.h"

#include <QProcessEnvironment>
#include <QStandardPaths>

namespace mend::test {

bool Screen::isInstalled()
{
    return !QStandardPaths::findExecutable(QStringLiteral("Xvfb")).isEmpty() &&
           !QStandardPaths::findExecutable(QStringLiteral("xdotool")).isEmpty();
}

Screen::Screen(QSize size)
{
    // It chooses a free number by itself and says which.
    m_server.setStandardErrorFile(QProcess::nullDevice());
    m_server.start(QStringLiteral("Xvfb"),
                   {QStringLiteral("-displayfd"), QStringLiteral("1"), QStringLiteral("-screen"), QStringLiteral("0"),
                    QStringLiteral("%1x%2x24").arg(size.width()).arg(size.height()), QStringLiteral("-nolisten"),
                    QStringLiteral("tcp")});
    QByteArray number;
    while (!number.contains('\n') && m_server.waitForReadyRead(20'000)) {
        number += m_server.readAllStandardOutput();
    }
    if (number.contains('\n')) {
        m_display = QLatin1Char(':') + QString::fromLatin1(number.trimmed());
    }
}

Screen::~Screen()
{
    m_server.terminate();
    if (!m_server.waitForFinished(5000)) {
        m_server.kill();
        m_server.waitForFinished(5000);
    }
}

QByteArray Screen::ask(const QStringList& arguments) const
{
    QProcess hand;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("DISPLAY"), m_display);
    hand.setProcessEnvironment(environment);
    hand.start(QStringLiteral("xdotool"), arguments);
    const bool good = hand.waitForFinished(10'000) && hand.exitStatus() == QProcess::NormalExit && hand.exitCode() == 0;
    return good ? hand.readAllStandardOutput() + '\n' : QByteArray();
}

bool Screen::click(QPoint at) const
{
    return !ask({QStringLiteral("mousemove"), QString::number(at.x()), QString::number(at.y()),
                 QStringLiteral("mousedown"), QStringLiteral("1"), QStringLiteral("sleep"), QStringLiteral("0.05"),
                 QStringLiteral("mouseup"), QStringLiteral("1")})
                .isEmpty();
}

} // namespace mend::test
