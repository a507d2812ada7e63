#pragma once

#include "core/base/clock.h"

namespace mend::service {

/// The machine's clocks: UTC, and the time since boot with sleep counted in.
class SystemClock : public Clock {
public:
    SystemClock();
    Moment now() const override;

private:
    std::string m_bootId;
};

} // namespace mend::service
