#include "core/rules/keep.h"

#include <utility>

namespace mend::rules {

Swap keepOrRefuse(RuleBook inForce, RuleBook offered, std::vector<RuleFault> faults)
{
    if (!faults.empty()) {
        return {std::move(inForce), false, std::move(faults)};
    }
    for (std::vector<Procedure>* held : {&inForce.procedures, &inForce.formerRevisions}) {
        for (Procedure& procedure : *held) {
            if (offered.revision(procedure.hash) == nullptr) {
                offered.formerRevisions.push_back(std::move(procedure));
            }
        }
    }
    return {std::move(offered), true, {}};
}

} // namespace mend::rules
