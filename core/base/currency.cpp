#include "core/base/currency.h"

#include <algorithm>
#include <array>

namespace mend {

namespace {

constexpr std::array<std::string_view, 16> withoutDecimals{"BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW",
                                                           "PYG", "RWF", "UGX", "UYI", "VND", "VUV", "XAF", "XOF"};
constexpr std::array<std::string_view, 7> withThree{"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"};
constexpr std::array<std::string_view, 2> withFour{"CLF", "UYW"};

template <class List> bool holds(const List& list, std::string_view code)
{
    return std::ranges::find(list, code) != list.end();
}

} // namespace

std::optional<int> decimalsOf(std::string_view currency)
{
    const bool isCode =
        currency.size() == 3 && std::ranges::all_of(currency, [](char c) { return c >= 'A' && c <= 'Z'; });
    if (!isCode) {
        return std::nullopt;
    }
    return holds(withoutDecimals, currency) ? 0 : holds(withThree, currency) ? 3 : holds(withFour, currency) ? 4 : 2;
}

std::string plainAmount(const Money& money)
{
    const auto decimals = static_cast<std::size_t>(decimalsOf(money.currency()).value_or(2));
    const bool isOwed = money.minorUnits() < 0;
    // Through unsigned, because the smallest number has no positive of its own.
    const auto bare = static_cast<std::uint64_t>(money.minorUnits());
    std::string digits = std::to_string(isOwed ? 0 - bare : bare);
    if (digits.size() <= decimals) {
        digits.insert(0, decimals + 1 - digits.size(), '0');
    }
    std::string text(isOwed ? 1 : 0, '-');
    text += digits.substr(0, digits.size() - decimals);
    if (decimals > 0) {
        text += '.';
        text += digits.substr(digits.size() - decimals);
    }
    return text;
}

std::optional<Money> moneyFrom(std::string_view amount, const std::string& currency)
{
    const auto decimals = decimalsOf(currency);
    const bool isNegative = amount.starts_with('-');
    amount.remove_prefix(isNegative ? 1 : 0);
    if (!decimals || amount.empty()) {
        return std::nullopt;
    }
    std::int64_t minor = 0;
    int after = -1; // digits behind the point; -1: none met yet
    int before = 0;
    const auto add = [&](int digit) {
        return !__builtin_mul_overflow(minor, 10, &minor) &&
               !__builtin_add_overflow(minor, isNegative ? -digit : digit, &minor);
    };
    for (const char c : amount) {
        if ((c == '.' || c == ',') && after < 0) {
            after = 0;
            continue;
        }
        if (c < '0' || c > '9' || !add(c - '0')) {
            return std::nullopt;
        }
        (after >= 0 ? after : before) += 1;
    }
    if (before == 0 || after == 0 || after > *decimals) {
        return std::nullopt;
    }
    for (int i = std::max(after, 0); i < *decimals; ++i) {
        if (!add(0)) {
            return std::nullopt;
        }
    }
    return Money(minor, currency);
}

} // namespace mend
