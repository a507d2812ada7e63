#include "core/bench/handover.h"

#include <algorithm>
#include <map>
#include <utility>

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

/// The latest of every material's own wait since its last use.
HandOverFrom afterWaits(HandOverFrom from, std::map<std::string, Instant> lastUse, const PieceState& piece,
                        const rules::RuleBook& book)
{
    for (const EarlierMaterial& earlier : piece.earlier) {
        Instant& last = lastUse[earlier.material];
        last = std::max(last, earlier.at);
    }
    for (const auto& [key, last] : lastUse) {
        const rules::Material* material = book.material(key);
        if (material && material->handOverWait && last + material->handOverWait->value > from.at) {
            from.at = last + material->handOverWait->value;
            from.material = key;
        }
    }
    if (piece.waitShortenedTo && *piece.waitShortenedTo < from.at) {
        from.fullWait = std::exchange(from.at, *piece.waitShortenedTo);
    }
    return from;
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
    return afterWaits(from, lastUse, piece, book);
}

namespace {

/// Plays the rest of the procedure without a pause.
class WorkAhead {
public:
    WorkAhead(const PieceState& piece, const rules::RuleBook& book, Instant now)
        : m_piece(piece), m_book(book), m_free(now)
    {
    }

    void take(const rules::Stage& stage)
    {
        for (int rep = 1; rep <= repetitionsOf(stage, m_piece, m_book); ++rep) {
            const StageRecord* told = m_piece.record({stage.key, rep});
            const bool settled = told && told->isSettled();
            if (settled && !told->lastTouch) {
                continue; // left out
            }
            const Instant begin = std::max(m_free, opens(stage));
            const Instant touch = settled ? *told->lastTouch : begin + handsOn(stage, m_piece, m_book);
            m_free = settled ? m_free : touch;
            m_touched[stage.key] = {touch, &stage};
            for (const std::string& material : stage.uses) {
                Instant& last = m_lastUse[material];
                last = std::max(last, touch);
            }
        }
    }

    Instant free() const { return m_free; }
    const std::map<std::string, Instant>& lastUse() const { return m_lastUse; }

private:
    Span waitAfter(const rules::Stage& stage) const
    {
        const auto wait =
            std::ranges::find_if(stage.waits, [this](const rules::Wait& each) { return holds(each.when, m_piece); });
        return wait == stage.waits.end() ? Span{0} : wait->span.value;
    }

    Instant opens(const rules::Stage& stage) const
    {
        Instant opens{};
        for (const rules::Lag& lag : stage.opens) {
            const auto from = m_touched.find(lag.from.stage);
            if (from != m_touched.end() && holds(lag.when, m_piece)) {
                const Span span = lag.waitOfStage ? waitAfter(*from->second.stage) : lag.span.value;
                opens = std::max(opens, from->second.at + span);
            }
        }
        return opens;
    }

    struct Touched {
        Instant at;
        const rules::Stage* stage = nullptr;
    };
    const PieceState& m_piece;
    const rules::RuleBook& m_book;
    Instant m_free;
    std::map<std::string, Touched> m_touched;
    std::map<std::string, Instant> m_lastUse;
};

} // namespace

std::optional<HandOverFrom> earliestHandOver(const PieceState& piece, const rules::RuleBook& book, Instant now)
{
    if (const auto mended = handOverFrom(piece, book)) {
        return mended;
    }
    const rules::Procedure* procedure = procedureOf(piece, book);
    if (!procedure) {
        return std::nullopt;
    }
    WorkAhead ahead(piece, book, now);
    for (const rules::Stage& stage : procedure->stages) {
        if (!isPassedOver(stage, piece)) {
            ahead.take(stage);
        }
    }
    return afterWaits({ahead.free(), {}}, ahead.lastUse(), piece, book);
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
