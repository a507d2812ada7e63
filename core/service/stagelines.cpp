#include "core/service/stagelines.h"

#include "core/service/wording.h"

#include <QCoreApplication>

namespace mend::service {

namespace {

// What a translator finds these words under.
class StageWords {
    Q_DECLARE_TR_FUNCTIONS(StageWords)
};

} // namespace

std::vector<StageLine> stageLines(const bench::PieceState& piece, const rules::RuleBook& book)
{
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
                below += StageWords::tr("%1 of %2").arg(rep).arg(count);
            }
            if (const bench::StageRecord* told = piece.record({stage.key, rep})) {
                line.done = told->isDone();
                line.skipped = told->skipped;
                line.at = told->lastTouch;
                if (told->skipped) {
                    below += StageWords::tr("left out");
                } else if (told->isUnderHands()) {
                    below += StageWords::tr("under the hands");
                }
            }
            line.below = joined(below);
            lines.push_back(std::move(line));
        }
    }
    return lines;
}

} // namespace mend::service
