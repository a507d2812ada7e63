#pragma once

#include "core/rules/rulebook.h"

#include <string>
#include <vector>

namespace mend::rules {

/// One thing wrong in a rule file, with its place, in words that say what to do.
struct RuleFault {
    std::string file;
    std::string path; ///< JSON pointer: "/stages/9/closes/0/span"
    int line = 0;     ///< 1-based; 0 where unknown
    int column = 0;
    std::string text;
    bool operator==(const RuleFault&) const = default;
};

/// Every fault in a procedure's meaning, all at once: an origin that does not exist or
/// makes a ring, a figure outside its range, a practice figure against a hazard limit,
/// a closing without its cost, an unknown law, material, state or caution.
/// `path` is filled in; file, line and column are the reader's.
std::vector<RuleFault> validate(const Procedure& procedure, const RuleBook& book);

/// The same for what procedures share: materials, hazards, states, laws.
std::vector<RuleFault> validate(const RuleBook& book);

} // namespace mend::rules
