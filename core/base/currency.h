#pragma once

#include "core/base/units.h"

#include <optional>
#include <string>
#include <string_view>

namespace mend {

/// How many decimals a currency of ISO 4217 is written with: 2, but 0 for yen or won, 3 for some dinars and
/// rials, 4 for two units of account. Empty where the code is not three capital letters. (From memory of the
/// standard's list of minor units; no list in Debian carries them.)
std::optional<int> decimalsOf(std::string_view currency);

/// "128.50" in EUR, "1200" in JPY: a point, no grouping, whatever the language; for files, not for screens.
std::string plainAmount(const Money& money);

/// Reads what `plainAmount` writes, and a comma for the point; a sign is taken, more decimals than the currency
/// has are not, nor is anything that does not fit (F49).
std::optional<Money> moneyFrom(std::string_view amount, const std::string& currency);

} // namespace mend
