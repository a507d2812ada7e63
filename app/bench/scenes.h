#pragma once

#include "app/bench/hands.h"
#include "app/bench/picture.h"
#include "app/parts/scribe.h"

namespace mend::app {

/// The top line: places with readings and their age, living mixes, the person with "free
/// until", sound, clock. What does not fit whole is left to a button that shows all.
parts::Scene topScene(const Picture& picture, QSize size, bool mirrored, Hands& hands);
int topHeight(const parts::Look& look);

/// The common strip: names and drawn seams on one time axis, and beside it the tiles that
/// start a mix. `rows` pieces have a seam.
parts::Scene bandScene(const Picture& picture, QSize size, int rows, bool mirrored, Hands& hands);
int bandHeight(const Picture& picture, int rows);

/// When hands are wanted for what a card speaks of, as far as the Bench knows without a plan: at the latest that its
/// close allows, or from now until what is under hands is done. Empty: at no certain time.
std::optional<InstantRange> handsWanted(const bench::Card& card, Instant now);

/// The stretches in which hands are wanted for a piece: those of the plan that the board knows, else the one that its
/// card speaks of.
std::vector<InstantRange> handsFor(const bench::Card& card, const bench::Board& board);

/// Said over everything while the glass may be wiped.
parts::Scene wipeScene(const parts::Look& look, QSize size, qint64 millisecondsLeft, bool mirrored);

} // namespace mend::app
