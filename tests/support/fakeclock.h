#pragma once

#include "core/base/clock.h"

namespace mend::test {

/// A clock that stands still until it is told to move; both hands can be moved apart.
class FakeClock : public Clock {
public:
    explicit FakeClock(Instant now, std::string bootId = "boot")
        : m_now{now, {std::move(bootId), std::chrono::hours(1)}}
    {
    }
    Moment now() const override { return m_now; }
    /// Time goes by, asleep or awake.
    void pass(Span span)
    {
        m_now.utc += span;
        m_now.boot.sinceBoot += span;
    }
    /// Somebody sets the wall clock.
    void setWall(Span by) { m_now.utc += by; }
    void set(Instant now) { pass(now - m_now.utc); }

private:
    Moment m_now;
};

} // namespace mend::test
