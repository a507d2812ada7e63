#pragma once

#include "core/bench/state.h"

namespace mend::bench {

/// What the air of a place was while nobody looked: an answered gap (`What::GapAnswered`) put between the readings
/// before and after it. Where nobody knows, waits are given room temperature and closings the full heat; where a
/// thermometer kept its lowest and highest, waits are given the one and closings the other.
void fillGap(BenchFold& bench, const Event& gap);

} // namespace mend::bench
