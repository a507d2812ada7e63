#include "app/bench/picture.h"

#include <algorithm>

namespace mend::app {

const bench::Card* Picture::card(PieceId piece) const
{
    const auto found = std::ranges::find(board.cards, piece, &bench::Card::piece);
    return found == board.cards.end() ? nullptr : &*found;
}

} // namespace mend::app
