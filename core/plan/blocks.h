#pragma once

#include "core/plan/model.h"

#include <optional>
#include <vector>

namespace mend::plan {

/// Steps that only make sense together, for a window or something held ties them: filling,
/// wiping, loading. They are placed as one; the head moves later until every window fits.
struct Block {
    std::vector<int> tasks;  ///< in the order they are placed
    std::vector<int> before; ///< blocks that must be placed before this one
    std::vector<int> after;
    int piece = 0;
    Minute earliest = 0; ///< of its head, alone at the bench
};

/// The blocks of a model, so that none waits for another in a ring; empty if lags and hours
/// contradict each other already without any competition.
std::optional<std::vector<Block>> blocksOf(const Model& model);

} // namespace mend::plan
