#include "core/service/systemclock.h"

#include <ctime>
#include <fstream>

namespace mend::service {

namespace {
std::chrono::nanoseconds read(clockid_t id)
{
    timespec time{};
    clock_gettime(id, &time);
    return std::chrono::seconds(time.tv_sec) + std::chrono::nanoseconds(time.tv_nsec);
}
} // namespace

SystemClock::SystemClock()
{
    std::ifstream file("/proc/sys/kernel/random/boot_id");
    std::getline(file, m_bootId);
}

Moment SystemClock::now() const
{
    using std::chrono::milliseconds;
    return {Instant(std::chrono::floor<milliseconds>(read(CLOCK_REALTIME))), {m_bootId, read(CLOCK_BOOTTIME)}};
}

} // namespace mend::service
