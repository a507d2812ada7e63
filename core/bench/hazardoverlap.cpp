#include "core/bench/hazardrows.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// The powders that a piece's procedure lays.
std::vector<std::string> powdersOf(const Contents* contents, const rules::RuleBook& book)
{
    std::vector<std::string> powders;
    if (!contents || !contents->procedure) {
        return powders;
    }
    for (const rules::Stage& stage : contents->procedure->stages) {
        for (const std::string& key : stage.uses) {
            const rules::Material* material = book.material(key);
            if (material && material->family == "metalPowder" && !holdsName(powders, key)) {
                powders.push_back(key);
            }
        }
    }
    return powders;
}

/// How long what a stage leaves lasts by itself: its own figure, else the state's.
Span lastsOf(const rules::Leaves& left, const rules::RuleBook& book)
{
    if (left.lasts) {
        return left.lasts->value;
    }
    const rules::BenchState* state = book.state(left.state);
    return state && state->lasts ? state->lasts->value : Span{0};
}

/// Gathers what one start, or one state in force, meets of one row.
class Meets {
public:
    Meets(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture, Findings& found)
        : m_asked(asked), m_hazard(hazard), m_picture(picture), m_found(found), m_answered(answeredAt(asked, hazard))
    {
    }

    /// Everything in force that one side of the row names. `itself`: a state that does not meet itself.
    void against(const std::vector<std::string>& names, rules::Verdict verdict, const Presence* itself = nullptr)
    {
        for (const Presence& presence : m_picture.presences()) {
            const bool own = presence.state.piece == m_asked.start.piece && presence.stage == m_asked.start.stage &&
                             !presence.stage.stage.empty();
            const bool answered = m_answered && presence.state.since <= *m_answered;
            if (&presence == itself || own || answered || !holdsName(names, presence.state.state)) {
                continue;
            }
            if (isExcepted() && presence.state.piece == m_asked.start.piece) {
                continue;
            }
            meet(presence.state.state, presence.state.piece, endOf(presence, names), verdict);
        }
        if (!m_answered) {
            const RowNames& inPieces = m_picture.namesInPieces(m_hazard);
            againstPieces(&names == &m_hazard.one ? inPieces.one : inPieces.other, verdict);
        }
    }

private:
    bool isExcepted() const { return holdsName(m_hazard.exceptStages, m_asked.start.stage.stage); }

    void againstPieces(const std::vector<std::string>& names, rules::Verdict verdict)
    {
        if (names.empty()) {
            return;
        }
        for (const Contents& contents : m_picture.pieces()) {
            const PieceId piece = contents.piece->piece.id;
            if (!verdictFor(piece, verdict)) {
                continue;
            }
            for (const std::string& name : names) {
                if (isIn(name, contents)) {
                    meet(name, piece, std::nullopt, verdict);
                }
            }
        }
    }

    /// A stage that is meant to meet the row meets only what it did not put there itself.
    bool isIn(const std::string& name, const Contents& contents) const
    {
        const bool isOwn = contents.piece->piece.id == m_asked.start.piece;
        if (isOwn && m_asked.start.place.isSet() &&
            record::placeKindKey(m_picture.kindOf(m_asked.start.place)) == name) {
            return true;
        }
        const bool onlyOld = isOwn && isExcepted();
        const bool holdsMaterial = std::ranges::any_of(contents.materials, [&](const MaterialIn& in) {
            return (!onlyOld || in.oldMend) && m_picture.matches(name, contents, in);
        });
        return holdsMaterial || holds(name, *contents.piece);
    }

    /// When it is over by itself. What is planned counts: a window that already runs and will
    /// bring the same thing again.
    std::optional<Instant> endOf(const Presence& presence, const std::vector<std::string>& names) const
    {
        if (!presence.state.until) {
            return std::nullopt;
        }
        Instant end = *presence.state.until;
        for (const Window& window : m_picture.windows()) {
            const rules::Stage* stage = m_picture.stage(window.piece, window.stage.stage);
            if (!stage || !window.closes || *window.closes < m_picture.now()) {
                continue;
            }
            if (window.piece == m_asked.start.piece && window.stage == m_asked.start.stage) {
                continue;
            }
            bool bringsAgain =
                std::ranges::any_of(stage->during, [&](const std::string& state) { return holdsName(names, state); });
            Span after{0};
            for (const rules::Leaves& left : stage->leaves) {
                if (holdsName(names, left.state)) {
                    bringsAgain = true;
                    after = std::max(after, lastsOf(left, m_picture.book()));
                }
            }
            if (bringsAgain) {
                end = std::max(end, *window.closes + after);
            }
        }
        return end;
    }

    std::optional<rules::Verdict> verdictFor(PieceId piece, rules::Verdict verdict) const
    {
        const Start& start = m_asked.start;
        const bool same = !piece.isSet() || !start.piece.isSet() || piece == start.piece;
        const std::optional<rules::Verdict> yes = verdict;
        switch (m_hazard.reach) {
        case rules::Reach::Room:
            return m_asked.outside ? std::nullopt : yes;
        case rules::Reach::Piece:
            return same ? yes : m_asked.outside ? std::nullopt : m_hazard.nearby;
        case rules::Reach::Place:
            return same || placeOf(piece) == start.place ? yes : std::nullopt;
        case rules::Reach::Tray:
            return same || !areOnTwoTrays(piece) ? yes : std::nullopt;
        }
        return yes;
    }

    PlaceId placeOf(PieceId piece) const
    {
        const Contents* contents = m_picture.contents(piece);
        return contents ? contents->place : PlaceId{};
    }

    bool areOnTwoTrays(PieceId piece) const
    {
        const PlaceId there = placeOf(piece);
        const auto isTray = [&](PlaceId place) { return m_picture.kindOf(place) == record::PlaceKind::Tray; };
        return there != m_asked.start.place && isTray(there) && isTray(m_asked.start.place);
    }

    bool isSpared(PieceId piece) const
    {
        const Contents* other = m_picture.contents(piece);
        if (m_hazard.spares == rules::Spares::Nothing || !other || !m_asked.contents) {
            return false;
        }
        if (other == m_asked.contents) {
            return true;
        }
        if (m_hazard.spares == rules::Spares::SameOwner) {
            const CustomerId owner = other->piece->piece.owner;
            return owner.isSet() && owner == m_asked.contents->piece->piece.owner;
        }
        const std::vector<std::string> powders = powdersOf(other, m_picture.book());
        return !powders.empty() && powders == powdersOf(m_asked.contents, m_picture.book());
    }

    void meet(const std::string& name, PieceId piece, std::optional<Instant> until, rules::Verdict base)
    {
        const auto verdict = verdictFor(piece, base);
        if (!verdict || isSpared(piece)) {
            return;
        }
        auto held = std::ranges::find_if(m_found, [&](const HazardFinding& finding) {
            return finding.hazard == &m_hazard && finding.verdict == *verdict;
        });
        if (held == m_found.end()) {
            HazardFinding fresh;
            fresh.hazard = &m_hazard;
            fresh.until = until;
            fresh.state = name;
            fresh.verdict = *verdict;
            m_found.push_back(fresh);
            held = std::prev(m_found.end());
        } else if (held->until && (!until || *until > *held->until)) {
            held->until = until;
            held->state = name;
        }
        addPiece(held->pieces, piece);
    }

    const StartAsked& m_asked;
    const rules::Hazard& m_hazard;
    const BenchPicture& m_picture;
    Findings& m_found;
    std::optional<Instant> m_answered;
};

} // namespace

void findOverlaps(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture, Findings& found)
{
    const bool bringsOne = brings(asked, hazard.one, picture);
    const bool bringsOther = brings(asked, hazard.other, picture);
    if (!bringsOne && !bringsOther) {
        return;
    }
    Meets meets(asked, hazard, picture, found);
    if (bringsOne) {
        meets.against(hazard.other, hazard.startingOne.value_or(hazard.verdict));
    }
    if (bringsOther) {
        meets.against(hazard.one, hazard.verdict);
    }
}

void findStandingOverlaps(const rules::Hazard& hazard, const BenchPicture& picture, Findings& found)
{
    const rules::Verdict verdict = hazard.startingOne.value_or(hazard.verdict);
    for (const Presence& presence : picture.presences()) {
        const bool isOne = holdsName(hazard.one, presence.state.state);
        const bool isOther = holdsName(hazard.other, presence.state.state);
        if (!presence.isState || (!isOne && !isOther)) {
            continue;
        }
        StartAsked asked;
        asked.start.piece = presence.state.piece;
        asked.start.stage = presence.stage;
        asked.contents = picture.contents(presence.state.piece);
        asked.start.place = asked.contents ? asked.contents->place : PlaceId{};
        asked.told = presence.state.state;
        Findings met;
        Meets meets(asked, hazard, picture, met);
        if (isOne) {
            meets.against(hazard.other, verdict, &presence);
        }
        if (isOther) {
            meets.against(hazard.one, verdict, &presence);
        }
        for (HazardFinding& finding : met) {
            addPiece(finding.pieces, presence.state.piece);
            const auto held = std::ranges::find_if(found, [&](const HazardFinding& each) {
                return each.hazard == &hazard && each.verdict == finding.verdict;
            });
            if (held == found.end()) {
                found.push_back(finding);
                continue;
            }
            for (const PieceId piece : finding.pieces) {
                addPiece(held->pieces, piece);
            }
        }
    }
}

} // namespace mend::bench
