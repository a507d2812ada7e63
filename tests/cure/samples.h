#pragma once

#include "core/cure/climate.h"
#include "core/cure/law.h"
#include "core/cure/progress.h"

#include <algorithm>
#include <initializer_list>
#include <random>
#include <utility>

/// What the cure tests share: an evening to start from, short ways to write air, and random
/// air and laws from a seed that is always the same.
namespace mend::cure::samples {

using namespace std::chrono_literals;

/// Tables reckoned with R = 8.314 differ from the exact R by less than this share.
inline constexpr double tableShare = 0.001;

inline constexpr Instant evening{Span{1'760'000'000'000}};

inline Temperature celsius(double value) { return Temperature::fromCelsius(value); }

/// Hours, to the millisecond.
inline Span hours(double value) { return Span{std::llround(value * 3'600'000.0)}; }
inline double inHours(Span span) { return static_cast<double>(span.count()) / 3'600'000.0; }

inline Climate steady(Temperature temperature, std::optional<Humidity> humidity = std::nullopt)
{
    return {{{evening, temperature, humidity, Trust::Read}}};
}

/// Stretches of air one after the other from `evening` on: {degrees, hours}; the last goes on.
inline Climate ramp(std::initializer_list<std::pair<double, double>> stretches)
{
    Climate climate;
    Instant from = evening;
    for (const auto& [degrees, duration] : stretches) {
        climate.steps.push_back({from, celsius(degrees), std::nullopt, Trust::Read});
        from += hours(duration);
    }
    return climate;
}

inline EnergyBand band(double low, double typical, double high)
{
    return {kilojoulesPerMole(low), kilojoulesPerMole(typical), kilojoulesPerMole(high)};
}

/// The bare formula: an energy with no limits near the bench.
inline Arrhenius unlimited(ActivationEnergy energy)
{
    return {{energy, energy, energy}, std::nullopt, {energy, energy, energy}, celsius(-100), celsius(300)};
}

/// Two-part epoxies: 50 to 70 kJ/mol from calorimetry of epoxy-amine cures (Thermochim. Acta 447,
/// 2006: 55 to 60; Jawad: 63.6 to 70.7); nothing at or below 55 degrees Fahrenheit (an industrial epoxy
/// maker's winter-cure notes), side reactions above 60 degrees Celsius.
inline Arrhenius epoxy() { return {band(50, 60, 70), std::nullopt, band(50, 60, 70), celsius(13), celsius(60)}; }

/// Air-drying lacquer: 35 kJ/mol up to 25 degrees and 23 above, rounded from the drying times of a
/// decorative enamel's product sheet.
inline Arrhenius lacquer() { return {band(35, 35, 37), celsius(25), band(19, 23, 23), celsius(7), celsius(40)}; }

/// Urushi box as workshop pages give it: 20 to 28 degrees, 65 to 85 per cent.
inline HumidBand urushi() { return {celsius(20), celsius(28), percentHumidity(65), percentHumidity(85)}; }

using Random = std::mt19937_64;

inline std::int64_t between(Random& random, std::int64_t low, std::int64_t high)
{
    return std::uniform_int_distribution<std::int64_t>(low, high)(random);
}

inline bool oneIn(Random& random, int chances) { return between(random, 1, chances) == 1; }

inline Temperature anyTemperature(Random& random, std::int64_t low = 5, std::int64_t high = 70)
{
    return Temperature::fromCentidegrees(between(random, low * 100, high * 100));
}

/// One to twelve steps of up to six hours, on whole multiples of `grid`.
inline Climate anyClimate(Random& random, Span grid = Span{1})
{
    Climate climate;
    Instant from = evening - grid * between(random, 0, hours(6) / grid);
    const auto count = between(random, 1, 12);
    for (std::int64_t i = 0; i < count; ++i) {
        Air air{from, anyTemperature(random), std::nullopt, Trust::Read};
        if (!oneIn(random, 5)) {
            air.humidity = percentHumidity(static_cast<double>(between(random, 50, 95)));
        }
        climate.steps.push_back(air);
        from += grid * between(random, 1, hours(6) / grid);
    }
    return climate;
}

inline Arrhenius anyArrhenius(Random& random)
{
    const auto anyBand = [&](double most) {
        const double typical = static_cast<double>(between(random, 20, static_cast<std::int64_t>(most)));
        return band(typical - static_cast<double>(between(random, 0, 10)), typical,
                    typical + static_cast<double>(between(random, 0, 10)));
    };
    Arrhenius law{anyBand(70), std::nullopt, anyBand(70), anyTemperature(random, 5, 20),
                  anyTemperature(random, 40, 70)};
    if (oneIn(random, 3)) {
        law.bend = anyTemperature(random, 15, 45);
    }
    return law;
}

inline Law anyLaw(Random& random)
{
    switch (between(random, 0, 4)) {
    case 0:
        return ClockOnly{};
    case 1:
        return HumidBand{celsius(10), celsius(45), percentHumidity(55), percentHumidity(90)};
    default:
        return anyArrhenius(random);
    }
}

inline Span anyWarmThrough(Random& random)
{
    return oneIn(random, 2) ? Span{0} : Span{between(random, 0, Span{45min}.count())};
}

inline EnergyEnd anyEnd(Random& random) { return static_cast<EnergyEnd>(between(random, 0, 2)); }

} // namespace mend::cure::samples
