#pragma once

#include "core/bench/alertdesk.h"
#include "core/bench/card.h"
#include "core/service/wording.h"

#include <QString>

#include <array>
#include <span>
#include <vector>

namespace mend::service {

/// One window that called while nobody looked, with the three answers it can be given.
struct MissedLine {
    std::string key; ///< the alert's
    PieceId piece;
    QString pieceName;
    QString act;
    QString time; ///< "18 min left", "closed 42 min ago"
    bool savable = false;
    std::array<bench::CardAct, 3> answers;
    bool operator==(const MissedLine&) const = default;
};

/// The report in words, in its own order: what can still be saved first. An alert that is no longer known has
/// been answered meanwhile and is left out.
std::vector<MissedLine> missedLines(const bench::MissedReport& report, std::span<const bench::Alert> alerts);

} // namespace mend::service
