#include "app/bench/picture.h"

#include <algorithm>

namespace mend::app {

const bench::Card* Picture::card(PieceId piece) const
{
    const auto found = std::ranges::find(board.cards, piece, &bench::Card::piece);
    return found == board.cards.end() ? nullptr : &*found;
}

const UndoOffer* Picture::undoAt(const QString& spot) const
{
    const auto found = std::ranges::find_if(extras.undo, [&](const UndoOffer& each) {
        return !each.piece.isSet() && each.spot == spot && each.until > now;
    });
    return found == extras.undo.end() ? nullptr : &*found;
}

} // namespace mend::app
