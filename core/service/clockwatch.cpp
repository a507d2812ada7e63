#include "core/service/clockwatch.h"

#include <cstdint>
#include <ctime>
#include <limits>
#include <sys/timerfd.h>
#include <unistd.h>

namespace mend::service {

ClockWatch::ClockWatch(QObject* parent) : ClockWatch(timerfd_create(CLOCK_REALTIME, TFD_NONBLOCK | TFD_CLOEXEC), parent)
{
}

ClockWatch::ClockWatch(int descriptor, QObject* parent)
    : QObject(parent), m_descriptor(descriptor), m_notifier(QSocketNotifier::Read)
{
    if (!isWatching()) {
        return;
    }
    arm();
    connect(&m_notifier, &QSocketNotifier::activated, this, &ClockWatch::wasSet);
    m_notifier.setSocket(m_descriptor);
    m_notifier.setEnabled(true);
}

ClockWatch::~ClockWatch()
{
    m_notifier.setEnabled(false);
    if (isWatching()) {
        close(m_descriptor);
    }
}

/// Aimed at a time that never comes: what it is for is to be cancelled.
void ClockWatch::arm() const
{
    itimerspec never{};
    never.it_value.tv_sec = std::numeric_limits<time_t>::max();
    timerfd_settime(m_descriptor, TFD_TIMER_ABSTIME | TFD_TIMER_CANCEL_ON_SET, &never, nullptr);
}

void ClockWatch::wasSet()
{
    std::uint64_t cancelled = 0;
    [[maybe_unused]] const auto taken = read(m_descriptor, &cancelled, sizeof(cancelled)); // fails: ECANCELED
    arm();
    Q_EMIT clockSet();
}

} // namespace mend::service
