#pragma once

#include "app/parts/look.h"
#include "core/bench/card.h"

namespace mend::app {

/// Measures of one card, from the sizes of fingers and type. Everything in pixels.
struct CardFrame {
    CardFrame(const parts::Look& look, bool large);
    int pad;
    int gap;
    int act;
    int other;
};

/// Acts that a person chooses between stand side by side in one size.
bool areEqual(const bench::Card& card);

/// Where the acts of a card stand: in a row under its words, or in a column at its side with
/// the second act beside "More".
bool actsBelow(const bench::Card& card, bool large);

int rowHeight(const parts::Look& look, parts::Role role);
/// What to do, which piece, whose: three lines.
int headHeight(const parts::Look& look);

} // namespace mend::app
