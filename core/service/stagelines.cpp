#include "core/service/stagelines.h"

#include "core/service/wording.h"

#include <QCoreApplication>

namespace mend::service {

std::vector<StageLine> stageLines(const bench::PieceState& piece, const rules::RuleBook& book)
{
    const auto say = [](const char* words) { return QCoreApplication::translate("Stages", words); };
    std::vector<StageLine> lines;
    const rules::Procedure* procedure = piece.agreed ? bench::procedureOf(piece, book) : nullptr;
    if (!procedure) {
        return lines;
    }
    for (const rules::Stage& stage : procedure->stages) {
        if (stage.byItself || bench::isPassedOver(stage, piece)) {
            continue;
        }
        const int count = bench::repetitionsOf(stage, piece, book);
        for (int rep = 1; rep <= count; ++rep) {
            StageLine line;
            line.words = text(stage.act);
            QStringList below;
            if (count > 1) {
                below += say("%1 of %2").arg(rep).arg(count);
            }
            if (const bench::StageRecord* told = piece.record({stage.key, rep})) {
                line.done = told->isDone();
                line.skipped = told->skipped;
                line.at = told->lastTouch;
                if (told->skipped) {
                    below += say("left out");
                } else if (told->isUnderHands()) {
                    below += say("under the hands");
                }
            }
            line.below = joined(below);
            lines.push_back(std::move(line));
        }
    }
    return lines;
}

} // namespace mend::service
