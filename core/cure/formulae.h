#pragma once

#include "core/base/result.h"
#include "core/base/time.h"
#include "core/base/units.h"
#include "core/cure/climate.h"

namespace mend::cure {

/// The gas constant that ties heat to speed, J/(mol K). Exact since the SI of 2019
/// (CODATA 2018 and 2022: Avogadro's number times Boltzmann's constant).
inline constexpr double gasConstant = 8.31446261815324;

/// How many times faster something ages for being warmer, by the rule of thumb of ASTM F1980:
/// q10^((aged - room) / 10 degrees). `q10` is what ten degrees do, above 0; 2 is the cautious usual.
/// Meant for the ageing of sterile packs: only its arithmetic is borrowed here.
double q10Factor(double q10, Temperature aged, Temperature room);

/// The time at `aged` that stands for `roomTime` at `room` (ASTM F1980: roomTime / q10Factor).
/// Rounded up to the millisecond.
Span q10Time(Span roomTime, double q10, Temperature aged, Temperature room);

/// Warmth gathered over time. Internal unit: hundredth of a degree times a millisecond, so it adds up exactly.
struct WarmthUnit {};
using Warmth = Quantity<WarmthUnit>;
constexpr double inDegreeHours(Warmth warmth) { return static_cast<double>(warmth.count()) / (100.0 * 3'600'000.0); }
constexpr double inDegreeDays(Warmth warmth) { return inDegreeHours(warmth) / 24.0; }

/// How much warmth above `datum` a piece has met: the temperature-time factor of Nurse and Saul
/// (ASTM C1074), the sum of max(0, T - datum) * dt. Time below the datum never takes any away.
Warmth temperatureTimeFactor(const Climate& climate, Instant from, Instant until, Temperature datum);

/// One cure that somebody watched: how warm it lay and how long it took to the same stage.
struct Observation {
    Temperature temperature;
    Span taken;
};

/// How strongly heat hastens a material, from the same stage watched at two temperatures:
/// R ln(t1/t2) / (1/T1 - 1/T2). Bad input where the temperatures are equal or not above absolute
/// zero, a time is not positive, or the warmer one took longer (then it was not the heat).
Result<ActivationEnergy> energyFrom(const Observation& one, const Observation& other);

/// How cold a pot must be for this air to wet it (Magnus form, a = 17.62, b = 243.12 degrees, from
/// memory; the pair of Alduchov and Eskridge 1996 differs by about 0.01 degree between 0 and 40 degrees).
/// Bad input for a humidity not above 0 or above 100 per cent, or air below -80 or above 100 degrees.
Result<Temperature> dewPoint(Temperature air, Humidity humidity);

/// How much warmer the object is than the dew point of the air it goes into; bad input as `dewPoint`.
Result<TemperatureStep> dewMargin(Temperature object, Temperature air, Humidity humidity);

/// The margin below which a pot may get wet: 3 degrees (usual on coating sheets).
TemperatureStep leastDewMargin();

/// May the object go in, or must it be warmed first?
bool staysDry(TemperatureStep margin);

} // namespace mend::cure
