#pragma once

#include "app/bench/cardface.h"
#include "app/bench/hands.h"
#include "app/parts/scribe.h"

namespace mend::app {

/// How one card stands among the others.
struct CardPlace {
    QSize size;
    bool photo = true;
    bool large = false; ///< the block, read from two metres
    bool inverted = false;
};

/// The least height a card needs: its acts decide it.
int cardHeight(const bench::Card& card, const parts::Look& look);
/// The least height of the large block.
int blockHeight(const bench::Card& card, const parts::Look& look);

/// What a card looks like, short: two equal ones need not be drawn anew. `width` is that of the card.
QString cardSignature(const bench::Card& card, const CardFace& face, Instant now, int width);

/// Draws one card and says what can be hit on it.
parts::Scene cardScene(const bench::Card& card, const Picture& picture, const CardPlace& place, bool mirrored,
                       Hands& hands);

/// The spots of a card are named by what they do.
QString actKey(PieceId piece, const bench::CardAct& act);
QString moreKey(PieceId piece);
QString cardKey(PieceId piece);

} // namespace mend::app
