#pragma once

#include "app/desktop/keepawake.h"
#include "app/desktop/notifier.h"
#include "app/sound/player.h"
#include "core/service/alertservice.h"

#include <QObject>

namespace mend::app {

/// Carries out what the alerts decide: sounds it, says it, asks the desktop to show it, and
/// keeps the machine awake while a window is open.
class Alarm : public QObject {
    Q_OBJECT

public:
    struct Desk {
        service::AlertService& alerts;
        service::BenchService& bench;
        sound::Player& player;
        desktop::Notifier& notifier;
        desktop::KeepAwake& awake;
    };
    explicit Alarm(Desk desk, QObject* parent = nullptr);

    /// Each short sound of its own: the pedal was taken, or has told something done.
    void soundPedal(bool isLong);
    /// The level at which an alert begins; it may grow 6 dB louder.
    void setLevel(sound::Decibels level) { m_level = level; }

Q_SIGNALS:
    /// Whether a device takes the sound.
    void soundWorks(bool works);

private:
    void play(const bench::Play& play);
    void notify(const bench::Alert& alert);
    void look();
    bool isAwakeNeeded(Instant now) const;

    Desk m_desk;
    sound::Decibels m_level{-6};
    std::vector<QString> m_notified;
};

} // namespace mend::app
