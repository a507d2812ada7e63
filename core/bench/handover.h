#pragma once

#include "core/bench/state.h"

#include <optional>
#include <string>

namespace mend::bench {

/// How far a piece has come; worked out, never stored.
enum class PieceProgress { Enquiry, Received, Agreed, InWork, Resting, Ready, HandedOver, ReturnedUnmended };

/// Whether every stage that was agreed is done or skipped.
bool isMended(const PieceState& piece, const rules::RuleBook& book);

/// Share of the agreed stages (each repetition counts) that are done or skipped, 0 to 1.
double mendedShare(const PieceState& piece, const rules::RuleBook& book);

/// From when a piece may go back to its owner: the latest of every material's own wait since
/// that material's own last stage. Empty while stages are to do.
struct HandOverFrom {
    Instant at;
    std::string material;                 ///< key of the one that waits longest; empty where none waits
    std::optional<Instant> fullWait = {}; ///< what `at` would be, had a person not shortened the wait with a reason
    bool operator==(const HandOverFrom&) const = default;
};
std::optional<HandOverFrom> handOverFrom(const PieceState& piece, const rules::RuleBook& book);

/// When it could go back at the earliest if work on it went on from `now` without a pause: the hands and waits
/// of every stage to do one after the other, then the longest wait of a material. Waits are taken at their
/// usual figure; hours and other pieces are not looked at, so it is a lower bound. Empty where the rules are gone.
std::optional<HandOverFrom> earliestHandOver(const PieceState& piece, const rules::RuleBook& book, Instant now);

PieceProgress progressOf(const PieceState& piece, const rules::RuleBook& book, Instant now);

} // namespace mend::bench
