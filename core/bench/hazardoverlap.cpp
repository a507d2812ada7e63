#include "core/bench/hazardrows.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// Gathers what one start, or one state in force, meets of one row.
class Meets {
public:
    Meets(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture, Findings& found)
        : m_asked(asked), m_hazard(hazard), m_picture(picture), m_found(found), m_answered(answeredAt(asked, hazard))
    {
    }

    /// Everything that one side of the row names. `itself`: a state that does not meet itself.
    void against(bool other, rules::Verdict verdict, const Presence* itself = nullptr)
    {
        const RowSide& side = m_picture.side(m_hazard, other);
        const auto planned = side.plannedBut(m_asked.start.piece, m_asked.start.stage);
        for (const Presence* presence : side.inForce) {
            if (presence != itself && !isOwn(*presence) && !(m_answered && presence->state.since <= *m_answered)) {
                meet(presence->state.state, presence->state.piece, endOf(*presence, planned), verdict);
            }
        }
        if (!m_answered) {
            againstPieces(side, other, verdict);
        }
    }

private:
    bool isExcepted() const { return holdsName(m_hazard.exceptStages, m_asked.start.stage.stage); }

    /// What the start itself brings; all of its piece where its act is meant to meet the row.
    bool isOwn(const Presence& presence) const
    {
        return presence.state.piece == m_asked.start.piece &&
               ((presence.stage == m_asked.start.stage && !presence.stage.stage.empty()) || isExcepted());
    }

    void againstPieces(const RowSide& side, bool other, rules::Verdict verdict)
    {
        const auto [before, after] =
            std::ranges::equal_range(side.inPieces, m_asked.contents, {}, &RowSide::InPiece::contents);
        const auto meetThem = [&](auto from, auto to) {
            for (; from != to; ++from) {
                meet(from->name, from->contents->piece->piece.id, std::nullopt, verdict);
            }
        };
        meetThem(side.inPieces.begin(), before);
        if (m_asked.contents) {
            const RowNames& inPieces = m_picture.namesInPieces(m_hazard);
            for (const std::string& name : other ? inPieces.other : inPieces.one) {
                if (isInOwn(name)) {
                    meet(name, m_asked.start.piece, std::nullopt, verdict);
                }
            }
        }
        meetThem(after, side.inPieces.end());
    }

    /// A stage that is meant to meet the row meets only what it did not put there itself.
    bool isInOwn(const std::string& name) const
    {
        const Contents& contents = *m_asked.contents;
        if (m_asked.start.place.isSet() && record::placeKindKey(m_picture.kindOf(m_asked.start.place)) == name) {
            return true;
        }
        const bool onlyOld = isExcepted();
        const bool holdsMaterial = std::ranges::any_of(contents.materials, [&](const MaterialIn& in) {
            return (!onlyOld || in.oldMend) && m_picture.matches(name, contents, in);
        });
        return holdsMaterial || holds(name, *contents.piece);
    }

    /// When it is over by itself. What is planned counts: a window that already runs and will
    /// bring the same thing again.
    static std::optional<Instant> endOf(const Presence& presence, const std::optional<Instant>& planned)
    {
        const auto& until = presence.state.until;
        return until && planned ? std::max(*until, *planned) : until;
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
        const std::vector<std::string>& powders = m_picture.powdersOf(*other);
        return !powders.empty() && powders == m_picture.powdersOf(*m_asked.contents);
    }

    void meet(std::string_view name, PieceId piece, std::optional<Instant> until, rules::Verdict base)
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
        meets.against(true, hazard.startingOne.value_or(hazard.verdict));
    }
    if (bringsOther) {
        meets.against(false, hazard.verdict);
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
            meets.against(true, verdict, &presence);
        }
        if (isOther) {
            meets.against(false, verdict, &presence);
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
