#include "core/bench/hazardside.h"

#include "core/bench/benchpicture.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// How long what a stage leaves lasts by itself: its own figure, else the state's.
Span lastsOf(const rules::Leaves& left, const rules::RuleBook& book)
{
    if (left.lasts) {
        return left.lasts->value;
    }
    const rules::BenchState* state = book.state(left.state);
    return state && state->lasts ? state->lasts->value : Span{0};
}

/// How long after its close what a stage brings of these names is over; empty: it brings none.
std::optional<Span> bringsAgain(const rules::Stage& stage, const std::vector<std::string>& names,
                                const rules::RuleBook& book)
{
    std::optional<Span> after;
    if (std::ranges::any_of(stage.during, [&](const std::string& state) { return holdsName(names, state); })) {
        after = Span{0};
    }
    for (const rules::Leaves& left : stage.leaves) {
        if (holdsName(names, left.state)) {
            after = std::max(after.value_or(Span{0}), lastsOf(left, book));
        }
    }
    return after;
}

void addPlanned(RowSide& side, const std::vector<std::string>& names, const BenchPicture& picture)
{
    for (const Window& window : picture.windows()) {
        if (!window.closes || *window.closes < picture.now()) {
            continue;
        }
        const rules::Stage* stage = picture.stage(window.piece, window.stage.stage);
        const auto after = stage ? bringsAgain(*stage, names, picture.book()) : std::nullopt;
        if (!after) {
            continue;
        }
        side.planned.push_back({window.piece, window.stage, *window.closes + *after});
        std::ranges::stable_sort(side.planned, std::greater{}, &RowSide::Planned::over);
        side.planned.resize(std::min<std::size_t>(side.planned.size(), 2));
    }
}

bool isIn(const std::string& name, const Contents& contents, const BenchPicture& picture)
{
    return std::ranges::any_of(contents.materials,
                               [&](const MaterialIn& in) { return picture.matches(name, contents, in); }) ||
           holds(name, *contents.piece);
}

} // namespace

std::optional<Instant> RowSide::plannedBut(PieceId piece, const StageInstance& stage) const
{
    for (const Planned& each : planned) {
        if (each.piece != piece || each.stage != stage) {
            return each.over;
        }
    }
    return std::nullopt;
}

RowSide sideOf(const std::vector<std::string>& names, const std::vector<std::string>& inPieces,
               const BenchPicture& picture)
{
    RowSide side;
    for (const Presence& presence : picture.presences()) {
        if (holdsName(names, presence.state.state)) {
            side.inForce.push_back(&presence);
        }
    }
    for (const Contents& contents : picture.pieces()) {
        for (const std::string& name : inPieces) {
            if (isIn(name, contents, picture)) {
                side.inPieces.push_back({&contents, name});
            }
        }
    }
    addPlanned(side, names, picture);
    return side;
}

} // namespace mend::bench
