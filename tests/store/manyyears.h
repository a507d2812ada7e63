#pragma once

#include "tests/store/benchmaker.h"

namespace mend::test {

constexpr int piecesInFile = 20'000;
constexpr int piecesOnBench = 60;
constexpr int eventsOfPiece = 12;

/// Many years of a busy studio: pieces that came, were worked on and, but for the last of them, went
/// home. Those that stayed were filled 5 s after one another, the last at `lastDone`.
void fillManyYears(store::Store& store, Instant lastDone);

} // namespace mend::test
