#include "core/bench/forecast.h"

#include <algorithm>

namespace mend::bench {

const cure::Law& lawOf(const std::string& key, const rules::RuleBook& book)
{
    static const cure::Law byTheClock = cure::ClockOnly{};
    const rules::NamedLaw* law = book.law(key);
    return law ? law->law : byTheClock;
}

cure::Law waitLaw(const rules::Stage& stage, const rules::RuleBook& book)
{
    cure::Law law = lawOf(stage.law, book);
    if (auto* arrhenius = std::get_if<cure::Arrhenius>(&law); arrhenius && stage.noForecastBelow) {
        arrhenius->noCreditBelow = std::max(arrhenius->noCreditBelow, stage.noForecastBelow->value);
    }
    return law;
}

cure::Climate airAhead(PlaceId place, cure::Side side, Temperature reference, const BenchFold& bench, Instant now)
{
    const auto air = bench.air.find(place);
    const cure::PlaceRecord* record = nullptr;
    if (air != bench.air.end()) {
        record = side == cure::Side::Wait ? &air->second.forWaits : &air->second.forClosings;
    }
    const cure::Stay stay{now, record};
    return cure::keptAsAt(cure::climateAlong(std::span(&stay, 1), side, reference), now);
}

PlaceId usualPlace(const rules::Stage& stage, const PieceState& piece, const BenchFold& bench, Instant when)
{
    const record::Place* lies = bench.roster.place(piece.placeAt(when));
    const bool rightAlready =
        lies && std::ranges::find(stage.places, record::placeKindKey(lies->kind)) != stage.places.end();
    if (stage.places.empty() || rightAlready) {
        return lies ? lies->id : PlaceId{};
    }
    const auto kind = record::placeKindFromKey(stage.places.front());
    const record::Place* usual = kind ? bench.roster.firstOfKind(*kind) : nullptr;
    return usual ? usual->id : (lies ? lies->id : PlaceId{});
}

} // namespace mend::bench
