#include "core/base/currency.h"

#include <gtest/gtest.h>

#include <limits>

using namespace mend;

// Minor units as ISO 4217 lists them (from memory).
TEST(Currency, HasItsOwnDecimalsF49)
{
    EXPECT_EQ(decimalsOf("EUR"), 2);
    EXPECT_EQ(decimalsOf("JPY"), 0);
    EXPECT_EQ(decimalsOf("KWD"), 3);
    EXPECT_EQ(decimalsOf("CLF"), 4);
    EXPECT_FALSE(decimalsOf("eur"));
    EXPECT_FALSE(decimalsOf("EURO"));
    EXPECT_EQ(plainAmount(Money(12850, "EUR")), "128.50");
    EXPECT_EQ(plainAmount(Money(1200, "JPY")), "1200");
    EXPECT_EQ(plainAmount(Money(1234, "KWD")), "1.234");
    EXPECT_EQ(plainAmount(Money(-5, "EUR")), "-0.05");
}

TEST(Currency, ReadsWhatItWritesUpToTheLastUnitF49)
{
    constexpr auto most = std::numeric_limits<std::int64_t>::max();
    constexpr auto least = std::numeric_limits<std::int64_t>::min();
    for (const char* const code : {"EUR", "JPY", "KWD", "CLF"}) {
        for (const std::int64_t minor : {std::int64_t{0}, std::int64_t{7}, std::int64_t{-99}, most, least}) {
            const Money money(minor, code);
            EXPECT_EQ(moneyFrom(plainAmount(money), code), money) << plainAmount(money);
        }
    }
    EXPECT_EQ(moneyFrom("12,5", "EUR"), Money(1250, "EUR")) << "a comma is a point";
}

TEST(Currency, RefusesWhatIsNoAmountF48F49)
{
    for (const char* const amount : {"", "-", ".", "1.", ".5", "1.234", "1e5", "nan", "inf", "12 5", "1,2,3",
                                     "99999999999999999999", "92233720368547758.08", "٣"}) {
        EXPECT_FALSE(moneyFrom(amount, "EUR")) << amount;
    }
    EXPECT_FALSE(moneyFrom("1.5", "JPY")) << "yen have no parts";
    EXPECT_FALSE(Money(std::numeric_limits<std::int64_t>::max(), "EUR").plus(Money(1, "EUR")));
    EXPECT_FALSE(Money(1, "EUR").plus(Money(1, "JPY")));
}
