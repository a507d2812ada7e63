#include "core/bench/boardmoves.h"

#include <algorithm>

namespace mend::bench {

namespace {

const Window* sameWindow(const std::vector<Window>& windows, const Window& wanted)
{
    const auto found = std::ranges::find_if(
        windows, [&](const Window& each) { return each.piece == wanted.piece && each.stage == wanted.stage; });
    return found == windows.end() ? nullptr : &*found;
}

bool standsAsBefore(const Window& a, const Window& b)
{
    return a.opens == b.opens && a.opensAtLatest == b.opensAtLatest && a.latestStart == b.latestStart &&
           a.closes == b.closes && a.lost == b.lost && a.stalled == b.stalled && a.handsOn == b.handsOn;
}

} // namespace

std::vector<WindowMove> windowMoves(const Board& before, const Board& after)
{
    std::vector<WindowMove> moves;
    for (const Window& window : before.windows) {
        const Window* then = sameWindow(after.windows, window);
        if (!then) {
            moves.push_back({window.piece, window.stage, window.act, window, std::nullopt});
        } else if (!standsAsBefore(window, *then)) {
            moves.push_back({window.piece, window.stage, window.act, window, *then});
        }
    }
    for (const Window& window : after.windows) {
        if (!sameWindow(before.windows, window)) {
            moves.push_back({window.piece, window.stage, window.act, std::nullopt, window});
        }
    }
    return moves;
}

std::vector<PieceId> piecesUnder(const BenchFold& bench, const std::string& procedure)
{
    std::vector<PieceId> pieces;
    for (const auto& [id, piece] : bench.pieces) {
        if (piece.piece.procedure == procedure) {
            pieces.push_back(id);
        }
    }
    return pieces;
}

std::vector<Event> adoptions(std::span<const PieceId> pieces, const rules::RevisionHash& revision, const Hand& hand)
{
    std::vector<Event> events;
    for (const PieceId piece : pieces) {
        Event event = toldNow(What::RulesAdopted, hand);
        event.piece = piece;
        event.rules = revision;
        events.push_back(event);
    }
    return events;
}

Board boardIfAdopted(const Roster& roster, std::span<const Event> told, const rules::RuleBook& book,
                     rules::Procedure edited, std::span<const PieceId> pieces, Instant now)
{
    // No hash of a text is spelled like this, so it names the trial alone.
    static const rules::RevisionHash onTrial = "on trial";
    edited.hash = onTrial;
    rules::RuleBook trial = book;
    trial.formerRevisions.push_back(std::move(edited));
    std::vector<Event> events(told.begin(), told.end());
    EventId last;
    for (const Event& event : events) {
        last = std::max(last, event.id);
    }
    for (Event event : adoptions(pieces, onTrial, {{now, {}}, {}})) {
        last = EventId(last.value() + 1);
        event.id = last;
        events.push_back(event);
    }
    return boardOf(fold(roster, events, trial), trial, now);
}

} // namespace mend::bench
