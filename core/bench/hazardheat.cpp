#include "core/bench/hazardheat.h"

#include "core/bench/hazardrows.h"

#include <algorithm>

namespace mend::bench {

namespace {

void lower(std::optional<HeatCap>& cap, const std::optional<HeatCap>& other)
{
    if (other && (!cap || other->warmest < cap->warmest)) {
        cap = other;
    }
}

/// One place at one temperature, with everything in it.
struct HotPlace {
    PlaceId place;
    Temperature temperature;
    std::vector<const Contents*> inside;
    const rules::Stage* starting = nullptr; ///< what is about to be done to `putIn`
    const Contents* putIn = nullptr;
};

const rules::Stage* startingOn(const HotPlace& hot, const Contents& contents)
{
    return &contents == hot.putIn ? hot.starting : nullptr;
}

/// A row names materials beside the kinds of place, or means any.
bool namesMaterials(const rules::Hazard& row) { return row.one.size() + row.other.size() > placeKindsIn(row).size(); }

bool holdsAny(const std::vector<std::string>& names, const Contents& contents, const rules::Stage* starting,
              const BenchPicture& picture)
{
    return picture.findMaterial(names, contents) || (starting && picture.factsOf(*starting).bringsAny(names));
}

/// Pieces that one row means and that would get too warm.
std::vector<PieceId> tooWarmFor(const rules::Hazard& row, const HotPlace& hot, const BenchPicture& picture)
{
    std::vector<PieceId> pieces;
    for (const Contents* contents : hot.inside) {
        const rules::Stage* starting = startingOn(hot, *contents);
        const auto cap = heatCapOf(*contents, picture, starting);
        bool over = cap && hot.temperature > cap->warmest;
        if (namesMaterials(row)) {
            const bool meant =
                holdsAny(row.one, *contents, starting, picture) || holdsAny(row.other, *contents, starting, picture);
            over = meant && (row.temperature ? hot.temperature > row.temperature->value : over);
        }
        if (over) {
            addPiece(pieces, contents->piece->piece.id);
        }
    }
    return pieces;
}

/// One finding a place: the row that names a material where it explains every piece that is
/// too warm, else the row for any material. `everywhere`: a general row's kinds of place are
/// where it stops a start; what lies too warm elsewhere is said all the same.
void addHeat(const HotPlace& hot, bool everywhere, const StartAsked* asked, const BenchPicture& picture,
             Findings& found)
{
    std::optional<HazardFinding> worst;
    for (const rules::Hazard& row : picture.book().hazards) {
        if (row.meeting != rules::Meeting::HeatLimit || (asked && answeredAt(*asked, row))) {
            continue;
        }
        const auto kinds = placeKindsIn(row);
        const bool kindMeant = kinds.empty() || std::ranges::find(kinds, picture.kindOf(hot.place)) != kinds.end();
        if (!kindMeant && !(everywhere && !namesMaterials(row))) {
            continue;
        }
        HazardFinding finding;
        finding.hazard = &row;
        finding.verdict = row.verdict;
        finding.place = hot.place;
        finding.pieces = tooWarmFor(row, hot, picture);
        const bool explainsMore = !worst || finding.pieces.size() > worst->pieces.size() ||
                                  (finding.pieces.size() == worst->pieces.size() && namesMaterials(row));
        if (!finding.pieces.empty() && explainsMore) {
            worst = finding;
        }
    }
    if (worst) {
        found.push_back(*worst);
    }
}

/// How warm it will be: what the place is set to, else what was read there, else for a cabinet
/// nobody read the coolest of the warm cures that the stage is done with.
std::optional<Temperature> temperatureAt(const StartAsked& asked, const BenchPicture& picture)
{
    if (asked.start.setTo) {
        return asked.start.setTo;
    }
    if (const auto air = picture.airOf(asked.start.place)) {
        return air->temperature;
    }
    return asked.stage ? aboutToBeSetTo(*asked.stage, asked.start.place, picture) : std::nullopt;
}

std::vector<const Contents*> insideOf(PlaceId place, const Contents* putIn, const BenchPicture& picture)
{
    std::vector<const Contents*> inside = picture.piecesAt(place);
    if (putIn && putIn->place != place) {
        inside.insert(std::ranges::lower_bound(inside, putIn), putIn);
    }
    return inside;
}

} // namespace

std::optional<Temperature> heatLimitOf(const rules::Material& material, Span age)
{
    for (const rules::HeatLimit& limit : material.heatLimits) {
        if ((!limit.fromAge || age >= *limit.fromAge) && (!limit.untilAge || age < *limit.untilAge)) {
            return limit.warmest.value;
        }
    }
    return std::nullopt;
}

std::optional<HeatCap> heatCapOf(const Contents& contents, const BenchPicture& picture, const rules::Stage* starting)
{
    std::optional<HeatCap> cap;
    const PieceId piece = contents.piece->piece.id;
    const auto consider = [&](const rules::Material& material, Span age) {
        if (const auto limit = heatLimitOf(material, std::max(Span{0}, age))) {
            lower(cap, HeatCap{*limit, piece, &material});
        }
    };
    for (const MaterialIn& in : contents.materials) {
        consider(*in.material, picture.now() - in.since);
    }
    if (starting) {
        for (const rules::Material* material : picture.factsOf(*starting).materials) {
            consider(*material, Span{0});
        }
    }
    return cap;
}

std::optional<HeatCap> heatCapOf(PlaceId place, const Contents* putIn, const BenchPicture& picture,
                                 const rules::Stage* starting)
{
    std::optional<HeatCap> cap;
    for (const Contents* contents : insideOf(place, putIn, picture)) {
        lower(cap, heatCapOf(*contents, picture, contents == putIn ? starting : nullptr));
    }
    return cap;
}

std::optional<Temperature> aboutToBeSetTo(const rules::Stage& stage, PlaceId place, const BenchPicture& picture)
{
    if (picture.kindOf(place) != record::PlaceKind::Cabinet) {
        return std::nullopt;
    }
    std::optional<Temperature> coolest;
    for (const rules::WarmCure& cure : stage.warmCures) {
        coolest = std::min(coolest.value_or(cure.temperature.value), cure.temperature.value);
    }
    const auto air = picture.airOf(place);
    return coolest && air && air->temperature >= *coolest ? std::nullopt : coolest;
}

void findHeatAtStart(const StartAsked& asked, const BenchPicture& picture, Findings& found)
{
    if (!asked.contents) {
        return;
    }
    const std::optional<Temperature> temperature = temperatureAt(asked, picture);
    if (!temperature) {
        return;
    }
    HotPlace hot{asked.start.place, *temperature, insideOf(asked.start.place, asked.contents, picture), asked.stage,
                 asked.contents};
    addHeat(hot, false, &asked, picture, found);
}

void findStandingHeat(const BenchPicture& picture, Findings& found)
{
    for (const auto& [place, readings] : picture.bench().air) {
        if (const auto air = picture.airOf(place)) {
            addHeat({place, air->temperature, insideOf(place, nullptr, picture), nullptr, nullptr}, true, nullptr,
                    picture, found);
        }
    }
}

} // namespace mend::bench
