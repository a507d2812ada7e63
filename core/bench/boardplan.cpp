#include "core/bench/boardplan.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// Whether the card offers a start at all: what waits, is under hands or is stopped has no use for the answer.
bool offersStart(const Card& card)
{
    const bool stands =
        card.standing == Standing::DoNow || card.standing == Standing::Open || card.standing == Standing::Free;
    return stands && !card.acts.empty() && (!card.window || !card.window->begunAt);
}

/// By so much a figure of whole minutes may fall short of the card's own latest start.
constexpr Span rounding = std::chrono::minutes(3);

Reason reasonOf(const Fit& fit, const Card& card)
{
    Reason reason;
    switch (fit.may) {
    case Fit::May::Yes:
        reason.kind = ReasonKind::Fits;
        reason.until = fit.until;
        if (fit.until && card.window && card.window->latestStart &&
            *fit.until >= *card.window->latestStart - rounding) {
            reason.until.reset(); // said on the card already
        }
        return reason;
    case Fit::May::Unsure:
        reason.kind = ReasonKind::UnsureIfFits;
        break;
    case Fit::May::No:
        reason.kind = fit.notBefore ? ReasonKind::NotBefore : ReasonKind::Clashes;
        break;
    }
    reason.piece = fit.clash.piece;
    reason.stage = fit.clash.stage;
    reason.until = fit.notBefore ? fit.notBefore : fit.closes;
    return reason;
}

/// After what forbids it or is past, before all else.
void say(Card& card, const Reason& reason)
{
    if (reason.kind != ReasonKind::Fits) { // the plan knows better which two want the same hands
        std::erase_if(card.reasons, [&](const Reason& each) {
            return each.kind == ReasonKind::TwoNeedHands && each.piece == reason.piece;
        });
    }
    const auto after = std::ranges::find_if_not(card.reasons, [](const Reason& each) {
        return each.kind == ReasonKind::Hazard || each.kind == ReasonKind::Late || each.kind == ReasonKind::Hold;
    });
    card.reasons.insert(after, reason);
}

/// The plan counts in whole minutes, on the safe side; where it stops within one of a latest start, it means that.
Instant asOnTheCards(Instant until, const std::vector<Window>& windows)
{
    for (const Window& window : windows) {
        const auto& latest = window.latestStart;
        if (latest && !window.begunAt && *latest >= until && *latest - until < std::chrono::minutes(1)) {
            return *latest;
        }
    }
    return until;
}

} // namespace

void layPlan(Board& board, const StandingPlan& plan)
{
    if (!plan.isWhole()) {
        return;
    }
    for (Card& card : board.cards) {
        const auto fit = std::ranges::find_if(
            plan.fits, [&](const Fit& each) { return each.piece == card.piece && each.stage == card.stage; });
        if (fit != plan.fits.end() && offersStart(card)) {
            say(card, reasonOf(*fit, card));
        }
    }
    board.planned = true;
    board.hands = plan.hands;
    if (plan.freeUntil) { // never later than what is open allows: who else is in the house is only known from hours
        const Instant until = asOnTheCards(*plan.freeUntil, board.windows);
        board.freeUntil = board.freeUntil ? std::min(*board.freeUntil, until) : until;
    }
}

} // namespace mend::bench
