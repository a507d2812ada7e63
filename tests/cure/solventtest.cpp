#include "core/cure/solvent.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::cure;

namespace {

// Flammable limits: NIOSH Pocket Guide, isopropyl and ethyl alcohol. Densities at 20 degrees and molar
// masses: from memory. The expected figures were reckoned with 24.05 litres a mole; tolerance 0.001 relative.
const Solvent isopropanol{0.786, 60.1, VapourShare::fromPercent(2.0)};
const Solvent ethanol{0.789, 46.07, VapourShare::fromPercent(3.3)};
const Temperature room = Temperature::fromCelsius(20);
const Volume cabinet = litres(60);

} // namespace

TEST(Solvent, FillsACuringCabinetFromAThimble)
{
    EXPECT_NEAR(inMillilitres(liquidToLowerLimit(isopropanol, cabinet, room)), 3.815, 3.815 * 0.001);
    EXPECT_NEAR(inMillilitres(liquidToLowerLimit(ethanol, cabinet, room)), 4.807, 4.807 * 0.001);
}

TEST(Solvent, TakesMuchAirToThin)
{
    EXPECT_NEAR(inLitres(airToLowerLimit(isopropanol, millilitres(10), room)), 157.27, 157.27 * 0.001);
    // Exposure limit 400 parts per million: NIOSH Pocket Guide.
    EXPECT_NEAR(inCubicMetres(airToDilute(isopropanol, millilitres(10), VapourShare::fromPartsPerMillion(400), room)),
                7.9, 0.05);
    EXPECT_NEAR(shareIn(isopropanol, millilitres(10), cubicMetres(30), room).partsPerMillion(), 105.0, 0.5);
}

// Vapour pressure 33 mmHg: NIOSH Pocket Guide, isopropyl alcohol.
TEST(Solvent, MakesFlammableAirOverAnOpenDish)
{
    EXPECT_NEAR(saturated(33).percent(), 4.342, 0.005);
    EXPECT_GT(saturated(33), isopropanol.lowerFlammableLimit);
}

TEST(Solvent, GivesBackWhatItTook)
{
    const Volume liquid = liquidToLowerLimit(ethanol, cabinet, room);
    EXPECT_NEAR(inLitres(airToLowerLimit(ethanol, liquid, room)), 60.0, 0.02);
    EXPECT_NEAR(shareIn(ethanol, liquid, cabinet, room).percent(), 3.3, 0.001);
    EXPECT_NEAR(inLitres(vapourOf(ethanol, liquid, room)), 60.0 * 0.033, 0.001);
}

TEST(Solvent, SwellsWithTheWarmth)
{
    EXPECT_GT(airToLowerLimit(isopropanol, millilitres(10), Temperature::fromCelsius(40)),
              airToLowerLimit(isopropanol, millilitres(10), room));
    EXPECT_LT(liquidToLowerLimit(isopropanol, cabinet, Temperature::fromCelsius(40)),
              liquidToLowerLimit(isopropanol, cabinet, room));
}
