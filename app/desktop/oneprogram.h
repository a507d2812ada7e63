#pragma once

#include "core/base/result.h"

#include <QLocalServer>
#include <QObject>
#include <QString>
#include <chrono>
#include <functional>

class QLocalSocket;

namespace mend::desktop {

/// What a second start of the program asks of the first.
struct Knock {
    QString file;            ///< bench file to change to; empty: only come to the front
    QString reason;          ///< why it may change although a window is open; empty: it may not
    QString activationToken; ///< from the desktop, for windows that may not raise themselves
    bool operator==(const Knock&) const = default;
};

enum class KnockAnswer {
    Raised,   ///< it was asked to come to the front
    Changed,  ///< and has changed to the file
    Refused,  ///< it came to the front but keeps its file
    NoAnswer, ///< it hangs or has just ended
    Leaving,  ///< it is ending: its place is free in a moment
};

/// Sees that one person runs one program, so that one bench is never kept twice. The first holds a lock
/// that the kernel takes back whenever its process ends, however it ends; a later start knocks at its door
/// and goes.
class OneProgram : public QObject {
    Q_OBJECT
public:
    /// `folder` is runtimeFolder() but for tests.
    explicit OneProgram(QString folder, QObject* parent = nullptr);
    ~OneProgram() override;

    /// The person's own folder for sockets: XDG_RUNTIME_DIR, or what stands in for it.
    static QString runtimeFolder();

    /// Becomes the first program. Busy: another is. Unwritable: the folder allows neither; it is for the
    /// caller to say so and go on.
    Outcome claim();

    /// Gives the place up: the next start is the first.
    void leave();

    /// Who answers a knock. Until it is set every knock is refused.
    void setDoor(std::function<KnockAnswer(const Knock&)> door) { m_door = std::move(door); }

    /// Asks the first program and waits for its answer: for a second start, which has no window to freeze.
    static KnockAnswer knock(const QString& folder, const Knock& knock,
                             std::chrono::milliseconds limit = std::chrono::milliseconds(1500));

private:
    void welcome();
    void answer(QLocalSocket* visitor);

    QString m_folder;
    int m_lock = -1;
    QLocalServer m_server;
    std::function<KnockAnswer(const Knock&)> m_door;
};

} // namespace mend::desktop
