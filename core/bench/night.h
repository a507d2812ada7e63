#pragma once

#include "core/bench/window.h"

#include <vector>

namespace mend::bench {

/// What the bench is left with when everybody goes home: said before the light is put out, so that nothing closes on
/// an empty room and nobody promises a piece that is still wet.
struct NightAhead {
    Instant morning;     ///< when the bench opens again
    bool isTold = false; ///< by its hours; else twelve hours from now are taken (common practice, no source)
    std::vector<Window> closesAlone;   ///< would close before the morning: costliest first, then by latest start
    std::vector<Window> notCured;      ///< waits that may not be over by then, at their slow end; stalled ones first
    std::vector<Window> overByMorning; ///< waits that are
    std::vector<PlaceId> staysOn;      ///< heated places with a piece in them
};

/// `windows` are those of the bench at `now`. Of each piece one wait is named: the one that ends first. What is open
/// and closes is named whoever has begun it; soft and counted windows are not.
NightAhead nightAhead(const std::vector<Window>& windows, const BenchFold& bench, Instant now);

/// What came to its end while nobody looked: one wait a piece that was over between then and then, first over first.
std::vector<Window> endedMeanwhile(const std::vector<Window>& windows, InstantRange away);

} // namespace mend::bench
