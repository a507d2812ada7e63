#pragma once

#include "app/sound/lines.h"
#include "core/base/id.h"

#include <QList>
#include <QObject>
#include <QProcess>
#include <QString>
#include <QTimer>
#include <chrono>
#include <map>
#include <memory>

namespace mend::sound {

struct SoundTag {};
using SoundId = Id<SoundTag>; ///< one request to sound something; never used twice by one player

/// A place sound can come out of, as the desktop names it.
struct OutputDevice {
    QString name;        ///< for useDevice()
    QString description; ///< for people
    bool operator==(const OutputDevice&) const = default;
};

/// Sounds the alerts and says whether each was heard. It keeps the sound process
/// (mendbench-sound) running, starts a new one where it ends or hangs, and looks for a
/// lost sound server again each `retry`. Nothing here waits: every answer is a signal.
class Player : public QObject {
    Q_OBJECT
public:
    struct Setup {
        QString program = findProgram();          ///< the sound process; empty: none, so no device
        QString speechEngine;                     ///< empty: the sound process's own choice
        std::chrono::milliseconds retry{10'000};  ///< between two looks for a device
        std::chrono::milliseconds patience{2000}; ///< until a silent sound process counts as hung
    };
    explicit Player(Setup setup, QObject* parent = nullptr);
    ~Player() override;

    /// Beside the program, in the libexec folder of an installation, or in the build tree; empty if nowhere.
    static QString findProgram();

    /// Sounds one burst, then says `words` where a speech engine works. An alert (A, B, C)
    /// cuts the alert that still sounds; the other tones sound beside it. A gain above 0 dB is
    /// taken as 0: an alert grows louder only from a level below the full one.
    /// Exactly one heard() or unheard() follows for each, never before this returns.
    SoundId play(Tone tone, Decibels gain, const QString& words = {});
    /// Words that follow a burst: said once it and what is said with it are over. One spoken() or unspoken() follows.
    SoundId say(Decibels gain, const QString& words);
    /// Silence at once: what sounds becomes unheard(Stopped).
    void stop();
    /// Empty for the desktop's default. A device that is not there is replaced by the default.
    void useDevice(const QString& name);
    /// A BCP 47 language for the words to come.
    void useVoice(const QString& language);
    /// Answered by devicesListed().
    void listDevices();
    /// Looks for a device now; answered by deviceStateChanged() if anything changed.
    void probe();

    /// Whether something was asked for of which neither heard() nor unheard() has been said yet.
    bool isSounding() const;
    DeviceState deviceState() const { return m_state; }
    /// The sink in use; empty for none.
    QString device() const { return m_device; }

Q_SIGNALS:
    void heard(mend::sound::SoundId id);
    void unheard(mend::sound::SoundId id, mend::sound::Unheard why);
    void spoken(mend::sound::SoundId id);
    void unspoken(mend::sound::SoundId id, mend::sound::Unheard why);
    /// The burst's first sample went to the sound server this long after play().
    void firstSample(mend::sound::SoundId id, std::chrono::microseconds after);
    void deviceStateChanged(mend::sound::DeviceState state);
    void devicesListed(const QList<mend::sound::OutputDevice>& devices);

private:
    using Steady = std::chrono::steady_clock::time_point;
    struct Pending {
        Steady asked;
        Steady answerBy;
    };

    void start();
    void send(const Command& command);
    void takeLines();
    void take(const Reply& reply);
    void takeState(DeviceState state, const QString& device);
    void settle(std::int64_t id, bool isHeard, Unheard why);
    void processEnded();
    void aimGuard();
    void checkGuard();

    Setup m_setup;
    std::unique_ptr<QProcess> m_process;
    QTimer m_retry;
    QTimer m_guard;
    std::map<std::int64_t, Pending> m_pending;
    std::int64_t m_lastId = 0;
    DeviceState m_state = DeviceState::Unknown;
    QString m_device;
    QString m_wantedDevice;
    QString m_language;
    QList<OutputDevice> m_arriving;
    bool m_hasAnswered = false; ///< the present process has said at least one thing
};

} // namespace mend::sound
