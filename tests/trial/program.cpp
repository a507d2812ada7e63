#include "tests/trial/program.h"

#include <QDir>
#include <QDirIterator>
#include <QElapsedTimer>
#include <QProcessEnvironment>
#include <QTest>
#include <QUrl>
#include <algorithm>

namespace mend::test {

namespace {

/// "act KEY X Y WIDTH HEIGHT NAME" or the same with "words".
Spot spotFrom(const QString& line)
{
    Spot spot;
    spot.acts = line.section(QLatin1Char(' '), 0, 0) == QLatin1String("act");
    spot.key = QUrl::fromPercentEncoding(line.section(QLatin1Char(' '), 1, 1).toLatin1());
    const auto figure = [&](int at) { return line.section(QLatin1Char(' '), at, at).toInt(); };
    spot.rect = QRect(figure(2), figure(3), figure(4), figure(5));
    spot.name = line.section(QLatin1Char(' '), 6);
    return spot;
}

} // namespace

Program::Program(QString display) : m_display(std::move(display)) {}

Program::~Program() { kill(); }

QProcessEnvironment Program::environment() const
{
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("HOME"), m_home.path());
    for (const char* kind : {"DATA", "CONFIG", "CACHE", "STATE"}) {
        const QString name = QStringLiteral("XDG_%1_HOME").arg(QLatin1String(kind));
        environment.insert(name, m_home.filePath(QLatin1String(kind).toString().toLower()));
    }
    const QString runtime = m_home.filePath(QStringLiteral("run"));
    QDir().mkpath(runtime);
    QFile::setPermissions(runtime, QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
    environment.insert(QStringLiteral("XDG_RUNTIME_DIR"), runtime);
    // A sound server of the test stands in the runtime folder of the test, not in this one.
    environment.insert(QStringLiteral("PULSE_RUNTIME_PATH"),
                       qEnvironmentVariable("XDG_RUNTIME_DIR") + QStringLiteral("/pulse"));
    environment.insert(QStringLiteral("DISPLAY"), m_display);
    environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("xcb"));
    environment.insert(QStringLiteral("LC_ALL"), QStringLiteral("C.UTF-8"));
    environment.remove(QStringLiteral("QT_SCALE_FACTOR"));
    return environment;
}

void Program::start(const QStringList& arguments)
{
    m_pending.clear();
    m_inBlock = false;
    m_said.clear();
    m_block.clear();
    m_spots.clear();
    m_process = std::make_unique<QProcess>();
    m_process->setProcessEnvironment(environment());
    m_process->setProcessChannelMode(QProcess::ForwardedErrorChannel);
    m_process->start(QStringLiteral(MEND_PROGRAM), QStringList{QStringLiteral("--say-acts")} + arguments);
}

void Program::kill()
{
    if (m_process) {
        m_process->kill(); // SIGKILL
        m_process->waitForFinished(5000);
        m_process.reset();
    }
}

void Program::read()
{
    if (!m_process) {
        return;
    }
    m_pending += m_process->readAllStandardOutput();
    for (qsizetype end = m_pending.indexOf('\n'); end >= 0; end = m_pending.indexOf('\n')) {
        const QString line = QString::fromUtf8(m_pending.left(end));
        m_pending.remove(0, end + 1);
        if (line == QLatin1String("acts")) {
            m_block.clear();
            m_inBlock = true;
        } else if (line == QLatin1String("end")) {
            m_spots = std::exchange(m_block, {});
            m_inBlock = false;
        } else if (m_inBlock) {
            m_block.push_back(spotFrom(line));
        } else {
            m_said << line;
        }
    }
}

std::optional<Spot> Program::spot(const QString& words, bool acts)
{
    read();
    const auto found = std::ranges::find_if(
        m_spots, [&](const Spot& each) { return each.acts == acts && each.name.startsWith(words); });
    return found == m_spots.end() ? std::nullopt : std::optional(*found);
}

std::optional<Spot> Program::waitForKey(const QString& begin, int milliseconds)
{
    std::optional<Spot> found;
    static_cast<void>(QTest::qWaitFor(
        [&] {
            read();
            const auto spot = std::ranges::find_if(
                m_spots, [&](const Spot& each) { return each.acts && each.key.startsWith(begin); });
            found = spot == m_spots.end() ? std::nullopt : std::optional(*spot);
            return found || !isRunning();
        },
        milliseconds));
    return found;
}

const std::vector<Spot>& Program::spots()
{
    read();
    return m_spots;
}

void Program::tell(const QByteArray& line)
{
    if (m_process) {
        m_process->write(line + '\n');
    }
}

QStringList Program::takeSaid()
{
    read();
    return std::exchange(m_said, {});
}

void Program::askToEnd()
{
    if (m_process) {
        m_process->terminate(); // SIGTERM
    }
}

bool Program::waitUntilEnded(int milliseconds, int* code)
{
    const bool ended = QTest::qWaitFor([&] { return !isRunning(); }, milliseconds);
    if (ended && code && m_process) {
        *code = m_process->exitStatus() == QProcess::NormalExit ? m_process->exitCode() : -1;
    }
    return ended;
}

Program::Ended Program::startAgain(const QStringList& arguments) const
{
    QProcess second;
    second.setProcessEnvironment(environment());
    second.setProcessChannelMode(QProcess::MergedChannels);
    QElapsedTimer since;
    since.start();
    second.start(QStringLiteral(MEND_PROGRAM), arguments);
    Ended ended;
    if (second.waitForFinished(20'000) && second.exitStatus() == QProcess::NormalExit) {
        ended.code = second.exitCode();
    }
    ended.milliseconds = since.elapsed();
    ended.said = second.readAll();
    return ended;
}

std::optional<Spot> Program::waitForSpot(const QString& words, int milliseconds, bool acts)
{
    std::optional<Spot> found;
    static_cast<void>(QTest::qWaitFor(
        [&] {
            found = spot(words, acts);
            return found || !isRunning();
        },
        milliseconds));
    return found;
}

bool Program::waitUntilGone(const QString& words, int milliseconds, bool acts)
{
    return QTest::qWaitFor([&] { return !spot(words, acts); }, milliseconds) && isRunning();
}

QString Program::all()
{
    read();
    QString text;
    for (const Spot& each : m_spots) {
        text += each.key + QLatin1String(": ") + each.name + QLatin1Char('\n');
    }
    return text;
}

QString Program::file() const
{
    QStringList found;
    QDirIterator files(m_home.filePath(QStringLiteral("data")), {QStringLiteral("*.mendbench")}, QDir::Files,
                       QDirIterator::Subdirectories);
    while (files.hasNext()) {
        found << files.next();
    }
    return found.size() == 1 ? found.first() : QString();
}

QByteArray Program::desk(const QStringList& arguments) const
{
    QProcess desk;
    desk.setProcessEnvironment(environment());
    desk.start(QStringLiteral(MEND_DESK), arguments);
    const bool good = desk.waitForFinished(20'000) && desk.exitStatus() == QProcess::NormalExit && desk.exitCode() == 0;
    return good ? desk.readAllStandardOutput() : QByteArray();
}

} // namespace mend::test
