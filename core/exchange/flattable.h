#pragma once

#include "core/exchange/csv.h"
#include "core/record/sheet.h"

#include <iosfwd>
#include <span>

namespace mend::exchange {

/// Writes sheets of one kind as a table, one line each: a column for every part that any of them has, named by its
/// path ("consent.scope", "accessories.2.what"), in the order in which they are met.
void writeFlatTable(std::ostream& out, std::span<const record::Sheet> sheets);

} // namespace mend::exchange
