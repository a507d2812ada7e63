#pragma once

#include <chrono>
#include <functional>
#include <pulse/mainloop-api.h>

namespace mend::sound {

/// Calls back once after a while. It counts on the monotonic clock: libpulse's own
/// plain timers follow the wall clock, and a person may set that.
class Timer {
public:
    explicit Timer(pa_mainloop_api& api);
    ~Timer();
    Timer(const Timer&) = delete;
    Timer& operator=(const Timer&) = delete;

    /// Aims anew if it is already running.
    void start(std::chrono::milliseconds after, std::function<void()> act);
    void stop();
    bool isRunning() const { return m_act != nullptr; }

private:
    void fire();

    pa_mainloop_api& m_api;
    int m_fd = -1;
    pa_io_event* m_event = nullptr;
    std::function<void()> m_act;
};

} // namespace mend::sound
