#include "core/bench/handover.h"

#include <algorithm>
#include <map>

namespace mend::bench {

namespace {

/// How many repetitions of stages that were agreed there are, and how many are settled.
struct Count {
    int agreed = 0;
    int settled = 0;
};

Count countStages(const PieceState& piece, const rules::RuleBook& book)
{
    Count count;
    const rules::Procedure* procedure = procedureOf(piece, book);
    if (!procedure) {
        return count;
    }
    for (const rules::Stage& stage : procedure->stages) {
        if (stage.byItself || isPassedOver(stage, piece)) {
            continue;
        }
        for (int rep = 1; rep <= repetitionsOf(stage, piece, book); ++rep) {
            const StageRecord* told = piece.record({stage.key, rep});
            ++count.agreed;
            count.settled += told && told->isSettled() ? 1 : 0;
        }
    }
    return count;
}

} // namespace

bool isMended(const PieceState& piece, const rules::RuleBook& book)
{
    const Count count = countStages(piece, book);
    return count.agreed > 0 && count.settled == count.agreed;
}

double mendedShare(const PieceState& piece, const rules::RuleBook& book)
{
    const Count count = countStages(piece, book);
    return count.agreed == 0 ? 0.0 : static_cast<double>(count.settled) / count.agreed;
}

std::optional<HandOverFrom> handOverFrom(const PieceState& piece, const rules::RuleBook& book)
{
    const rules::Procedure* procedure = procedureOf(piece, book);
    if (!procedure || !isMended(piece, book)) {
        return std::nullopt;
    }
    HandOverFrom from{piece.receivedAt.value_or(Instant{}), {}};
    std::map<std::string, Instant> lastUse;
    for (const StageRecord& told : piece.stages) {
        const rules::Stage* stage = procedure->find(told.at.stage);
        if (!stage || !told.lastTouch) {
            continue;
        }
        from.at = std::max(from.at, *told.lastTouch);
        for (const std::string& material : stage->uses) {
            Instant& last = lastUse[material];
            last = std::max(last, *told.lastTouch);
        }
    }
    for (const auto& [key, last] : lastUse) {
        const rules::Material* material = book.material(key);
        if (material && material->handOverWait && last + material->handOverWait->value > from.at) {
            from = {last + material->handOverWait->value, key};
        }
    }
    return from;
}

PieceProgress progressOf(const PieceState& piece, const rules::RuleBook& book, Instant now)
{
    if (piece.returnedUnmended) {
        return PieceProgress::ReturnedUnmended;
    }
    if (piece.handedOverAt) {
        return PieceProgress::HandedOver;
    }
    if (!piece.receivedAt) {
        return PieceProgress::Enquiry;
    }
    if (const auto from = handOverFrom(piece, book)) {
        return now >= from->at ? PieceProgress::Ready : PieceProgress::Resting;
    }
    if (std::ranges::any_of(piece.stages, [](const StageRecord& told) { return told.firstTouch.has_value(); })) {
        return PieceProgress::InWork;
    }
    return piece.agreed ? PieceProgress::Agreed : PieceProgress::Received;
}

} // namespace mend::bench
