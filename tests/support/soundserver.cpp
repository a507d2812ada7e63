#include "tests/support/soundserver.h"

#include <QFile>
#include <QStandardPaths>
#include <QTest>
#include <csignal>
#include <cstring>

namespace mend::test {
namespace {

constexpr int recordedRate = 44100;

void signalTo(const std::unique_ptr<QProcess>& process, int signal)
{
    if (process != nullptr && process->processId() > 0) {
        ::kill(static_cast<pid_t>(process->processId()), signal);
    }
}

} // namespace

bool SoundServer::isInstalled()
{
    for (const char* program : {"pulseaudio", "pactl", "parec"}) {
        if (QStandardPaths::findExecutable(QLatin1String(program)).isEmpty()) {
            return false;
        }
    }
    return true;
}

SoundServer::SoundServer()
{
    qputenv("XDG_RUNTIME_DIR", QFile::encodeName(m_folder.path()));
    for (const char* name :
         {"PULSE_SERVER", "PULSE_RUNTIME_PATH", "PULSE_SINK", "DISPLAY", "DBUS_SESSION_BUS_ADDRESS"}) {
        qunsetenv(name);
    }
}

SoundServer::~SoundServer() { crash(); }

bool SoundServer::start()
{
    if (m_server != nullptr) {
        return true;
    }
    m_server = std::make_unique<QProcess>();
    m_server->setStandardErrorFile(m_folder.filePath(QStringLiteral("server.log")));
    m_server->setStandardOutputFile(QProcess::nullDevice());
    m_server->start(QStringLiteral("pulseaudio"),
                    {QStringLiteral("-n"), QStringLiteral("--daemonize=no"), QStringLiteral("--exit-idle-time=-1"),
                     QStringLiteral("-L"), QStringLiteral("module-native-protocol-unix"), QStringLiteral("-L"),
                     QStringLiteral("module-null-sink sink_name=bench rate=44100")});
    const bool isUp = QTest::qWaitFor([this] { return !control({QStringLiteral("info")}).isEmpty(); }, 10'000);
    mark();
    return isUp;
}

void SoundServer::crash()
{
    if (m_server != nullptr) {
        m_server->kill();
        m_server->waitForFinished(5000);
        m_server.reset();
        m_recorder->waitForFinished(5000);
        // What a crash leaves lying would keep the next one from starting.
        QFile::remove(m_folder.filePath(QStringLiteral("pulse/pid")));
    }
}

void SoundServer::freeze() { signalTo(m_server, SIGSTOP); }

void SoundServer::thaw() { signalTo(m_server, SIGCONT); }

QString SoundServer::control(const QStringList& arguments)
{
    QProcess pactl;
    pactl.start(QStringLiteral("pactl"), arguments);
    if (!pactl.waitForFinished(5000) || pactl.exitCode() != 0) {
        return {};
    }
    return QString::fromUtf8(pactl.readAllStandardOutput()) + QLatin1Char('\n');
}

void SoundServer::listen(const QString& sink)
{
    if (m_recorder != nullptr) {
        m_recorder->kill();
        m_recorder->waitForFinished(5000);
    }
    QFile::remove(recording());
    m_recorder = std::make_unique<QProcess>();
    m_recorder->setStandardOutputFile(recording());
    m_recorder->setStandardErrorFile(QProcess::nullDevice());
    m_recorder->start(QStringLiteral("parec"),
                      {QStringLiteral("-d"), sink + QStringLiteral(".monitor"), QStringLiteral("--format=s16le"),
                       QStringLiteral("--rate=%1").arg(recordedRate), QStringLiteral("--channels=1"),
                       QStringLiteral("--latency-msec=10")});
    m_listenedTo = sink;
}

void SoundServer::mark(const QString& sink)
{
    if (m_recorder == nullptr || m_recorder->state() == QProcess::NotRunning || sink != m_listenedTo) {
        listen(sink);
    }
    const qint64 before = QFile(recording()).size();
    // An idle sink may have two seconds in store before the first sample comes.
    const bool isFlowing = QTest::qWaitFor([&] { return QFile(recording()).size() > before; }, 5000);
    m_mark = isFlowing ? QFile(recording()).size() / 2 * 2 : before;
}

sound::Pcm SoundServer::sinceMark()
{
    QTest::qWait(100); // the last samples are still on their way
    QFile file(recording());
    const bool isOpen = file.open(QIODevice::ReadOnly) && file.seek(m_mark);
    const QByteArray bytes = isOpen ? file.readAll() : QByteArray();
    sound::Pcm pcm{recordedRate, std::vector<std::int16_t>(static_cast<std::size_t>(bytes.size()) / 2)};
    std::memcpy(pcm.samples.data(), bytes.constData(), pcm.samples.size() * 2);
    return pcm;
}

} // namespace mend::test
