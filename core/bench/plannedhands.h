#pragma once

#include "core/base/id.h"
#include "core/base/time.h"
#include "core/bench/event.h"

#include <optional>

namespace mend::bench {

/// Somebody's hands on one stage, as planned.
struct PlannedHands {
    PieceId piece;
    StageInstance stage;
    Instant from;
    Instant to;
    PersonId person;                ///< unset where nobody was told
    bool running = false;           ///< begun already
    std::optional<Instant> startBy; ///< the latest start of its window, if the rest goes as planned; empty: none closes
    bool operator==(const PlannedHands&) const = default;
};

} // namespace mend::bench
