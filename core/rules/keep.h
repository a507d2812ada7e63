#pragma once

#include "core/rules/rulebook.h"
#include "core/rules/validation.h"

#include <vector>

namespace mend::rules {

/// What became of rule files that were offered: whether they were taken, which book is in
/// force now, and why not if they were not.
struct Swap {
    RuleBook inForce;
    bool taken = false;
    std::vector<RuleFault> faults;
};

/// Takes the offered book if nothing is wrong with it; with a single fault the last good book
/// stays in force, whole. No revision is ever lost by a swap: what the old book held and the
/// new one does not is kept among the former revisions, for pieces that were begun under it.
Swap keepOrRefuse(RuleBook inForce, RuleBook offered, std::vector<RuleFault> faults);

} // namespace mend::rules
