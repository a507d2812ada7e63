#include "core/record/piecenumber.h"

#include <algorithm>
#include <array>
#include <cstdio>

namespace mend::record {

namespace {
bool isDigit(char c) { return c >= '0' && c <= '9'; }

constexpr std::size_t bodyLength = 6;
} // namespace

std::optional<char> checkCharacter(std::string_view digits)
{
    if (digits.empty() || !std::ranges::all_of(digits, isDigit)) {
        return std::nullopt;
    }
    int product = 0;
    for (const char digit : digits) {
        product = (product + (digit - '0')) * 2 % 11;
    }
    const int check = (12 - product) % 11;
    return check == 10 ? 'X' : static_cast<char>('0' + check);
}

std::optional<std::string> pieceNumber(int year, int running)
{
    if (year < 0 || running < 1 || running > 9999) {
        return std::nullopt;
    }
    std::array<char, 16> text{};
    std::snprintf(text.data(), text.size(), "%02d%04d", year % 100, running);
    std::string number = text.data();
    number += *checkCharacter(number);
    return number;
}

std::optional<std::string> readPieceNumber(std::string_view typed)
{
    std::string number;
    for (const char c : typed) {
        switch (c) {
        case ' ':
        case '-':
            break;
        case 'O':
        case 'o':
            number += '0';
            break;
        case 'I':
        case 'l':
            number += '1';
            break;
        case 'x':
            number += 'X';
            break;
        default:
            number += c;
        }
    }
    if (number.size() != bodyLength + 1) {
        return std::nullopt;
    }
    const auto check = checkCharacter(std::string_view(number).substr(0, bodyLength));
    if (!check || *check != number.back()) {
        return std::nullopt;
    }
    return number;
}

std::string shownPieceNumber(std::string_view number)
{
    if (number.size() != bodyLength + 1) {
        return std::string(number);
    }
    return std::string(number.substr(0, bodyLength)) + '-' + number.back();
}

} // namespace mend::record
