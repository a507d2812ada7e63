#pragma once

#include "app/desktop/bus.h"

#include <QDBusUnixFileDescriptor>
#include <QObject>
#include <QString>

class QDBusMessage;

namespace mend::desktop {

/// Keeps the machine from falling asleep while a window is open on the bench. It asks the
/// desktop portal (flags 4 suspend + 8 idle); where that says no, the screen saver service (idle) and
/// systemd-logind (suspend and idle). A lid that is shut still wins: say so, do not promise.
/// Nothing here waits, and absence is a state, not an error.
class KeepAwake : public QObject {
    Q_OBJECT
public:
    enum class State {
        Released, ///< the machine may sleep
        Asking,
        Held,
        Refused, ///< wanted, but nothing on this desktop grants it: worth a banner
    };
    /// What is kept from happening while Held.
    struct Cover {
        bool isIdleHeld = false;
        bool isSuspendHeld = false;
        bool operator==(const Cover&) const = default;
    };

    KeepAwake(const QDBusConnection& session, const QDBusConnection& system, QObject* parent = nullptr);
    ~KeepAwake() override;

    /// The reason is shown to people by some desktops. Holding twice is holding once.
    void hold(const QString& reason);
    /// At once, whatever is still being asked.
    void release();

    State state() const { return m_state; }
    Cover cover() const { return m_cover; }

Q_SIGNALS:
    void stateChanged(mend::desktop::KeepAwake::State state);

private:
    void askPortal();
    void askScreenSaver();
    void askLogin();
    void giveBack();
    void answered();
    void setState(State state);
    template <class Answer> void call(const QDBusConnection& bus, const QDBusMessage& message, Answer answer);

    QDBusConnection m_session;
    QDBusConnection m_system;
    State m_state = State::Released;
    Cover m_cover;
    QString m_reason;
    int m_turn = 0; ///< one for each hold; answers to an older one are given straight back
    int m_open = 0; ///< questions without an answer in this turn
    QString m_portalRequest;
    uint m_cookie = 0;
    bool m_hasCookie = false;
    QDBusUnixFileDescriptor m_lock;
};

} // namespace mend::desktop
