#pragma once

#include "core/bench/event.h"

#include <span>

namespace mend::store {

/// Whether a piece is in the house, from everything told of it (`EventRows::concerning`):
/// it is until it is handed over or given back unmended, and again from the next thing done to it.
/// A note, an answered alert, a payment or a word with its owner brings nothing back.
bool isInHand(std::span<const bench::Event> told, PieceId piece);

/// Whether an event can change where a piece is.
bool movesPiece(const bench::Event& event);

} // namespace mend::store
