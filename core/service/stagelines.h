#pragma once

#include "core/bench/state.h"

#include <QString>

#include <optional>
#include <vector>

namespace mend::service {

/// One stage of a piece, for a list of what is done and what is to do.
struct StageLine {
    QString words;             ///< "Wipe back the filler"
    QString below;             ///< "2 of 3", "left out", "under the hands"
    std::optional<Instant> at; ///< when it was done
    bool done = false;
    bool skipped = false;

    bool isSettled() const { return done || skipped; }
};

/// Every stage that was agreed, each repetition by itself, in the order of the procedure. None where its rules are
/// gone or nothing is agreed yet.
std::vector<StageLine> stageLines(const bench::PieceState& piece, const rules::RuleBook& book);

} // namespace mend::service
