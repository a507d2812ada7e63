#include "core/cure/climate.h"

#include <algorithm>
#include <cassert>

namespace mend::cure {

namespace {

/// Adds a step; one that would last no time at all gives way to it.
void beginStep(Climate& climate, const Air& air)
{
    if (!climate.steps.empty() && climate.steps.back().from >= air.from) {
        climate.steps.back() = air;
    } else {
        climate.steps.push_back(air);
    }
}

Air staleAir(Instant from, const Reading& reading, Side side)
{
    if (side == Side::Wait) {
        return {from, reading.temperature - staleMargin(), std::nullopt, Trust::Stale};
    }
    return {from, reading.temperature + staleMargin(), reading.humidity, Trust::Stale};
}

/// What one place adds from the moment the piece came there until it left.
void addStay(Climate& climate, const Stay& stay, std::optional<Instant> until, Side side, Temperature reference)
{
    const Air unknown{stay.from, reference, std::nullopt, Trust::Reference};
    if (stay.place == nullptr || stay.place->readings.empty()) {
        beginStep(climate, unknown);
        return;
    }
    const auto& readings = stay.place->readings;
    assert(std::ranges::is_sorted(readings, {}, &Reading::at));

    auto reading = std::ranges::upper_bound(readings, stay.from, {}, &Reading::at);
    if (reading == readings.begin()) {
        beginStep(climate, unknown);
    } else {
        --reading;
    }
    for (; reading != readings.end() && (!until || reading->at < *until); ++reading) {
        const auto next = std::next(reading);
        const Instant tooOld = reading->at + stay.place->maxAge;
        if (tooOld > stay.from) {
            beginStep(climate,
                      {std::max(reading->at, stay.from), reading->temperature, reading->humidity, Trust::Read});
        }
        const bool replaced = next != readings.end() && next->at <= tooOld;
        const bool leftBefore = until && *until <= tooOld;
        if (!replaced && !leftBefore) {
            beginStep(climate, staleAir(std::max(tooOld, stay.from), *reading, side));
        }
    }
}

} // namespace

const Air& Climate::at(Instant instant) const
{
    assert(!steps.empty());
    const auto later = std::ranges::upper_bound(steps, instant, {}, &Air::from);
    return later == steps.begin() ? steps.front() : *std::prev(later);
}

TemperatureStep staleMargin() { return degreesApart(3.0); }

Climate climateAlong(std::span<const Stay> stays, Side side, Temperature reference)
{
    assert(!stays.empty());
    assert(std::ranges::is_sorted(stays, {}, &Stay::from));
    Climate climate;
    for (std::size_t i = 0; i < stays.size(); ++i) {
        const bool last = i + 1 == stays.size();
        addStay(climate, stays[i], last ? std::nullopt : std::optional(stays[i + 1].from), side, reference);
    }
    return climate;
}

Climate keptAsAt(Climate climate, Instant now)
{
    assert(!climate.steps.empty());
    const auto later = std::ranges::upper_bound(climate.steps, now, {}, &Air::from);
    climate.steps.erase(std::max(later, std::next(climate.steps.begin())), climate.steps.end());
    return climate;
}

} // namespace mend::cure
