#pragma once

#include "core/base/time.h"
#include "core/base/units.h"

#include <optional>
#include <span>
#include <vector>

namespace mend::cure {

/// What somebody read off a thermometer (and hygrometer) at one place.
struct Reading {
    Instant at;
    Temperature temperature;
    std::optional<Humidity> humidity;
    bool operator==(const Reading&) const = default;
};

/// Everything read at one place, oldest first, and how long a reading may be believed.
struct PlaceRecord {
    std::vector<Reading> readings;
    Span maxAge{std::chrono::hours{4}};
    bool operator==(const PlaceRecord&) const = default;
};

/// A piece lay at this place from then on.
struct Stay {
    Instant from;
    const PlaceRecord* place = nullptr;
};

/// Where a figure leans when the air is not known: a wait must not be credited with
/// heat that may not have been there, a closing must not be spared heat that may have.
enum class Side { Wait, Closing };

/// How far a step of air may be trusted.
enum class Trust {
    Read,      ///< inside a reading's age
    Stale,     ///< older than the rule allows: 3 degrees taken off for waits, put on for closings
    Reference, ///< no reading at all: the rule's own reference temperature
};

/// The air round a piece from one instant until the next step (the last one goes on for ever).
struct Air {
    Instant from;
    Temperature temperature;
    std::optional<Humidity> humidity;
    Trust trust = Trust::Read;
    bool operator==(const Air&) const = default;
};

/// The air round a piece over time, piecewise constant, oldest step first, never empty.
struct Climate {
    std::vector<Air> steps;
    bool operator==(const Climate&) const = default;

    /// The step in force at that instant (the first one for anything earlier).
    const Air& at(Instant instant) const;
};

/// What stale readings cost: 3 degrees Celsius to the safe side (common practice, no source).
TemperatureStep staleMargin();

/// The air a piece met on its way through places. A reading holds until the next one or
/// until it is too old; then the last one is kept with `staleMargin` to the safe side and,
/// for waits, without its humidity. Before the first reading of a place the first reading
/// younger than `maxAge` later does not count back: the reference is used and marked.
/// `stays` are oldest first and not empty.
Climate climateAlong(std::span<const Stay> stays, Side side, Temperature reference);

/// The same air, but staying from `now` on as it is at `now`: what a forecast is given. Without
/// it a reading would grow too old inside the forecast, and every long wait would seem to stall.
Climate keptAsAt(Climate climate, Instant now);

} // namespace mend::cure
