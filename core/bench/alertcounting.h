#pragma once

#include "core/bench/window.h"

#include <optional>
#include <vector>

namespace mend::bench {

/// A window that is counted in seconds just now: it wants quiet, and a soft tick at its marks.
struct Counting {
    Instant until;
    std::vector<Instant> ticks;
    PieceId piece{}; ///< whose window it is
    bool operator==(const Counting&) const = default;
};

/// The counted window that runs just now, if one does: ticks come from its rule, counted from its mix.
std::optional<Counting> countingOf(const BenchFold& bench, const std::vector<Window>& windows,
                                   const rules::RuleBook& book, Instant now);

} // namespace mend::bench
