#pragma once

#include "core/plan/model.h"

namespace mend::plan {

/// The same problem with the order of everything that is not `free` held as in a plan, and their
/// minutes not: whoever had the same hands or the same slot one after the other keeps to it. A
/// plan becomes a partial order that can give way (chaining: Policella, Cesta, Oddi and Smith,
/// "From precedence constraint posting to partial order schedules", AI Communications 20, 2007,
/// from memory).
Model withOrderHeld(const Model& model, std::span<const Minute> start, const std::vector<bool>& free);

} // namespace mend::plan
