#include "app/program/alarm.h"

#include "core/service/wording.h"

#include <algorithm>

namespace mend::app {

using service::text;

namespace {

/// Windows further off than this do not keep the machine awake.
constexpr Span awakeFor = std::chrono::hours(12);

std::optional<sound::Tone> toneOf(bench::Signal signal)
{
    switch (signal) {
    case bench::Signal::A:
        return sound::Tone::A;
    case bench::Signal::B:
        return sound::Tone::B;
    case bench::Signal::C:
        return sound::Tone::C;
    case bench::Signal::Tick:
        return sound::Tone::Tick;
    case bench::Signal::None:
        break;
    }
    return std::nullopt;
}

} // namespace

Alarm::Alarm(Desk desk, QObject* parent) : QObject(parent), m_desk(desk)
{
    connect(&m_desk.alerts, &service::AlertService::playWanted, this, &Alarm::play);
    connect(&m_desk.alerts, &service::AlertService::notifyWanted, this, &Alarm::notify);
    connect(&m_desk.alerts, &service::AlertService::decided, this, &Alarm::look);
    connect(&m_desk.player, &sound::Player::deviceStateChanged, this,
            [this](sound::DeviceState state) { Q_EMIT soundWorks(state == sound::DeviceState::Ready); });
}

void Alarm::play(const bench::Play& play)
{
    QStringList lines;
    for (const std::string& line : play.speech) {
        lines += text(line);
    }
    const QString words = lines.join(QLatin1Char(' '));
    const sound::Decibels gain{m_level.value + play.decibelsLouder};
    if (play.cutsOff) {
        m_desk.player.stop();
    }
    if (const auto tone = toneOf(play.signal)) {
        m_desk.player.play(*tone, gain, words);
    } else if (!words.isEmpty()) {
        m_desk.player.say(gain, words); // joins the list of a burst that has just sounded
    }
}

void Alarm::soundPedal(bool isLong)
{
    m_desk.player.play(isLong ? sound::Tone::PedalDone : sound::Tone::PedalTaken, m_level);
}

void Alarm::notify(const bench::Alert& alert)
{
    const record::Piece* piece = m_desk.bench.bench().roster.piece(alert.piece);
    const QString key = text(alert.key);
    m_desk.notifier.show({key, text(alert.act), piece ? text(piece->number) : QString(), {}});
    m_notified.push_back(key);
}

/// Takes notices off that nobody has to answer any more; holds the machine awake or lets it go.
void Alarm::look()
{
    std::erase_if(m_notified, [this](const QString& key) {
        const bool stillUp = std::ranges::any_of(m_desk.alerts.decision().visible,
                                                 [&](const auto& visible) { return text(visible.key) == key; });
        if (!stillUp) {
            m_desk.notifier.withdraw(key);
        }
        return !stillUp;
    });
    if (isAwakeNeeded(m_desk.bench.board().at)) {
        m_desk.awake.hold(tr("A window is open on the bench"));
    } else {
        m_desk.awake.release();
    }
}

bool Alarm::isAwakeNeeded(Instant now) const
{
    return std::ranges::any_of(m_desk.bench.board().windows, [now](const bench::Window& window) {
        return window.closes && *window.closes > now && *window.closes - now < awakeFor;
    });
}

} // namespace mend::app
