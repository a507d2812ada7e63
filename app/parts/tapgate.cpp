#include "app/parts/tapgate.h"

#include <QElapsedTimer>
#include <QMultiHash>

#include <algorithm>
#include <memory>

namespace mend::parts {

namespace {

constexpr qint64 changedWait = 500;
constexpr qint64 echoWait = 250;

TapGate::MilliClock steadyClock()
{
    auto timer = std::make_shared<QElapsedTimer>();
    timer->start();
    return [timer] { return timer->elapsed(); };
}

} // namespace

TapGate::TapGate(MilliClock clock) : m_clock(clock ? std::move(clock) : steadyClock()) {}

void TapGate::shows(const void* view, const std::vector<Hit>& before, const std::vector<Hit>& after)
{
    if (before.empty()) {
        return;
    }
    const qint64 now = m_clock();
    QMultiHash<QStringView, const Hit*> held;
    held.reserve(static_cast<qsizetype>(before.size()));
    for (const Hit& hit : before) {
        held.insert(hit.key, &hit);
    }
    for (const Hit& hit : after) {
        if (!hit.isButton()) {
            continue;
        }
        const auto [first, last] = std::as_const(held).equal_range(hit.key);
        const bool stood = std::any_of(first, last, [&](const Hit* each) { return each->rect == hit.rect; });
        if (!stood) {
            m_changed[{view, hit.key}] = now;
        }
    }
    std::erase_if(m_changed, [&](const auto& each) { return now - each.second >= changedWait; });
}

void TapGate::forget(const void* view)
{
    std::erase_if(m_changed, [&](const auto& each) { return each.first.first == view; });
}

bool TapGate::takes(const void* view, const QString& key) const
{
    if (lockedFor() > 0) {
        return false;
    }
    const auto changed = m_changed.find({view, key});
    return changed == m_changed.end() || m_clock() - changed->second >= changedWait;
}

bool TapGate::fires(const QString& key)
{
    const qint64 now = m_clock();
    const bool echo = key == m_lastKey && now - m_lastFired < echoWait;
    if (!echo) {
        m_lastKey = key;
        m_lastFired = now;
    }
    return !echo;
}

void TapGate::touched() { m_lastTouch = m_clock(); }

qint64 TapGate::sinceLastTouch() const { return m_clock() - m_lastTouch; }

void TapGate::curb(QString reason, std::function<bool(const QString& key)> stillDone)
{
    m_curb = std::move(reason);
    m_stillDone = std::move(stillDone);
}

QString TapGate::curbOf(const Hit& hit) const
{
    const bool isCurbed = !m_curb.isEmpty() && hit.canAct() && !(m_stillDone && m_stillDone(hit.key));
    return isCurbed ? m_curb : QString();
}

void TapGate::lockFor(qint64 milliseconds) { m_lockedUntil = m_clock() + milliseconds; }

qint64 TapGate::lockedFor() const { return std::max<qint64>(0, m_lockedUntil - m_clock()); }

} // namespace mend::parts
