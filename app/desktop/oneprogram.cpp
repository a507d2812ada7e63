#include "app/desktop/oneprogram.h"

#include <QDeadlineTimer>
#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLocalSocket>
#include <QStandardPaths>
#include <QTimer>
#include <algorithm>
#include <array>
#include <cerrno>
#include <fcntl.h>
#include <sys/file.h>
#include <thread>
#include <unistd.h>
#include <utility>

namespace mend::desktop {
namespace {

constexpr qint64 longestKnock = 65'536;
constexpr int visitorLimitMs = 2000;
constexpr std::array<const char*, 5> answerNames = {"raised", "changed", "refused", "no-answer", "leaving"};

QString socketIn(const QString& folder) { return folder + QStringLiteral("/mendbench.socket"); }

QByteArray toLine(const Knock& knock)
{
    const QJsonObject json{{QStringLiteral("file"), knock.file},
                           {QStringLiteral("reason"), knock.reason},
                           {QStringLiteral("token"), knock.activationToken}};
    return QJsonDocument(json).toJson(QJsonDocument::Compact) + '\n';
}

Knock knockFrom(const QJsonObject& json)
{
    return {json.value(QStringLiteral("file")).toString(), json.value(QStringLiteral("reason")).toString(),
            json.value(QStringLiteral("token")).toString()};
}

KnockAnswer answerFrom(const QByteArray& line)
{
    const auto found = std::find(answerNames.begin(), answerNames.end(), line.trimmed());
    return found == answerNames.end() ? KnockAnswer::NoAnswer : static_cast<KnockAnswer>(found - answerNames.begin());
}

} // namespace

OneProgram::OneProgram(QString folder, QObject* parent) : QObject(parent), m_folder(std::move(folder))
{
    m_server.setSocketOptions(QLocalServer::UserAccessOption);
    connect(&m_server, &QLocalServer::newConnection, this, &OneProgram::welcome);
}

OneProgram::~OneProgram() { leave(); }

void OneProgram::leave()
{
    m_server.close();
    if (m_lock >= 0) {
        close(std::exchange(m_lock, -1));
    }
}

QString OneProgram::runtimeFolder() { return QStandardPaths::writableLocation(QStandardPaths::RuntimeLocation); }

Outcome OneProgram::claim()
{
    // Closed on exec: a child that outlives us must not keep the lock.
    const QByteArray path = QFile::encodeName(m_folder + QStringLiteral("/mendbench.lock"));
    m_lock = open(path.constData(), O_CREAT | O_RDWR | O_CLOEXEC, 0600);
    if (m_lock < 0) {
        return Fault{FaultKind::Unwritable, "no lock file in the runtime folder"};
    }
    if (flock(m_lock, LOCK_EX | LOCK_NB) != 0) {
        const bool isTaken = errno == EWOULDBLOCK;
        close(m_lock);
        m_lock = -1;
        return isTaken ? Fault{FaultKind::Busy, "another program of this user runs"}
                       : Fault{FaultKind::Unwritable, "the runtime folder takes no lock"};
    }
    QLocalServer::removeServer(socketIn(m_folder)); // ours to remove: we hold the lock
    if (!m_server.listen(socketIn(m_folder))) {
        return Fault{FaultKind::Unwritable, "no socket in the runtime folder"};
    }
    return Done{};
}

void OneProgram::welcome()
{
    while (QLocalSocket* visitor = m_server.nextPendingConnection()) {
        connect(visitor, &QLocalSocket::readyRead, this, [this, visitor] { answer(visitor); });
        connect(visitor, &QLocalSocket::disconnected, visitor, &QObject::deleteLater);
        QTimer::singleShot(visitorLimitMs, visitor, [visitor] { visitor->abort(); });
        answer(visitor);
    }
}

void OneProgram::answer(QLocalSocket* visitor)
{
    if (!visitor->canReadLine()) {
        if (visitor->bytesAvailable() > longestKnock) {
            visitor->abort();
        }
        return;
    }
    const QJsonDocument json = QJsonDocument::fromJson(visitor->readLine(longestKnock));
    const KnockAnswer said = json.isObject() && m_door ? m_door(knockFrom(json.object())) : KnockAnswer::Refused;
    visitor->write(answerNames.at(static_cast<std::size_t>(said)));
    visitor->write("\n");
    visitor->disconnectFromServer();
}

KnockAnswer OneProgram::knock(const QString& folder, const Knock& knock, std::chrono::milliseconds limit)
{
    const QDeadlineTimer deadline(limit);
    const auto left = [&deadline] { return static_cast<int>(std::max<qint64>(1, deadline.remainingTime())); };
    QLocalSocket socket;
    // The first may hold its lock a moment before its door is open.
    while (socket.state() != QLocalSocket::ConnectedState && !deadline.hasExpired()) {
        socket.connectToServer(socketIn(folder));
        if (!socket.waitForConnected(left())) {
            socket.abort();
            std::this_thread::sleep_for(std::chrono::milliseconds(20));
        }
    }
    if (socket.state() != QLocalSocket::ConnectedState) {
        return KnockAnswer::NoAnswer;
    }
    socket.write(toLine(knock));
    while (socket.state() == QLocalSocket::ConnectedState && !socket.canReadLine() && !deadline.hasExpired()) {
        socket.waitForReadyRead(left());
    }
    return answerFrom(socket.canReadLine() ? socket.readLine() : QByteArray());
}

} // namespace mend::desktop
