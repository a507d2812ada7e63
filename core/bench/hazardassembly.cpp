#include "core/bench/hazardrows.h"

#include <algorithm>

namespace mend::bench {

void findInAssembly(const StartAsked& asked, const rules::Hazard& hazard, const AssemblyFacts& facts, Findings& found)
{
    if (answeredAt(asked, hazard)) {
        return;
    }
    HazardFinding finding;
    finding.hazard = &hazard;
    finding.verdict = hazard.verdict;
    if (holdsName(hazard.one, "lockOut")) {
        finding.fragments = facts.lockedOut;
    } else if (holdsName(hazard.one, "ringClosure") && facts.closesRing) {
        std::ranges::copy_if(facts.openJoins, std::back_inserter(finding.fragments),
                             [&](const std::string& join) { return !holdsName(facts.joinsOfSet, join); });
    }
    if (!finding.fragments.empty()) {
        addPiece(finding.pieces, asked.start.piece);
        found.push_back(finding);
    }
}

} // namespace mend::bench
