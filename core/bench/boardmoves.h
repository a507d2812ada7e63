#pragma once

#include "core/bench/acts.h"
#include "core/bench/card.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace mend::bench {

/// What becomes of one window when something is told or ruled differently: shown to the mender
/// before it is kept.
struct WindowMove {
    PieceId piece;
    StageInstance stage;
    std::string act;
    std::optional<Window> before; ///< empty: it only comes up by the change
    std::optional<Window> after;  ///< empty: it is gone by the change
    bool operator==(const WindowMove&) const = default;
};

/// Every window that opens, must be started, closes or is lost at another time on the second board,
/// that is gone there or that is new. In the order of the first board, new ones last.
std::vector<WindowMove> windowMoves(const Board& before, const Board& after);

/// The pieces in hand that are mended after this procedure, in any revision.
std::vector<PieceId> piecesUnder(const BenchFold& bench, const std::string& procedure);

/// One event for each piece: from now on it follows this revision. Times, boot and person are those of
/// the hand; ids are the recorder's.
std::vector<Event> adoptions(std::span<const PieceId> pieces, const rules::RevisionHash& revision, const Hand& hand);

/// The bench as it would be if these pieces followed the edited procedure from now on. Nothing is kept.
Board boardIfAdopted(const Roster& roster, std::span<const Event> told, const rules::RuleBook& book,
                     rules::Procedure edited, std::span<const PieceId> pieces, Instant now);

} // namespace mend::bench
