#pragma once

#include "core/base/time.h"
#include "core/cure/climate.h"
#include "core/cure/law.h"

#include <optional>

namespace mend::cure {

/// Which end of a published energy band to reckon with.
enum class EnergyEnd { Low, Typical, High };

/// How many times faster than at `reference` the cure runs at `temperature`
/// (Arrhenius form of ASTM C1074: exp(Ea/R * (1/Tref - 1/T)), R of CODATA 2018). The formula
/// alone: the limits of the law are the business of `waitRate` and `closingRate`.
double rateFactor(const Arrhenius& law, EnergyEnd end, Temperature temperature, Temperature reference);

/// How much of a wait one unit of time in that air serves: 0 where it stalls. Below the law's
/// limit nothing, above its upper limit no more than there, outside a humid band or without a
/// known humidity nothing. Slower than a millionth of the reference counts as stalled.
double waitRate(const Law& law, EnergyEnd end, Temperature temperature, std::optional<Humidity> humidity,
                Temperature reference);

/// How fast a closing runs in that air: at least by the clock, faster where it is warmer than the
/// reference, with no upper limit (heat that is not credited to a wait still stiffens a mix).
double closingRate(const Law& law, Temperature temperature, Temperature reference);

/// How much of a wait has been served: time at the reference temperature.
struct Progress {
    Span served{0};
    bool stalled = false; ///< at the last instant nothing was credited: check by touch
    bool operator==(const Progress&) const = default;
};

/// Credit gathered from `from` until `until`, rounded down (equivalent age of ASTM C1074 for Arrhenius;
/// plain time inside the band for HumidBand; plain time for ClockOnly).
/// `warmThrough`: after each step up in temperature, so long the old temperature still counts
/// (the pot lags the cabinet air): the coolest air of the last `warmThrough` is what counts.
/// `climate` must reach back before a move for that move to be seen as a step.
Progress progress(const Law& law, EnergyEnd end, Temperature reference, const Climate& climate, Instant from,
                  Instant until, Span warmThrough = Span{0});

/// When a wait will be over if the air goes on as the climate's last step (see `keptAsAt`).
/// Rounded up: at `typical` the progress of that end of the band reaches what is needed, one
/// millisecond earlier it does not. `early` and `late` are the first and the last of the three ends.
struct WaitForecast {
    Instant early; ///< at the fast end of the band
    Instant typical;
    Instant late;                           ///< at the slow end of the band: what plans reckon with
    EnergyEnd lateEnd = EnergyEnd::Typical; ///< the end that `late` comes from
    bool operator==(const WaitForecast&) const = default;
};
/// Empty where it stalls before every end of the band has got there; ask `progress` whether a wait is over.
std::optional<WaitForecast> forecastWait(Span needed, const Law& law, Temperature reference, const Climate& climate,
                                         Instant from, Span warmThrough = Span{0});

/// When something that stiffens is too far gone: `limit` after `from` by the clock, sooner
/// where the air was warmer than the reference, never later (one-sided rule). The fast end of
/// the band is used. Rounded down; a limit below zero counts as none.
Instant forecastClose(Span limit, const Law& law, Temperature reference, const Climate& climate, Instant from);

} // namespace mend::cure
