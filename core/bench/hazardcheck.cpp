#include "core/bench/hazardcheck.h"

#include "core/bench/hazardrows.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// Blocks before warnings before reminders, each in the order of the book.
void sortWorstFirst(Findings& found, const rules::RuleBook& book)
{
    const auto rank = [&](const HazardFinding& finding) {
        return std::pair(finding.verdict, finding.hazard - book.hazards.data());
    };
    std::ranges::stable_sort(found, {}, rank);
}

void findAtStart(const StartAsked& asked, const BenchPicture& picture, const BenchDay& day,
                 const AssemblyFacts* assembly, Findings& found)
{
    for (const rules::Hazard& hazard : picture.book().hazards) {
        switch (hazard.meeting) {
        case rules::Meeting::Overlap:
            findOverlaps(asked, hazard, picture, found);
            break;
        case rules::Meeting::Climate:
            findInAir(asked, hazard, picture, found);
            break;
        case rules::Meeting::Hands:
            findOnOneHand(asked, hazard, picture, found);
            break;
        case rules::Meeting::EndOfDay:
            findAfterHours(asked, hazard, picture, day, found);
            break;
        case rules::Meeting::Assembly:
            if (assembly) {
                findInAssembly(asked, hazard, *assembly, found);
            }
            break;
        case rules::Meeting::Standing:
            findReminders(asked, hazard, picture, found);
            break;
        case rules::Meeting::HeatLimit:
            break; // all at once below
        }
    }
    findHeatAtStart(asked, picture, found);
}

void findStanding(const BenchPicture& picture, const BenchDay& day, Findings& found)
{
    for (const rules::Hazard& hazard : picture.book().hazards) {
        switch (hazard.meeting) {
        case rules::Meeting::Overlap:
            findStandingOverlaps(hazard, picture, found);
            break;
        case rules::Meeting::Climate:
            findStandingInAir(hazard, picture, found);
            break;
        case rules::Meeting::Hands:
            findStandingOnOneHand(hazard, picture, found);
            break;
        case rules::Meeting::EndOfDay:
            findStandingAfterHours(hazard, picture, day, found);
            break;
        case rules::Meeting::Standing:
            findStandingReminders(hazard, picture, found);
            break;
        case rules::Meeting::Assembly:
        case rules::Meeting::HeatLimit:
            break;
        }
    }
    findStandingHeat(picture, found);
}

BenchDay dayOr(const BenchDay& day, const Roster& roster, Instant now)
{
    return day.benchCloses ? day : benchDayOf(roster, now);
}

} // namespace

std::optional<Instant> answeredAt(const StartAsked& asked, const rules::Hazard& hazard)
{
    std::optional<Instant> last;
    if (!asked.contents || !asked.stage) {
        return last;
    }
    for (const Override& given : asked.contents->piece->overrides) {
        const bool ofRow = given.answer.starts_with(hazard.key) && given.answer.size() > hazard.key.size() &&
                           given.answer[hazard.key.size()] == ':';
        if (ofRow && given.stage == asked.start.stage) {
            last = std::max(last.value_or(given.at), given.at);
        }
    }
    return last;
}

void addPiece(std::vector<PieceId>& pieces, PieceId piece)
{
    const auto place = std::ranges::lower_bound(pieces, piece);
    if (piece.isSet() && (place == pieces.end() || *place != piece)) {
        pieces.insert(place, piece);
    }
}

bool brings(const StartAsked& asked, const std::vector<std::string>& names, const BenchPicture& picture)
{
    const std::string kind =
        asked.start.place.isSet() ? record::placeKindKey(picture.kindOf(asked.start.place)) : std::string();
    return std::ranges::any_of(names, [&](const std::string& name) {
        return (!asked.told.empty() && name == asked.told) || (!kind.empty() && name == kind) ||
               (asked.stage && picture.factsOf(*asked.stage).brings(name));
    });
}

std::vector<record::PlaceKind> placeKindsIn(const rules::Hazard& hazard)
{
    std::vector<record::PlaceKind> kinds;
    for (const auto* side : {&hazard.one, &hazard.other}) {
        for (const std::string& name : *side) {
            if (const auto kind = record::placeKindFromKey(name)) {
                kinds.push_back(*kind);
            }
        }
    }
    return kinds;
}

std::vector<StateInForce> statesInForce(const BenchPicture& picture)
{
    std::vector<StateInForce> states;
    for (const Presence& presence : picture.presences()) {
        if (presence.isState) {
            states.push_back(presence.state);
        }
    }
    return states;
}

std::vector<HazardFinding> hazardsOf(const Start& start, const BenchPicture& picture, const BenchDay& day,
                                     const AssemblyFacts* assembly)
{
    StartAsked asked;
    asked.start = start;
    asked.contents = picture.contents(start.piece);
    asked.stage = picture.stage(start.piece, start.stage.stage);
    if (!asked.stage) {
        return {};
    }
    if (!asked.start.place.isSet()) {
        asked.start.place = asked.contents->place;
    }
    asked.outside = picture.kindOf(asked.start.place) == record::PlaceKind::Outside;
    Findings found;
    findAtStart(asked, picture, dayOr(day, picture.bench().roster, picture.now()), assembly, found);
    sortWorstFirst(found, picture.book());
    return found;
}

std::vector<HazardFinding> hazardsOfTelling(const std::string& state, const BenchPicture& picture, PieceId piece)
{
    StartAsked asked;
    asked.start.piece = piece;
    asked.contents = picture.contents(piece);
    asked.told = state;
    Findings found;
    for (const rules::Hazard& hazard : picture.book().hazards) {
        if (hazard.meeting == rules::Meeting::Overlap) {
            findOverlaps(asked, hazard, picture, found);
        }
    }
    sortWorstFirst(found, picture.book());
    return found;
}

std::vector<HazardFinding> standingHazards(const BenchPicture& picture, const BenchDay& day)
{
    Findings found;
    findStanding(picture, dayOr(day, picture.bench().roster, picture.now()), found);
    sortWorstFirst(found, picture.book());
    return found;
}

std::vector<HazardFinding> hazardsOf(const Start& start, const BenchFold& bench, const std::vector<Window>& windows,
                                     const rules::RuleBook& book, Instant now, const BenchDay& day,
                                     const AssemblyFacts* assembly)
{
    return hazardsOf(start, BenchPicture(bench, windows, book, now), day, assembly);
}

std::vector<HazardFinding> hazardsOfTelling(const std::string& state, const BenchFold& bench,
                                            const std::vector<Window>& windows, const rules::RuleBook& book,
                                            Instant now, PieceId piece)
{
    return hazardsOfTelling(state, BenchPicture(bench, windows, book, now), piece);
}

std::vector<StateInForce> statesInForce(const BenchFold& bench, const rules::RuleBook& book, Instant now)
{
    static const std::vector<Window> none;
    return statesInForce(BenchPicture(bench, none, book, now));
}

std::vector<HazardFinding> standingHazards(const BenchFold& bench, const std::vector<Window>& windows,
                                           const rules::RuleBook& book, Instant now, const BenchDay& day)
{
    return standingHazards(BenchPicture(bench, windows, book, now), day);
}

} // namespace mend::bench
