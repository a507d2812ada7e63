#include "core/cure/solvent.h"

#include "core/cure/formulae.h"

#include <cassert>

namespace mend::cure {

namespace {

/// One standard atmosphere, exact by definition (10th CGPM, 1954).
constexpr double atmosphereInPascals = 101325.0;
constexpr double atmosphereInMmHg = 760.0;

double litresPerMole(Temperature air) { return 1000.0 * gasConstant * air.kelvin() / atmosphereInPascals; }

double vapourLitres(const Solvent& solvent, Volume liquid, Temperature air)
{
    assert(solvent.gramsPerMole > 0.0);
    const double moles = inMillilitres(liquid) * solvent.gramsPerMillilitre / solvent.gramsPerMole;
    return moles * litresPerMole(air);
}

} // namespace

Volume vapourOf(const Solvent& solvent, Volume liquid, Temperature air)
{
    return litres(vapourLitres(solvent, liquid, air));
}

Volume liquidToLowerLimit(const Solvent& solvent, Volume air, Temperature temperature)
{
    assert(solvent.gramsPerMillilitre > 0.0);
    const double moles = inLitres(air) * solvent.lowerFlammableLimit.fraction() / litresPerMole(temperature);
    return millilitres(moles * solvent.gramsPerMole / solvent.gramsPerMillilitre);
}

Volume airToLowerLimit(const Solvent& solvent, Volume liquid, Temperature temperature)
{
    return airToDilute(solvent, liquid, solvent.lowerFlammableLimit, temperature);
}

Volume airToDilute(const Solvent& solvent, Volume liquid, VapourShare share, Temperature temperature)
{
    assert(share.fraction() > 0.0);
    return litres(vapourLitres(solvent, liquid, temperature) / share.fraction());
}

VapourShare shareIn(const Solvent& solvent, Volume liquid, Volume air, Temperature temperature)
{
    assert(air > Volume{});
    return VapourShare::fromFraction(vapourLitres(solvent, liquid, temperature) / inLitres(air));
}

VapourShare saturated(double vapourPressureMmHg)
{
    return VapourShare::fromFraction(vapourPressureMmHg / atmosphereInMmHg);
}

} // namespace mend::cure
