#pragma once

#include "core/bench/window.h"

#include <optional>
#include <string_view>
#include <vector>

namespace mend::bench {

class BenchPicture;
struct Contents;
struct Presence;

/// What one side of a combination finds on the bench at one instant. It is gathered once for all
/// starts, so that no piece has to be held against every other by name. Points into the picture.
struct RowSide {
    /// One name of the side in one piece: a material in it, a condition of it.
    struct InPiece {
        const Contents* contents = nullptr;
        std::string_view name;
    };
    /// A window that runs already and will bring what the side names again.
    struct Planned {
        PieceId piece;
        StageInstance stage;
        Instant over;
    };

    std::vector<const Presence*> inForce; ///< in the order of the picture
    std::vector<InPiece> inPieces;        ///< by piece, then by name
    std::vector<Planned> planned;         ///< the two that are over last, the last first

    /// When the last of what is planned is over, but for one stage of one piece.
    std::optional<Instant> plannedBut(PieceId piece, const StageInstance& stage) const;
};

/// `inPieces`: those of the names that can mean something in a piece.
RowSide sideOf(const std::vector<std::string>& names, const std::vector<std::string>& inPieces,
               const BenchPicture& picture);

/// A window by its close, whether it runs already or a start would open it.
struct Closing {
    PieceId piece;
    StageInstance stage;
    Instant opens;
    Instant closes;
    Span handsOn{0};
    bool soft = false;
};

/// The closings that run already and that a row about hands means.
std::vector<Closing> runningClosings(const rules::Hazard& row, const BenchPicture& picture);

} // namespace mend::bench
