#include "core/bench/alert.h"
#include "core/bench/card.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// Keeps the earliest instant after now.
class Earliest {
public:
    explicit Earliest(Instant now) : m_now(now) {}
    void meet(std::optional<Instant> at)
    {
        if (at && *at > m_now && (!m_earliest || *at < *m_earliest)) {
            m_earliest = at;
        }
    }
    std::optional<Instant> found() const { return m_earliest; }

private:
    Instant m_now;
    std::optional<Instant> m_earliest;
};

} // namespace

std::optional<Instant> nextChange(const Board& board, Instant now)
{
    Earliest earliest(now);
    for (const Window& window : board.windows) {
        for (const auto& at : {window.opens, window.opensAtLatest, window.recommended, window.latestStart,
                               window.closes, window.lost, window.askAgain}) {
            earliest.meet(at);
        }
        if (const auto times = callTimes(window)) {
            earliest.meet(times->first);
        }
    }
    for (const StateInForce& state : board.states) {
        earliest.meet(state.until);
    }
    for (const MixCard& mix : board.mixes) {
        earliest.meet(mix.stiffAt);
    }
    for (const Card& card : board.cards) {
        earliest.meet(card.countTo);
    }
    return earliest.found();
}

} // namespace mend::bench
