#pragma once

#include "core/bench/window.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::bench {

/// One combination that stands against a start, or hangs over the bench.
struct HazardFinding {
    const rules::Hazard* hazard = nullptr; ///< points into the rule book that was asked
    std::vector<PieceId> pieces;           ///< whose they are; empty where nobody's
    std::optional<Instant> until;          ///< when it is over by itself, planned wipes counted; empty: until told
    std::string state;                     ///< the state in force that it meets, where there is one
    bool operator==(const HazardFinding&) const = default;
};

/// A start that is asked about: this stage of this piece, at this place, by these hands.
struct Start {
    PieceId piece;
    StageInstance stage;
    PlaceId place;
};

/// What stands against a start now, worst first: blocks, then warnings, then reminders.
/// Answers already given for this start (overrides) are left out.
std::vector<HazardFinding> hazardsOf(const Start& start, const BenchFold& bench, const std::vector<Window>& windows,
                                     const rules::RuleBook& book, Instant now);

/// States of the bench in force now, those that stages left and those that were told.
std::vector<StateInForce> statesInForce(const BenchFold& bench, const rules::RuleBook& book, Instant now);

/// What hangs over the bench whether or not anything is started: one standing notice a
/// place that is warmer than something in it may get, and the reminders of open work.
std::vector<HazardFinding> standingHazards(const BenchFold& bench, const std::vector<Window>& windows,
                                           const rules::RuleBook& book, Instant now);

} // namespace mend::bench
