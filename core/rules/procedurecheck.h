#pragma once

#include "core/rules/validation.h"

namespace mend::rules {

/// Every fault in what one procedure means: its head, each of its stages, and what only all of
/// them together can get wrong (a ring, a heat that is too much for what is inside by then, two
/// stages nearer than a hazard lets them).
std::vector<RuleFault> procedureFaults(const Procedure& procedure, const RuleBook& book);

} // namespace mend::rules
