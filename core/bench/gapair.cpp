#include "core/bench/gapair.h"

#include <algorithm>

namespace mend::bench {

namespace {

/// A room that nobody read, for what a gap may have cost a wait (common practice, no source).
const Temperature unreadRoom = Temperature::fromCelsius(18);

Temperature roomAt(const BenchFold& bench, Instant when)
{
    const record::Place* room = bench.roster.firstOfKind(record::PlaceKind::Bench);
    const auto air = room ? bench.air.find(room->id) : bench.air.end();
    std::optional<Temperature> newest;
    if (air != bench.air.end()) {
        for (const cure::Reading& reading : air->second.forWaits.readings) {
            if (reading.at <= when) {
                newest = reading.temperature;
            }
        }
    }
    return newest.value_or(unreadRoom);
}

/// From the start of the gap one air, from its end what was read last before it.
void fill(cure::PlaceRecord& record, const Event& gap, const cure::Reading& between, const cure::Reading& before)
{
    std::erase_if(record.readings,
                  [&](const cure::Reading& held) { return held.at >= *gap.from && held.at < gap.happened; });
    cure::Reading from = between;
    from.at = *gap.from;
    cure::Reading after = before;
    after.at = gap.happened;
    record.readings.push_back(from);
    if (std::ranges::none_of(record.readings, [&](const cure::Reading& held) { return held.at == after.at; })) {
        record.readings.push_back(after);
    }
    std::ranges::sort(record.readings, {}, &cure::Reading::at);
}

/// Between two readings nobody was there, but the thermometer kept its lowest and highest: waits are given
/// the one, closings the other, and both are known as well as any reading.
void fillWithRange(PlaceAir& air, const Event& gap)
{
    const auto spread = [&](cure::PlaceRecord& record, Temperature temperature) {
        cure::Reading between{*gap.from, temperature, gap.humidity};
        fill(record, gap, between, between);
        for (Instant at = *gap.from + record.maxAge; at < gap.happened && record.maxAge > Span{0};
             at += record.maxAge) {
            between.at = at;
            record.readings.push_back(between);
        }
        std::ranges::sort(record.readings, {}, &cure::Reading::at);
    };
    spread(air.forWaits, *gap.temperature);
    spread(air.forClosings, Temperature::fromCentidegrees(*gap.amount));
}

} // namespace

void fillGap(BenchFold& bench, const Event& gap)
{
    PlaceAir& air = bench.air[gap.place];
    if (gap.word == "between" && gap.temperature && gap.amount) {
        fillWithRange(air, gap);
        return;
    }
    std::optional<cure::Reading> before;
    for (const cure::Reading& reading : air.forWaits.readings) {
        if (reading.at <= *gap.from) {
            before = reading;
        }
    }
    if (!before) {
        return;
    }
    const cure::Reading cold{*gap.from, roomAt(bench, *gap.from), std::nullopt};
    const bool wentOff = gap.word == "wentOff";
    const bool unknown = gap.word == "unknown";
    fill(air.forWaits, gap, wentOff || unknown ? cold : *before, *before);
    fill(air.forClosings, gap, wentOff ? cold : *before, *before);
}

} // namespace mend::bench
