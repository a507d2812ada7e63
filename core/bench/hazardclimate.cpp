#include "core/bench/hazardrows.h"

#include "core/cure/formulae.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// How long a pot can lag the air it was put into, where the rules do not say
/// (a 5 mm wall takes 15 to 30 min; common practice, no source).
constexpr Span usualWarmThrough = std::chrono::minutes{30};

bool isPlaceMeant(const rules::Hazard& hazard, record::PlaceKind kind)
{
    const std::vector<record::PlaceKind> kinds = placeKindsIn(hazard);
    return kinds.empty() || std::ranges::find(kinds, kind) != kinds.end();
}

bool isDampOrDryEnough(const rules::Hazard& hazard, const cure::Air& air)
{
    if (!hazard.humidity || !air.humidity) {
        return false;
    }
    return hazard.whenDrier ? *air.humidity < hazard.humidity->value : *air.humidity >= hazard.humidity->value;
}

/// The first name of the row that the piece is or holds; empty: none.
std::string nameOf(const rules::Hazard& hazard, const Contents& contents, const BenchPicture& picture)
{
    for (const auto* side : {&hazard.one, &hazard.other}) {
        for (const std::string& name : *side) {
            const bool held = std::ranges::any_of(
                contents.materials, [&](const MaterialIn& in) { return picture.matches(name, contents, in); });
            const bool inForce = picture.isInForce(contents.piece->piece.id, name);
            if (held || inForce) {
                return name;
            }
        }
    }
    return {};
}

std::string nameBroughtBy(const rules::Hazard& hazard, const StageFacts& facts)
{
    for (const auto* side : {&hazard.one, &hazard.other}) {
        for (const std::string& name : *side) {
            if (facts.brings(name)) {
                return name;
            }
        }
    }
    return {};
}

HazardFinding inAir(const rules::Hazard& hazard, PieceId piece, PlaceId place, std::string name)
{
    HazardFinding finding;
    finding.hazard = &hazard;
    finding.verdict = hazard.verdict;
    finding.place = place;
    finding.state = std::move(name);
    addPiece(finding.pieces, piece);
    return finding;
}

/// A pot that lies in that air already is as warm as it; one that is carried in brings its cold.
std::optional<Temperature> coldestOf(const StartAsked& asked, const cure::Air& air, const BenchPicture& picture)
{
    const Span lag = asked.stage->warmThrough ? asked.stage->warmThrough->value : usualWarmThrough;
    const PieceState& piece = *asked.contents->piece;
    const bool livesThere =
        asked.contents->place == asked.start.place && piece.placeAt(picture.now() - lag) == asked.start.place;
    return livesThere ? std::optional(air.temperature) : picture.coolest(*asked.contents, lag);
}

bool wouldGetWet(const StartAsked& asked, const rules::Hazard& hazard, const cure::Air& air,
                 const BenchPicture& picture)
{
    const auto object = coldestOf(asked, air, picture);
    if (!object || !air.humidity) {
        return false;
    }
    const Result<TemperatureStep> margin = cure::dewMargin(*object, air.temperature, *air.humidity);
    return margin.isOk() && margin.value().count() < hazard.margin->value.centidegrees();
}

} // namespace

void findInAir(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture, Findings& found)
{
    if (!asked.contents || !asked.stage || answeredAt(asked, hazard)) {
        return;
    }
    const auto air = picture.airOf(asked.start.place);
    if (!air) {
        return;
    }
    const PieceId piece = asked.start.piece;
    const std::string brought = nameBroughtBy(hazard, picture.factsOf(*asked.stage));
    if (hazard.margin) {
        const auto kinds = placeKindsIn(hazard);
        const bool kindMeant = std::ranges::find(kinds, picture.kindOf(asked.start.place)) != kinds.end();
        if ((kindMeant || !brought.empty()) && wouldGetWet(asked, hazard, *air, picture)) {
            found.push_back(inAir(hazard, piece, asked.start.place, brought));
        }
        return;
    }
    if (!isPlaceMeant(hazard, picture.kindOf(asked.start.place)) || !isDampOrDryEnough(hazard, *air)) {
        return;
    }
    const std::string held = nameOf(hazard, *asked.contents, picture);
    if (!held.empty() || !brought.empty()) {
        found.push_back(inAir(hazard, piece, asked.start.place, held.empty() ? brought : held));
    }
}

void findStandingInAir(const rules::Hazard& hazard, const BenchPicture& picture, Findings& found)
{
    if (hazard.margin) {
        return;
    }
    for (const auto& [place, readings] : picture.bench().air) {
        const auto air = picture.airOf(place);
        if (!air || !isPlaceMeant(hazard, picture.kindOf(place)) || !isDampOrDryEnough(hazard, *air)) {
            continue;
        }
        HazardFinding finding = inAir(hazard, PieceId{}, place, {});
        for (const Contents* contents : picture.piecesAt(place)) {
            const std::string held = nameOf(hazard, *contents, picture);
            if (!held.empty()) {
                finding.state = held;
                addPiece(finding.pieces, contents->piece->piece.id);
            }
        }
        if (!finding.pieces.empty()) {
            found.push_back(finding);
        }
    }
}

} // namespace mend::bench
