#pragma once

#include <compare>
#include <cstdint>

namespace mend {

/// A whole number of one unit. Two different units never mix: what a length is
/// cannot be added to what a mass is. `Unit` is an empty tag type.
template <class Unit> class Quantity {
public:
    constexpr Quantity() = default;

    /// The one way in for code that speaks the internal unit; prefer the named ways.
    static constexpr Quantity fromCount(std::int64_t count) { return Quantity(count); }
    constexpr std::int64_t count() const { return m_count; }

    constexpr auto operator<=>(const Quantity&) const = default;
    constexpr Quantity operator-() const { return Quantity(-m_count); }
    constexpr Quantity operator+(Quantity other) const { return Quantity(m_count + other.m_count); }
    constexpr Quantity operator-(Quantity other) const { return Quantity(m_count - other.m_count); }
    constexpr Quantity operator*(std::int64_t times) const { return Quantity(m_count * times); }
    constexpr Quantity operator/(std::int64_t parts) const { return Quantity(m_count / parts); }
    /// How many times the other goes into this.
    constexpr double operator/(Quantity other) const
    {
        return static_cast<double>(m_count) / static_cast<double>(other.m_count);
    }
    constexpr Quantity& operator+=(Quantity other) { return *this = *this + other; }
    constexpr Quantity& operator-=(Quantity other) { return *this = *this - other; }

private:
    constexpr explicit Quantity(std::int64_t count) : m_count(count) {}
    std::int64_t m_count = 0;
};

} // namespace mend
