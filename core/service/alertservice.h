#pragma once

#include "core/base/time.h" // first: moc of Qt 6.4 cannot read the standard headers that the others begin with
#include "core/bench/alertdesk.h"
#include "core/service/benchservice.h"

#include <QObject>

namespace mend::service {

/// How loud the bench may be, as set by its people.
struct SoundWishes {
    bool off = false;                   ///< by setting: a banner stands as long as it is so
    std::optional<Instant> pausedUntil; ///< for all, ten minutes at most
    bool operator==(const SoundWishes&) const = default;
};

/// Watches every window of the bench and says in time what needs hands. It decides nothing
/// itself (bench::decide does), plays nothing (whoever hears `playWanted` does), and keeps
/// what was answered as events, so that it stays answered over a restart.
class AlertService : public QObject {
    Q_OBJECT

public:
    explicit AlertService(BenchService& bench, QObject* parent = nullptr);

    /// Looks at the bench as it stands now. Called by the heartbeat at every tick and every act.
    void look(Instant now);
    /// Nobody looked from then to then: asleep, or not running.
    void slept(InstantRange asleep) { m_gap = asleep; }

    const bench::Decision& decision() const { return m_decision; }
    const std::vector<bench::Alert>& alerts() const { return m_alerts; }
    const bench::Alert* alert(const std::string& key) const;
    std::optional<Instant> next() const { return m_decision.next; }

    void answer(const std::string& key, bench::Answered how, std::optional<Instant> until = std::nullopt);
    /// Hands on what calls first; false where nothing calls.
    bool handsOnFirst();
    void pauseSound(Span asked, Instant now);
    void setSoundOff(bool off);
    const SoundWishes& wishes() const { return m_wishes; }
    /// Whether a device takes the sound, as the sound process last said.
    void setSoundWorks(bool works);
    /// The counted window that runs just now, if one does.
    const std::optional<bench::Counting>& counting() const { return m_counting; }

Q_SIGNALS:
    void playWanted(const mend::bench::Play& play);
    void notifyWanted(const mend::bench::Alert& alert);
    void missedWhileAsleep(const mend::bench::MissedReport& report);
    void decided();

private:
    bench::DeskInputs inputsAt(Instant now) const;
    void carryOut(const bench::Decision& decision);

    BenchService& m_bench;
    std::vector<bench::Alert> m_alerts;
    bench::Decision m_decision;
    SoundWishes m_wishes;
    bool m_soundWorks = true;
    std::optional<bench::Counting> m_counting;
    std::optional<InstantRange> m_gap;
    bool m_looking = false;
};

} // namespace mend::service
