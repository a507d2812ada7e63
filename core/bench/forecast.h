#pragma once

#include "core/bench/state.h"
#include "core/cure/progress.h"

#include <string>

namespace mend::bench {

/// The cure law of that name; by the clock alone where the book has none.
const cure::Law& lawOf(const std::string& key, const rules::RuleBook& book);

/// The law of a stage's own wait: where the stage says that nothing may be forecast below a temperature, its wait
/// is given no credit there either.
cure::Law waitLaw(const rules::Stage& stage, const rules::RuleBook& book);

/// The air of a place as it is now, going on unchanged: what is reckoned with for something not begun. `reference`
/// where nobody has read a thermometer there.
cure::Climate airAhead(PlaceId place, cure::Side side, Temperature reference, const BenchFold& bench, Instant now);

/// Where a stage is done, or waits, unless told otherwise: where the piece lies if that is of a right kind, else the
/// first place of the stage's first kind, else where it lies.
PlaceId usualPlace(const rules::Stage& stage, const PieceState& piece, const BenchFold& bench, Instant when);

} // namespace mend::bench
