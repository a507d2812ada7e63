#pragma once

#include "core/bench/window.h"

#include <vector>

namespace mend::bench {

/// Says when a mender has to start so that one pair of hands can serve all that closes: sets `latestStart` of windows
/// that need the same hands one after the other to that of their chain, and names the chain in order. They are served
/// by their closes, but what would have to begin before it opens comes after others that are open by then. What closed
/// before `now` or is under hands takes no part.
void chainThroughOnePairOfHands(std::vector<Window>& windows, Instant now);

} // namespace mend::bench
