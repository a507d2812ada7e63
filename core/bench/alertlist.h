#pragma once

#include "core/bench/alertdesk.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace mend::bench {

/// One alert that calls, what was heard of it, and whether it has to wait for something.
struct Calling {
    const Alert* alert = nullptr;
    Call call;
    HeardAlert heard;
    bool waits = false;
};

/// Highest urgency first, then the earliest latest start.
bool isMoreUrgent(const Calling& a, const Calling& b);

/// The first instant after now at which anything changes.
class Soonest {
public:
    explicit Soonest(Instant now) : m_now(now) {}
    void consider(std::optional<Instant> instant)
    {
        if (instant && *instant > m_now && (!m_at || *instant < *m_at)) {
            m_at = instant;
        }
    }
    std::optional<Instant> at() const { return m_at; }

private:
    Instant m_now;
    std::optional<Instant> m_at;
};

/// Everything that calls at one instant, most urgent first, and what was put off.
struct CallList {
    std::vector<Calling> calling;
    std::vector<ShelvedAlert> shelved;
    std::optional<Busy> busy;
    Soonest next;
};

/// Sorts the alerts into those that call, wait and were put off. What was heard of each comes from the memory, and
/// where that was lost from the stored answers.
CallList callList(const AlertMemory& memory, std::span<const Alert> alerts, std::span<const AlertAnswer> answers,
                  const DeskInputs& inputs);

} // namespace mend::bench
