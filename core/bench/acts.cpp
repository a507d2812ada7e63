#include "core/bench/acts.h"

#include "core/bench/alert.h"
#include "core/bench/forecast.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// "Was done in time" is told as the last moment before the close, unless a time was told.
Instant lastMomentInTime(const Tap& tap, const BenchFold& bench, const rules::RuleBook& book, Instant now)
{
    const PieceState* piece = bench.piece(tap.piece);
    for (const Window& window : windowsOf(*piece, bench, book, now)) {
        if (window.stage == tap.act.stage && window.closes) {
            return std::min(now, *window.closes - Span{1});
        }
    }
    return now;
}

What whatOf(ActKind kind)
{
    switch (kind) {
    case ActKind::Begin:
    case ActKind::Confirm:
        return What::Begun;
    case ActKind::NotYet:
        return What::NotYet;
    case ActKind::DoingLate:
        return What::DoingLate;
    case ActKind::NotDone:
        return What::Missed;
    case ActKind::SendBack:
        return What::SentBack;
    case ActKind::HandOver:
        return What::HandedOver;
    case ActKind::EndHold:
        return What::HoldEnded;
    default:
        return What::Done;
    }
}

bool touchesThePiece(What what) { return what == What::Begun || what == What::Done; }

} // namespace

Event toldNow(What what, const Hand& hand)
{
    Event event;
    event.what = what;
    event.person = hand.person;
    event.happened = event.recorded = hand.now.utc;
    event.boot = hand.now.boot;
    return event;
}

std::vector<MixId> mixesFor(const rules::Stage& stage, const BenchFold& bench, const rules::RuleBook& book,
                            Instant when)
{
    std::vector<const MixState*> living;
    for (const auto& [id, mix] : bench.mixes) {
        const bool ofThisKind = mix.isAlive() && mix.material == stage.mix && mix.mixedAt <= when;
        const auto stiff = ofThisKind ? stiffAt(mix, bench, book, when) : std::nullopt;
        if (ofThisKind && (!stiff || *stiff > when)) {
            living.push_back(&mix);
        }
    }
    std::ranges::sort(living, {}, &MixState::mixedAt);
    std::vector<MixId> ids;
    std::ranges::transform(living, std::back_inserter(ids), &MixState::id);
    return ids;
}

std::vector<Event> eventsOf(const Tap& tap, const BenchFold& bench, const rules::RuleBook& book, const Hand& hand)
{
    const PieceState* piece = bench.piece(tap.piece);
    const bool needsAnswerElsewhere = tap.act.kind == ActKind::HandsOnIt || tap.act.kind == ActKind::AskHazard;
    if (!piece || needsAnswerElsewhere) {
        return {};
    }
    Event event = toldNow(whatOf(tap.act.kind), hand);
    event.piece = tap.piece;
    event.stage = tap.act.stage;
    event.rules = piece->rules;
    event.note = tap.note;
    event.happened = tap.happened.value_or(hand.now.utc);
    if (tap.act.kind == ActKind::WasInTime && !tap.happened) {
        event.happened = lastMomentInTime(tap, bench, book, hand.now.utc);
    }
    const rules::Procedure* procedure = procedureOf(*piece, book);
    const rules::Stage* stage = procedure ? procedure->find(tap.act.stage.stage) : nullptr;
    if (stage && touchesThePiece(event.what)) {
        event.place = tap.place.isSet() ? tap.place : usualPlace(*stage, *piece, bench, event.happened);
        const auto living = mixesFor(*stage, bench, book, event.happened);
        const StageRecord* told = piece->record(tap.act.stage);
        if (tap.mix.isSet()) {
            event.mix = tap.mix;
        } else if (told && told->mix.isSet()) {
            event.mix = told->mix;
        } else if (!stage->mix.empty() && living.size() == 1) {
            event.mix = living.front();
        }
    }
    return {event};
}

std::vector<EventId> builtOn(EventId id, std::span<const Event> events)
{
    const std::vector<Event> standing = effective(events);
    const auto base = std::ranges::find(standing, id, &Event::id);
    std::vector<EventId> later;
    if (base == standing.end()) {
        return later;
    }
    for (auto next = base + 1; next != standing.end(); ++next) {
        const bool samePiece = base->piece.isSet() && next->piece == base->piece && touchesThePiece(next->what);
        const bool sameMix = base->what == What::MixStarted && next->mix == base->mix;
        if (samePiece || sameMix) {
            later.push_back(next->id);
        }
    }
    return later;
}

} // namespace mend::bench
