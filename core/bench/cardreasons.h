#pragma once

#include "core/bench/card.h"

#include <vector>

namespace mend::bench {

/// Why a card says what it says, most important first.
std::vector<Reason> reasonsOf(const Card& card, const Window& window, const rules::Stage& stage,
                              const PieceState& piece, const BenchFold& bench, const rules::RuleBook& book,
                              Instant now);

} // namespace mend::bench
