#include "app/sound/player.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <algorithm>
#include <utility>

namespace mend::sound {
namespace {

using namespace std::chrono_literals;

/// Stands in the list of what is awaited for the answer to a probe; sounds count from 1.
constexpr std::int64_t probeId = 0;
/// From the first sample to the last word that must be told: a burst, a sink's buffer, a margin.
constexpr auto burstLimit = 8s;

std::chrono::steady_clock::time_point now() { return std::chrono::steady_clock::now(); }

} // namespace

QString Player::findProgram()
{
    const QString here = QCoreApplication::applicationDirPath();
    const QString name = QStringLiteral("mendbench-sound");
    // Beside the program; where it is installed; from any program of the build tree.
    for (const char* folder : {"", "../libexec/mendbench/", "sound/", "../app/sound/", "../../app/sound/"}) {
        const QFileInfo candidate(here + QLatin1Char('/') + QLatin1String(folder) + name);
        if (candidate.isFile() && candidate.isExecutable()) {
            return candidate.canonicalFilePath();
        }
    }
    return {};
}

Player::Player(Setup setup, QObject* parent) : QObject(parent), m_setup(std::move(setup))
{
    m_guard.setSingleShot(true);
    m_guard.setTimerType(Qt::PreciseTimer);
    m_retry.setInterval(m_setup.retry);
    connect(&m_guard, &QTimer::timeout, this, &Player::checkGuard);
    connect(&m_retry, &QTimer::timeout, this, &Player::probe);
    start();
}

Player::~Player()
{
    if (m_process != nullptr) {
        m_process->disconnect(this);
        m_process->closeWriteChannel(); // its sign to end
        if (!m_process->waitForFinished(500)) {
            m_process->kill();
            m_process->waitForFinished(500);
        }
    }
}

void Player::start()
{
    m_hasAnswered = false;
    m_process = std::make_unique<QProcess>();
    QProcess* process = m_process.get();
    process->setProcessChannelMode(QProcess::ForwardedErrorChannel);
    connect(process, &QProcess::readyReadStandardOutput, this, &Player::takeLines);
    // Queued, so that a failure to start is never told from inside the call that asked.
    const auto ended = [this, process] {
        if (m_process.get() == process) {
            processEnded();
        }
    };
    connect(process, &QProcess::finished, this, ended, Qt::QueuedConnection);
    connect(
        process, &QProcess::errorOccurred, this,
        [ended](QProcess::ProcessError error) {
            if (error == QProcess::FailedToStart) {
                ended();
            }
        },
        Qt::QueuedConnection);
    QStringList arguments;
    if (!m_setup.speechEngine.isEmpty()) {
        arguments << QStringLiteral("--speech") << m_setup.speechEngine;
    }
    if (m_setup.program.isEmpty()) {
        QMetaObject::invokeMethod(this, ended, Qt::QueuedConnection);
        return;
    }
    process->start(m_setup.program, arguments);
    if (!m_language.isEmpty()) {
        send(UseVoice{m_language.toStdString()});
    }
    if (!m_wantedDevice.isEmpty()) {
        send(UseDevice{m_wantedDevice.toStdString()});
    }
    m_pending[probeId] = {now(), now() + m_setup.patience}; // it tells its state unasked at first
    aimGuard();
}

void Player::send(const Command& command)
{
    if (m_process != nullptr && m_process->state() != QProcess::NotRunning) {
        m_process->write(QByteArray::fromStdString(toLine(command) + '\n'));
    }
}

SoundId Player::play(Tone tone, Decibels gain, const QString& words)
{
    const std::int64_t id = ++m_lastId;
    if (m_process == nullptr) {
        start();
    }
    m_pending[id] = {now(), now() + m_setup.patience};
    send(Play{id, tone, std::min(gain, Decibels{}), words.simplified().toStdString()});
    aimGuard();
    return SoundId(id);
}

SoundId Player::say(Decibels gain, const QString& words)
{
    const std::int64_t id = ++m_lastId;
    send(Say{id, std::min(gain, Decibels{}), words.simplified().toStdString()});
    return SoundId(id);
}

void Player::stop() { send(Stop{}); }

void Player::useDevice(const QString& name)
{
    m_wantedDevice = name;
    send(UseDevice{name.toStdString()});
}

void Player::useVoice(const QString& language)
{
    m_language = language;
    send(UseVoice{language.toStdString()});
}

bool Player::isSounding() const { return m_pending.size() > m_pending.count(probeId); }

void Player::listDevices() { send(ListDevices{}); }

void Player::probe()
{
    if (m_process == nullptr) {
        start();
        return;
    }
    m_pending.try_emplace(probeId, Pending{now(), now() + m_setup.patience});
    send(Probe{});
    aimGuard();
}

void Player::takeLines()
{
    while (m_process != nullptr && m_process->canReadLine()) {
        const QByteArray line = m_process->readLine().trimmed();
        if (const auto reply = replyFrom(std::string_view(line.constData(), static_cast<std::size_t>(line.size())))) {
            m_hasAnswered = true;
            take(*reply);
        }
    }
}

void Player::take(const Reply& reply)
{
    if (const auto* first = std::get_if<FirstSample>(&reply)) {
        const auto pending = m_pending.find(first->id);
        if (pending != m_pending.end()) {
            pending->second.answerBy = now() + burstLimit;
            aimGuard();
            const auto asked = pending->second.asked.time_since_epoch();
            Q_EMIT firstSample(SoundId(first->id),
                               std::chrono::duration_cast<std::chrono::microseconds>(first->steady - asked));
        }
    } else if (const auto* good = std::get_if<Heard>(&reply)) {
        settle(good->id, true, {});
    } else if (const auto* bad = std::get_if<NotHeard>(&reply)) {
        settle(bad->id, false, bad->why);
    } else if (const auto* said = std::get_if<Spoken>(&reply)) {
        Q_EMIT spoken(SoundId(said->id));
    } else if (const auto* unsaid = std::get_if<NotSpoken>(&reply)) {
        Q_EMIT unspoken(SoundId(unsaid->id), unsaid->why);
    } else if (const auto* state = std::get_if<StateNow>(&reply)) {
        m_pending.erase(probeId);
        aimGuard();
        takeState(state->state, QString::fromStdString(state->device));
    } else if (const auto* found = std::get_if<Device>(&reply)) {
        m_arriving.append({QString::fromStdString(found->name), QString::fromStdString(found->description)});
    } else {
        Q_EMIT devicesListed(std::exchange(m_arriving, {}));
    }
}

void Player::takeState(DeviceState state, const QString& device)
{
    m_device = device;
    if (state == DeviceState::NoDevice) {
        if (!m_retry.isActive()) {
            m_retry.start();
        }
    } else {
        m_retry.stop();
    }
    if (std::exchange(m_state, state) != state) {
        Q_EMIT deviceStateChanged(state);
    }
}

void Player::settle(std::int64_t id, bool isHeard, Unheard why)
{
    if (m_pending.erase(id) == 0) {
        return;
    }
    aimGuard();
    if (isHeard) {
        Q_EMIT heard(SoundId(id));
    } else {
        Q_EMIT unheard(SoundId(id), why);
    }
}

void Player::processEnded()
{
    takeLines(); // its last words count
    const bool wasGood = m_hasAnswered;
    m_process.reset();
    m_arriving.clear();
    m_pending.erase(probeId);
    const auto left = std::exchange(m_pending, {});
    aimGuard();
    takeState(DeviceState::NoDevice, {});
    if (wasGood) {
        start(); // one that never said a word is tried again only at the next look
    }
    for (const auto& [id, pending] : left) {
        Q_EMIT unheard(SoundId(id), Unheard::Crashed);
    }
}

void Player::aimGuard()
{
    const auto first = std::min_element(m_pending.begin(), m_pending.end(), [](const auto& a, const auto& b) {
        return a.second.answerBy < b.second.answerBy;
    });
    if (first == m_pending.end()) {
        m_guard.stop();
        return;
    }
    const auto left = std::chrono::ceil<std::chrono::milliseconds>(first->second.answerBy - now());
    m_guard.start(std::max(left, 0ms));
}

void Player::checkGuard()
{
    const bool isLate = std::any_of(m_pending.begin(), m_pending.end(),
                                    [at = now()](const auto& entry) { return entry.second.answerBy <= at; });
    if (isLate && m_process != nullptr) {
        m_process->kill(); // it hangs; its end is told as any other
    } else {
        aimGuard();
    }
}

} // namespace mend::sound
