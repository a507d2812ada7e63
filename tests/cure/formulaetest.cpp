#include "core/cure/formulae.h"

#include "tests/cure/samples.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::cure;
using namespace mend::cure::samples;

namespace {

double calibrated(double oneHours, double oneDegrees, double otherHours, double otherDegrees)
{
    const auto energy = energyFrom({celsius(oneDegrees), hours(oneHours)}, {celsius(otherDegrees), hours(otherHours)});
    return energy ? inJoulesPerMole(energy.value()) / 1000.0 : -1.0;
}

} // namespace

// CODATA 2018 and 2022; N_A = 6.02214076e23 and k = 1.380649e-23 are exact in the SI of 2019.
TEST(GasConstant, IsAvogadrosNumberTimesBoltzmanns)
{
    EXPECT_DOUBLE_EQ(gasConstant, 6.02214076 * 1.380649);
    EXPECT_EQ(gasConstant, 8.31446261815324);
}

// ASTM F1980, the worked ageing example that pages explaining it give: Q10 2, 55 against 25 degrees.
TEST(Q10, AgesASterilePackAsPublished)
{
    EXPECT_DOUBLE_EQ(q10Factor(2.0, celsius(55), celsius(25)), 8.0);
    EXPECT_EQ(q10Time(365 * 24h, 2.0, celsius(55), celsius(25)), hours(45.625 * 24));
    EXPECT_EQ(q10Time(730 * 24h, 2.0, celsius(55), celsius(25)), hours(91.25 * 24));
}

// ASTM F1980 form, reckoned by hand.
TEST(Q10, FollowsItsFormAtOtherFigures)
{
    EXPECT_NEAR(q10Factor(2.0, celsius(60), celsius(23)), 12.9960, 12.9960 * tableShare);
    EXPECT_NEAR(q10Factor(1.8, celsius(55), celsius(25)), 5.8320, 1e-9);
    EXPECT_DOUBLE_EQ(q10Factor(2.0, celsius(13), celsius(23)), 0.5);
}

// Worked example of a concrete-maturity formula page: 28 days at 15 degrees, datum -11.
TEST(TemperatureTime, IsThePublishedSum)
{
    const Warmth month = temperatureTimeFactor(steady(celsius(15)), evening, evening + 28 * 24h, celsius(-11));
    EXPECT_DOUBLE_EQ(inDegreeDays(month), 728.0);
}

// Nurse-Saul form of ASTM C1074, reckoned by hand: the six hours below the datum take nothing away.
TEST(TemperatureTime, NeverCountsColdAgainstTheCure)
{
    const Climate day = ramp({{18, 6}, {8, 6}, {22, 12}});
    EXPECT_DOUBLE_EQ(inDegreeHours(temperatureTimeFactor(day, evening, evening + 24h, celsius(10))), 192.0);
    EXPECT_EQ(temperatureTimeFactor(day, evening + 7h, evening + 8h, celsius(10)), Warmth{});
    EXPECT_EQ(temperatureTimeFactor(day, evening + 8h, evening + 7h, celsius(0)), Warmth{});
}

struct CalibrationRow {
    const char* what;
    double oneHours, oneDegrees, otherHours, otherDegrees;
    double kilojoules;
};

class Calibration : public testing::TestWithParam<CalibrationRow> {};

TEST_P(Calibration, FindsTheEnergy)
{
    const auto& row = GetParam();
    const double found = calibrated(row.oneHours, row.oneDegrees, row.otherHours, row.otherDegrees);
    EXPECT_NEAR(found, row.kilojoules, row.kilojoules * tableShare) << row.what;
    EXPECT_NEAR(calibrated(row.otherHours, row.otherDegrees, row.oneHours, row.oneDegrees), found, 0.001)
        << "either order";
}

INSTANTIATE_TEST_SUITE_P(
    Energies, Calibration,
    testing::Values(
        // Arrhenius form, reckoned by hand with R = 8.314.
        CalibrationRow{"filler, room and cabinet", 24, 21, 4, 45, 58.087},
        CalibrationRow{"doubles from 20 to 30", 2, 20, 1, 30, 51.213},
        CalibrationRow{"doubles from 40 to 50", 2, 40, 1, 50, 58.317},
        CalibrationRow{"halves in 8 degrees (an adhesive supplier's page on temperature)", 2, 23, 1, 31, 64.885},
        // Drying times 10, 5 and 3 h at 10, 23 and 40 degrees: a decorative enamel's product sheet.
        CalibrationRow{"enamel, cool", 10, 10, 5, 23, 37.172}, CalibrationRow{"enamel, warm", 5, 23, 3, 40, 23.169}));

// A filler's cure at room and in a warm cabinet (common practice, no source): 24 h at 70 F against 5 h at
// 110 F, 24 h at 75 F against 4 h at 120 F. Both imply an energy inside the 50 to 70 kJ/mol that
// calorimetry of epoxy-amine cures reports (Thermochim. Acta 447, 2006). Tolerance 0.2.
TEST(CalibrationOfTheTrade, AgreesWithTheLiterature)
{
    const auto fahrenheit = [](double value) { return Temperature::fromFahrenheit(value); };
    const auto mild = energyFrom({fahrenheit(70), 24h}, {fahrenheit(110), 5h});
    const auto hot = energyFrom({fahrenheit(75), 24h}, {fahrenheit(120), 4h});
    ASSERT_TRUE(mild && hot);
    EXPECT_NEAR(inJoulesPerMole(mild.value()) / 1000.0, 54.7, 0.2);
    EXPECT_NEAR(inJoulesPerMole(hot.value()) / 1000.0, 57.0, 0.2);
}

TEST(CalibrationOfNonsense, IsBadInput)
{
    const Observation good{celsius(21), 24h};
    for (const Observation& bad :
         {Observation{celsius(21), 4h}, Observation{celsius(45), 0h}, Observation{celsius(45), -4h},
          Observation{celsius(45), 25h}, Observation{celsius(-273.15), 48h}}) {
        for (const auto& energy : {energyFrom(good, bad), energyFrom(bad, good)}) {
            ASSERT_FALSE(energy);
            EXPECT_EQ(energy.fault().kind, FaultKind::BadInput);
        }
    }
}

struct DewRow {
    double air, percent, dew, tolerance;
};

class Dew : public testing::TestWithParam<DewRow> {};

TEST_P(Dew, PointIsThePublishedOne)
{
    const auto& row = GetParam();
    const auto dew = dewPoint(celsius(row.air), percentHumidity(row.percent));
    ASSERT_TRUE(dew);
    EXPECT_NEAR(dew.value().celsius(), row.dew, row.tolerance);
}

INSTANTIATE_TEST_SUITE_P(Points, Dew,
                         testing::Values(
                             // Magnus form with 17.62 and 243.12 (from memory), reckoned by hand.
                             DewRow{28, 85, 25.24, 0.01}, DewRow{25, 75, 20.26, 0.01},
                             // Alduchov and Eskridge 1996, 17.625 and 243.04: the two pairs differ by 0.01.
                             DewRow{20, 50, 9.261, 0.015}, DewRow{25, 60, 16.698, 0.015}, DewRow{30, 80, 26.171, 0.015},
                             // Saturated air is at its dew point by definition.
                             DewRow{-10, 100, -10, 0.005}, DewRow{0, 100, 0, 0.005}, DewRow{40, 100, 40, 0.005}));

TEST(DewPoint, RefusesAirThatCannotBe)
{
    for (const auto& [air, percent] :
         std::initializer_list<std::pair<double, double>>{{20, 0}, {20, -5}, {20, 100.01}, {-81, 50}, {101, 50}}) {
        const auto dew = dewPoint(celsius(air), percentHumidity(percent));
        ASSERT_FALSE(dew) << air << " " << percent;
        EXPECT_EQ(dew.fault().kind, FaultKind::BadInput);
        EXPECT_EQ(dewMargin(celsius(20), celsius(air), percentHumidity(percent)).fault().kind, FaultKind::BadInput);
    }
}

TEST(DewPoint, RisesWithWarmthAndWithDamp)
{
    Random random(20'260'103);
    for (int run = 0; run < 10'000; ++run) {
        const Temperature air = anyTemperature(random, -20, 60);
        const Humidity damp = Humidity::fromCount(between(random, 500, 9900));
        const auto dew = dewPoint(air, damp);
        ASSERT_TRUE(dew);
        ASSERT_LE(dew.value(), air);
        ASSERT_GE(dewPoint(air + degreesApart(1), damp).value(), dew.value());
        ASSERT_GE(dewPoint(air, damp + percentHumidity(1)).value(), dew.value());
    }
}

// Three degrees above the dew point: a decorative enamel's product sheet.
TEST(DewMargin, KeepsACoolPotOutOfTheHumidBox)
{
    const auto cool = dewMargin(celsius(20), celsius(25), percentHumidity(75));
    ASSERT_TRUE(cool);
    EXPECT_LT(cool.value(), TemperatureStep{});
    EXPECT_FALSE(staysDry(cool.value()));
    EXPECT_FALSE(staysDry(dewMargin(celsius(23.25), celsius(25), percentHumidity(75)).value()));
    EXPECT_TRUE(staysDry(dewMargin(celsius(23.27), celsius(25), percentHumidity(75)).value()));
    EXPECT_TRUE(staysDry(degreesApart(3.0)));
    EXPECT_FALSE(staysDry(degreesApart(2.99)));
}
