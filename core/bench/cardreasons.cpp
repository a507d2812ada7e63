#include "core/bench/cardreasons.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// A closing that heat has shortened by less is not worth a word.
constexpr Span worthSaying = std::chrono::minutes(1);

/// The reckoning that the close came from.
const Reckoning* closingOf(const Window& window)
{
    const auto found = std::ranges::find_if(
        window.why, [&](const Reckoning& reckoning) { return reckoning.closing && reckoning.result == window.closes; });
    return found == window.why.end() ? nullptr : &*found;
}

const Reckoning* lastOpeningOf(const Window& window)
{
    const Reckoning* latest = nullptr;
    for (const Reckoning& reckoning : window.why) {
        const bool later = !latest || !reckoning.result || (latest->result && *reckoning.result > *latest->result);
        if (!reckoning.closing && later) {
            latest = &reckoning;
        }
    }
    return latest;
}

void addHazards(std::vector<Reason>& reasons, const Card& card)
{
    for (const HazardFinding& finding : card.hazards) {
        Reason reason{.kind = ReasonKind::Hazard};
        reason.text = finding.hazard->said;
        reason.until = finding.until;
        reason.piece = finding.pieces.empty() ? PieceId{} : finding.pieces.front();
        reasons.push_back(reason);
    }
}

void addChain(std::vector<Reason>& reasons, const Window& window)
{
    for (std::size_t at = 0; at < window.chain.size(); ++at) {
        const bool self = window.chainPieces[at] == window.piece && window.chain[at] == window.stage;
        if (self) {
            continue;
        }
        const bool first = window.chainPieces.front() == window.piece && window.chain.front() == window.stage;
        Reason reason{.kind = first ? ReasonKind::ChainThen : ReasonKind::TwoNeedHands};
        reason.piece = window.chainPieces[at];
        reason.stage = window.chain[at];
        reasons.push_back(reason);
        return;
    }
}

void addSooner(std::vector<Reason>& reasons, const Window& window, Instant now)
{
    const Reckoning* closing = closingOf(window);
    if (!closing || !closing->result) {
        return;
    }
    const Span sooner = closing->origin + closing->figure - *closing->result;
    if (sooner < worthSaying) {
        return;
    }
    Reason reason{.kind = ReasonKind::Sooner};
    reason.span = sooner;
    reason.temperature = closing->air.at(now).temperature;
    reasons.push_back(reason);
}

void addAir(std::vector<Reason>& reasons, const Window& window, Instant now)
{
    const Reckoning* reckoning = closingOf(window) ? closingOf(window) : lastOpeningOf(window);
    const bool byTheClock = !reckoning || std::holds_alternative<cure::ClockOnly>(reckoning->formula);
    if (byTheClock || reckoning->air.steps.empty()) {
        return;
    }
    const cure::Air& air = reckoning->air.at(now);
    if (window.stalled) {
        Reason reason{.kind = ReasonKind::Stalled};
        reason.temperature = air.temperature;
        reasons.push_back(reason);
    }
    if (air.trust == cure::Trust::Stale) {
        Reason reason{.kind = ReasonKind::StaleReading};
        reason.temperature = air.temperature;
        reasons.push_back(reason);
    } else if (air.trust == cure::Trust::Reference) {
        reasons.push_back({.kind = ReasonKind::NoReading});
    }
}

void addMiss(std::vector<Reason>& reasons, const Window& window, const rules::Stage& stage)
{
    if (window.hasClose() && window.miss != rules::Miss::Nothing) {
        Reason reason{.kind = ReasonKind::MissCosts};
        reason.miss = window.miss;
        reason.text = stage.missText;
        reasons.push_back(reason);
    }
}

} // namespace

std::vector<Reason> reasonsOf(const Card& card, const Window& window, const rules::Stage& stage,
                              const PieceState& piece, const BenchFold&, const rules::RuleBook& book, Instant now)
{
    std::vector<Reason> reasons;
    addHazards(reasons, card);
    if (card.standing == Standing::Past && window.closes) {
        Reason reason{.kind = ReasonKind::Late};
        reason.span = now - *window.closes;
        reasons.push_back(reason);
    }
    addChain(reasons, window);
    if (window.waitsForTest && stage.test) {
        Reason reason{.kind = ReasonKind::TestByTouch};
        reason.text = stage.test->how;
        reason.until = window.askAgain;
        reasons.push_back(reason);
    }
    addSooner(reasons, window, now);
    addAir(reasons, window, now);
    addMiss(reasons, window, stage);
    if (const StageRecord* told = piece.record(window.stage); told && told->missed) {
        Reason reason{.kind = ReasonKind::MissCosts};
        reason.miss = stage.miss;
        reason.text = stage.missText;
        reasons.push_back(reason);
    }
    if (card.standing == Standing::Waiting && !window.hasClose()) {
        reasons.push_back({.kind = ReasonKind::MayStay});
    }
    for (const std::string& key : stage.cautions) {
        if (const rules::Caution* caution = book.caution(key)) {
            Reason reason{.kind = ReasonKind::Caution};
            reason.text = caution->text;
            reasons.push_back(reason);
        }
    }
    return reasons;
}

} // namespace mend::bench
