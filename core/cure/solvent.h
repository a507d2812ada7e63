#pragma once

#include "core/base/quantity.h"
#include "core/base/units.h"

#include <cmath>
#include <cstdint>

namespace mend::cure {

/// How much room a liquid or air takes up. Internal unit: microlitre.
struct VolumeUnit {};
using Volume = Quantity<VolumeUnit>;
inline Volume millilitres(double value) { return Volume::fromCount(std::llround(value * 1e3)); }
inline Volume litres(double value) { return Volume::fromCount(std::llround(value * 1e6)); }
inline Volume cubicMetres(double value) { return Volume::fromCount(std::llround(value * 1e9)); }
constexpr double inMillilitres(Volume volume) { return static_cast<double>(volume.count()) / 1e3; }
constexpr double inLitres(Volume volume) { return static_cast<double>(volume.count()) / 1e6; }
constexpr double inCubicMetres(Volume volume) { return static_cast<double>(volume.count()) / 1e9; }

/// How much of the air is vapour, as parts of the whole: 0.02 is 2 per cent by volume.
class VapourShare {
public:
    static constexpr VapourShare fromPercent(double value) { return VapourShare(value / 100.0); }
    static constexpr VapourShare fromPartsPerMillion(double value) { return VapourShare(value / 1e6); }
    static constexpr VapourShare fromFraction(double value) { return VapourShare(value); }
    constexpr double percent() const { return m_fraction * 100.0; }
    constexpr double partsPerMillion() const { return m_fraction * 1e6; }
    constexpr double fraction() const { return m_fraction; }
    constexpr auto operator<=>(const VapourShare&) const = default;

private:
    constexpr explicit VapourShare(double fraction) : m_fraction(fraction) {}
    double m_fraction;
};

/// What a wiping solvent is, as its safety data sheet gives it: the sheet wins over any figure here.
struct Solvent {
    double gramsPerMillilitre;       ///< density of the liquid, above 0
    double gramsPerMole;             ///< molar mass, above 0
    VapourShare lowerFlammableLimit; ///< thinner than this in air it does not catch fire; above 0
};

/// How much pure vapour some liquid makes when all of it dries, at one atmosphere (ideal gas).
Volume vapourOf(const Solvent& solvent, Volume liquid, Temperature air);

/// How little liquid, dried in this much closed air, makes it flammable.
Volume liquidToLowerLimit(const Solvent& solvent, Volume air, Temperature temperature);

/// How much air some liquid can make flammable when all of it dries.
Volume airToLowerLimit(const Solvent& solvent, Volume liquid, Temperature temperature);

/// How much air thins the vapour of some liquid down to `share` (above 0), such as a limit for breathing.
Volume airToDilute(const Solvent& solvent, Volume liquid, VapourShare share, Temperature temperature);

/// How much of closed air is vapour once all of the liquid has dried in it.
VapourShare shareIn(const Solvent& solvent, Volume liquid, Volume air, Temperature temperature);

/// How much of the air is vapour just above the open liquid, from its vapour pressure in
/// millimetres of mercury, at one atmosphere.
VapourShare saturated(double vapourPressureMmHg);

} // namespace mend::cure
