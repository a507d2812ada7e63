#pragma once

#include "core/base/time.h"

namespace mend {

/// Tells what time it is. Only services hold one; calculation is given the time.
class Clock {
public:
    virtual ~Clock() = default;
    virtual Moment now() const = 0;
};

} // namespace mend
