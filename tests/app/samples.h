#pragma once

#include "app/bench/picture.h"

namespace mend::app::samples {

/// A fixed moment: 28 November 2026, 13:42 where the invented studio is.
Instant now();
service::Manner manner();

/// A mid-afternoon with something of everything, made by hand: the numbers are not the rules'.
bench::Board richBoard();
Extras richExtras();
/// Nothing closes, nothing is open.
bench::Board quietBoard();
/// What the rich board lacks: begun, counted, on hold, free, two and three acts, long words.
bench::Board handsBoard();
/// No piece at all.
bench::Board emptyBoard();
/// `count` cards that all count seconds.
bench::Board crowdedBoard(int count);
/// `count` costly windows closing at once.
bench::Board alarmedBoard(int count);

} // namespace mend::app::samples
