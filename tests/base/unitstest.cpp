#include "core/base/units.h"
#include "core/base/id.h"

#include <gtest/gtest.h>

using namespace mend;

template <class A, class B>
concept Addable = requires(A a, B b)
{
    a + b;
};
template <class A, class B>
concept Comparable = requires(A a, B b)
{
    a == b;
};

// What must not compile is a test.
static_assert(!Addable<Mass, Length>);
static_assert(!Addable<Temperature, Temperature>);
static_assert(Addable<Temperature, TemperatureStep>);
static_assert(!Comparable<PieceId, PersonId>);
static_assert(!std::is_convertible_v<PieceId, std::int64_t>);
static_assert(!std::is_convertible_v<double, Mass>);

TEST(Units, KeepMilligramsExactly)
{
    Mass sum;
    for (int i = 0; i < 10; ++i) {
        sum += grams(0.1);
    }
    EXPECT_EQ(sum, grams(1.0));
}

TEST(Units, ConvertFahrenheitByDefinition)
{
    EXPECT_EQ(Temperature::fromFahrenheit(212), Temperature::fromCelsius(100));
    EXPECT_NEAR(Temperature::fromCelsius(24).fahrenheit(), 75.2, 1e-9);
    EXPECT_DOUBLE_EQ(Temperature::fromCelsius(0).kelvin(), 273.15);
}

TEST(Units, RefuseToAddTwoCurrencies)
{
    EXPECT_FALSE(Money(100, "EUR").plus(Money(100, "JPY")).has_value());
    EXPECT_EQ(Money(100, "EUR").plus(Money(1, "EUR")), Money(101, "EUR"));
    EXPECT_FALSE(Money(INT64_MAX, "EUR").plus(Money(1, "EUR")).has_value());
}
