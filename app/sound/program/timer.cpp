#include "app/sound/program/timer.h"

#include <cassert>
#include <cstdint>
#include <sys/timerfd.h>
#include <unistd.h>
#include <utility>

namespace mend::sound {
namespace {

void aim(int fd, std::chrono::milliseconds after)
{
    const auto whole = std::chrono::floor<std::chrono::seconds>(after);
    itimerspec spec{};
    spec.it_value.tv_sec = whole.count();
    spec.it_value.tv_nsec = std::chrono::nanoseconds(after - whole).count();
    timerfd_settime(fd, 0, &spec, nullptr);
}

} // namespace

Timer::Timer(pa_mainloop_api& api) : m_api(api), m_fd(timerfd_create(CLOCK_MONOTONIC, TFD_CLOEXEC | TFD_NONBLOCK))
{
    m_event = m_api.io_new(
        &m_api, m_fd, PA_IO_EVENT_INPUT,
        [](pa_mainloop_api*, pa_io_event*, int, pa_io_event_flags_t, void* self) { static_cast<Timer*>(self)->fire(); },
        this);
}

Timer::~Timer()
{
    m_api.io_free(m_event);
    close(m_fd);
}

void Timer::start(std::chrono::milliseconds after, std::function<void()> act)
{
    assert(after.count() > 0);
    m_act = std::move(act);
    aim(m_fd, after);
}

void Timer::stop()
{
    aim(m_fd, std::chrono::milliseconds(0));
    m_act = nullptr;
}

void Timer::fire()
{
    std::uint64_t times = 0;
    if (read(m_fd, &times, sizeof times) == sizeof times && m_act) {
        const auto act = std::exchange(m_act, nullptr);
        act();
    }
}

} // namespace mend::sound
