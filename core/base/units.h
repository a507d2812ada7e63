#pragma once

#include "core/base/quantity.h"

#include <cmath>
#include <compare>
#include <cstdint>
#include <optional>
#include <string>

namespace mend {

/// What a powder or a mix weighs. Internal unit: milligram, so that gold adds up
/// exactly; anything finer than half a milligram is lost on the way in.
struct MassUnit {};
using Mass = Quantity<MassUnit>;
constexpr Mass milligrams(std::int64_t count) { return Mass::fromCount(count); }
inline Mass grams(double value) { return Mass::fromCount(std::llround(value * 1000.0)); }
constexpr double inGrams(Mass mass) { return static_cast<double>(mass.count()) / 1000.0; }

/// How long a seam, a chip or a line is. Internal unit: micrometre.
struct LengthUnit {};
using Length = Quantity<LengthUnit>;
constexpr Length micrometres(std::int64_t count) { return Length::fromCount(count); }
inline Length millimetres(double value) { return Length::fromCount(std::llround(value * 1000.0)); }
inline Length centimetres(double value) { return millimetres(value * 10.0); }
constexpr double inMillimetres(Length length) { return static_cast<double>(length.count()) / 1000.0; }
constexpr double inCentimetres(Length length) { return inMillimetres(length) / 10.0; }

/// A difference between two temperatures. Internal unit: hundredth of a degree Celsius.
struct TemperatureStepUnit {};
using TemperatureStep = Quantity<TemperatureStepUnit>;
inline TemperatureStep degreesApart(double celsius)
{
    return TemperatureStep::fromCount(std::llround(celsius * 100.0));
}

/// How warm a place is: a point, not an amount, so two of them cannot be added.
/// Internal unit: hundredth of a degree Celsius.
class Temperature {
public:
    constexpr Temperature() = default;
    static constexpr Temperature fromCentidegrees(std::int64_t count) { return Temperature(count); }
    static Temperature fromCelsius(double value) { return Temperature(std::llround(value * 100.0)); }
    static Temperature fromFahrenheit(double value) { return fromCelsius((value - 32.0) / 1.8); }

    constexpr std::int64_t centidegrees() const { return m_centidegrees; }
    constexpr double celsius() const { return static_cast<double>(m_centidegrees) / 100.0; }
    constexpr double fahrenheit() const { return celsius() * 1.8 + 32.0; }
    constexpr double kelvin() const { return celsius() + 273.15; }

    constexpr auto operator<=>(const Temperature&) const = default;
    constexpr Temperature operator+(TemperatureStep step) const { return Temperature(m_centidegrees + step.count()); }
    constexpr Temperature operator-(TemperatureStep step) const { return Temperature(m_centidegrees - step.count()); }
    constexpr TemperatureStep operator-(Temperature other) const
    {
        return TemperatureStep::fromCount(m_centidegrees - other.m_centidegrees);
    }

private:
    constexpr explicit Temperature(std::int64_t centidegrees) : m_centidegrees(centidegrees) {}
    std::int64_t m_centidegrees = 0;
};

/// How damp the air is. Internal unit: hundredth of a per cent of relative humidity.
struct HumidityUnit {};
using Humidity = Quantity<HumidityUnit>;
inline Humidity percentHumidity(double value) { return Humidity::fromCount(std::llround(value * 100.0)); }
constexpr double inPercent(Humidity humidity) { return static_cast<double>(humidity.count()) / 100.0; }

/// How strongly heat hastens a cure. Internal unit: joule per mole.
struct ActivationEnergyUnit {};
using ActivationEnergy = Quantity<ActivationEnergyUnit>;
inline ActivationEnergy kilojoulesPerMole(double value)
{
    return ActivationEnergy::fromCount(std::llround(value * 1000.0));
}
constexpr double inJoulesPerMole(ActivationEnergy energy) { return static_cast<double>(energy.count()); }

/// A price in whole minor units (cents, or yen where there are none) of one ISO 4217 currency.
class Money {
public:
    Money() = default;
    Money(std::int64_t minorUnits, std::string currency) : m_minor(minorUnits), m_currency(std::move(currency)) {}
    std::int64_t minorUnits() const { return m_minor; }
    const std::string& currency() const { return m_currency; }
    bool operator==(const Money&) const = default;
    /// Empty where the currencies differ or the sum does not fit.
    std::optional<Money> plus(const Money& other) const
    {
        std::int64_t sum = 0;
        if (m_currency != other.m_currency || __builtin_add_overflow(m_minor, other.m_minor, &sum)) {
            return std::nullopt;
        }
        return Money(sum, m_currency);
    }

private:
    std::int64_t m_minor = 0;
    std::string m_currency;
};

} // namespace mend
