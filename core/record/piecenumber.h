#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace mend::record {

/// The check character of ISO/IEC 7064 MOD 11-2 for a string of digits: '0' to '9' or 'X'.
/// Empty where anything else than a digit is in it, or nothing.
std::optional<char> checkCharacter(std::string_view digits);

/// Year (two digits), running number (four digits) and check character: "2604175".
/// `year` is the civil year, `running` 1 to 9999.
std::optional<std::string> pieceNumber(int year, int running);

/// Whether a typed number holds together; "O" is read as 0, "I" and "l" as 1, "x" as X,
/// spaces and hyphens are passed over. The number without them where it does.
std::optional<std::string> readPieceNumber(std::string_view typed);

/// As it is shown: the check character behind a hyphen, "260417-5".
std::string shownPieceNumber(std::string_view number);

} // namespace mend::record
