#pragma once

#include "app/parts/hitmap.h"

#include <QString>

#include <functional>
#include <map>
#include <vector>

namespace mend::parts {

/// Decides whether a tap was meant: one on a spot that has just become something else was
/// aimed at what stood there before, the second of a double tap is the first one's echo, and
/// while the glass is being wiped none is.
class TapGate {
public:
    using MilliClock = std::function<qint64()>;
    explicit TapGate(MilliClock clock = {});

    /// A view shows other spots from now on. Spots that are new in their place wait for 500 ms.
    void shows(const void* view, const std::vector<Hit>& before, const std::vector<Hit>& after);
    void forget(const void* view);

    /// May the finger that came down now do this? Asked when it comes down.
    bool takes(const void* view, const QString& key) const;
    /// Said when an act is about to happen; false where it is an echo of the one before.
    bool fires(const QString& key);
    /// Says that somebody touches the screen.
    void touched();
    qint64 sinceLastTouch() const;

    /// From now on nothing may be tapped but what `stillDone` lets through; `reason` is read out with the rest.
    void curb(QString reason, std::function<bool(const QString& key)> stillDone);
    /// Why this spot may not be tapped now; empty: it may.
    QString curbOf(const Hit& hit) const;

    void lockFor(qint64 milliseconds); ///< "wipe the glass"
    qint64 lockedFor() const;          ///< 0: not locked
    qint64 now() const { return m_clock(); }

private:
    MilliClock m_clock;
    QString m_curb;
    std::function<bool(const QString&)> m_stillDone;
    std::map<std::pair<const void*, QString>, qint64> m_changed;
    QString m_lastKey;
    qint64 m_lastFired = -1'000'000;
    qint64 m_lastTouch = -1'000'000;
    qint64 m_lockedUntil = -1'000'000;
};

} // namespace mend::parts
