#include "app/bench/pedal.h"

#include <QKeyEvent>

namespace mend::app {

namespace {
constexpr qint64 longFrom = 800;
}

Pedal::Pedal(MilliClock clock, std::function<PieceId()> target, QObject* parent)
    : QObject(parent), m_clock(std::move(clock)), m_target(std::move(target)), m_key(Qt::Key_F13)
{
}

bool Pedal::press(const QKeyEvent& event)
{
    if (event.key() != m_key) {
        return false;
    }
    if (!event.isAutoRepeat() && !m_down) {
        m_down = Down{m_clock(), m_target()};
        Q_EMIT taken(m_down->target);
    }
    return true;
}

bool Pedal::release(const QKeyEvent& event)
{
    if (event.key() != m_key) {
        return false;
    }
    if (event.isAutoRepeat() || !m_down) {
        return true;
    }
    const Down down = *m_down;
    m_down.reset();
    if (!down.target.isSet()) {
        return true;
    }
    if (m_clock() - down.at >= longFrom) {
        Q_EMIT longPress(down.target);
    } else {
        Q_EMIT shortPress(down.target);
    }
    return true;
}

} // namespace mend::app
