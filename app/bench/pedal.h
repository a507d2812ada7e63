#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QObject>

#include "core/base/id.h"

#include <functional>
#include <optional>

class QKeyEvent;

namespace mend::app {

/// One key or foot pedal for hands that hold a pot: a short press says "hands on it", one of
/// 0.8 s or more says "done". It acts on the block that stood when it went down.
class Pedal : public QObject {
    Q_OBJECT

public:
    using MilliClock = std::function<qint64()>;
    Pedal(MilliClock clock, std::function<PieceId()> target, QObject* parent = nullptr);

    void setKey(int key) { m_key = key; }
    int key() const { return m_key; }
    /// True where the event was the pedal's.
    bool press(const QKeyEvent& event);
    bool release(const QKeyEvent& event);

Q_SIGNALS:
    void shortPress(mend::PieceId target);
    void longPress(mend::PieceId target);
    void taken(mend::PieceId target); ///< went down: say what it will act on

private:
    MilliClock m_clock;
    std::function<PieceId()> m_target;
    int m_key = 0;
    struct Down {
        qint64 at;
        PieceId target;
    };
    std::optional<Down> m_down;
};

} // namespace mend::app
