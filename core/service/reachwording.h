#pragma once

#include "core/bench/reach.h"
#include "core/service/cardwording.h"

namespace mend::service {

/// A length of work in words, rounded down so that nothing is promised that cannot be finished: "7 cm", under three
/// centimetres "2.5 cm"; "2.8 in" where the studio likes inches.
QString runWords(Length length, const Manner& manner);

/// How far a mix goes, short enough for its tile: "7 cm of chip", "9 cm ready", "place in 47 s".
/// Empty where nothing limits it.
QString reachShort(const bench::Reach& reach, const Manner& manner);

/// The same in full, said before it is mixed: what one pair of hands can lay and finish at the present heat, which
/// pieces that is, which have to wait for the next mix.
QString reachWords(const bench::Reach& reach, const Names& names, const Manner& manner);

/// What one mix does of one piece, on its card: "at 26 °C one mix does 7 cm of chip of it, then wipe".
QString shareWords(const bench::Reason& reason, const Manner& manner);

} // namespace mend::service
