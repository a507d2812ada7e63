#include "core/bench/state.h"

#include <algorithm>

namespace mend::bench {

namespace {
template <class Row, class RowId> const Row* rowWithId(const std::vector<Row>& rows, RowId id)
{
    const auto found = std::ranges::find(rows, id, &Row::id);
    return found == rows.end() ? nullptr : &*found;
}
} // namespace

const record::Piece* Roster::piece(PieceId id) const { return rowWithId(pieces, id); }

const record::Customer* Roster::customer(CustomerId id) const { return rowWithId(customers, id); }

const record::Place* Roster::place(PlaceId id) const { return rowWithId(places, id); }

const record::Person* Roster::person(PersonId id) const { return rowWithId(people, id); }

const record::Place* Roster::firstOfKind(record::PlaceKind kind) const
{
    const auto found = std::ranges::find(places, kind, &record::Place::kind);
    return found == places.end() ? nullptr : &*found;
}

std::optional<Instant> Roster::endOfDay(Instant when) const
{
    const auto day = std::ranges::find_if(openHours, [when](const InstantRange& hours) { return when <= hours.to; });
    return day == openHours.end() ? std::nullopt : std::optional(day->to);
}

const StageRecord* PieceState::record(const StageInstance& at) const
{
    const auto found = std::ranges::lower_bound(stages, at, {}, &StageRecord::at);
    return found != stages.end() && found->at == at ? &*found : nullptr;
}

PlaceId PieceState::placeAt(Instant when) const
{
    PlaceId place = stays.front().place;
    for (const PieceStay& stay : stays) {
        if (stay.from <= when) {
            place = stay.place;
        }
    }
    return place;
}

const PieceState* BenchFold::piece(PieceId id) const
{
    const auto found = pieces.find(id);
    return found == pieces.end() ? nullptr : &found->second;
}

} // namespace mend::bench
