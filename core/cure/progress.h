#pragma once

#include "core/base/time.h"
#include "core/cure/climate.h"
#include "core/cure/law.h"

#include <optional>

namespace mend::cure {

/// Which end of a published energy band to reckon with.
enum class EnergyEnd { Low, Typical, High };

/// How many times faster than at `reference` the cure runs at `temperature`
/// (Arrhenius form of ASTM C1074: exp(Ea/R * (1/Tref - 1/T)), R of CODATA 2018).
double rateFactor(const Arrhenius& law, EnergyEnd end, Temperature temperature, Temperature reference);

/// How much of a wait has been served: time at the reference temperature.
struct Progress {
    Span served{0};
    bool stalled = false; ///< at the last instant nothing was credited: check by touch
    bool operator==(const Progress&) const = default;
};

/// Credit gathered from `from` until `until` (equivalent age of ASTM C1074 for Arrhenius;
/// plain time inside the band for HumidBand; plain time for ClockOnly).
/// `warmThrough`: after each step up in temperature, so long the old temperature still counts
/// (the pot lags the cabinet air).
Progress progress(const Law& law, EnergyEnd end, Temperature reference, const Climate& climate, Instant from,
                  Instant until, Span warmThrough = Span{0});

/// When a wait will be over if the air stays as it is now. All empty where it stalls.
struct WaitForecast {
    Instant early;   ///< at the fast end of the band
    Instant typical;
    Instant late;    ///< at the slow end of the band: what plans reckon with
    bool operator==(const WaitForecast&) const = default;
};
std::optional<WaitForecast> forecastWait(Span needed, const Law& law, Temperature reference, const Climate& climate,
                                         Instant from, Span warmThrough = Span{0});

/// When something that stiffens is too far gone: `limit` after `from` by the clock, sooner
/// where the air was warmer than the reference, never later (one-sided rule). The fast end of
/// the band is used.
Instant forecastClose(Span limit, const Law& law, Temperature reference, const Climate& climate, Instant from);

} // namespace mend::cure
