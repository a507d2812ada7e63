#include "core/record/newpiece.h"

#include "core/record/piecenumber.h"

#include <algorithm>
#include <cctype>

namespace mend::record {

namespace {

/// For comparing names: letters of ASCII in lower case, blanks at the ends away and one between words.
std::string plain(std::string_view name)
{
    std::string words;
    for (const char letter : name) {
        const auto byte = static_cast<unsigned char>(letter);
        if (std::isspace(byte) == 0) {
            words += static_cast<char>(std::tolower(byte));
        } else if (!words.empty() && words.back() != ' ') {
            words += ' ';
        }
    }
    while (words.ends_with(' ')) {
        words.pop_back();
    }
    return words;
}

std::vector<std::string> wordsOf(const std::string& name)
{
    std::vector<std::string> words(1);
    for (const char letter : plain(name)) {
        if (letter == ' ') {
            words.emplace_back();
        } else {
            words.back() += letter;
        }
    }
    return words;
}

/// A word of the owner's name of more than two letters stands in the bench name: initials and "de" do not tell.
bool tellsOwner(const NewPiece& piece)
{
    const auto spoken = wordsOf(piece.benchName);
    return std::ranges::any_of(wordsOf(piece.ownerName), [&](const std::string& word) {
        return word.size() > 2 && std::ranges::find(spoken, word) != spoken.end();
    });
}

} // namespace

std::vector<NewPieceFault> faultsOf(const NewPiece& piece, std::span<const std::string> namesInHand)
{
    std::vector<NewPieceFault> faults;
    const std::string name = plain(piece.benchName);
    if (name.empty()) {
        faults.push_back(NewPieceFault::NoBenchName);
    } else if (std::ranges::any_of(namesInHand, [&](const std::string& taken) { return plain(taken) == name; })) {
        faults.push_back(NewPieceFault::BenchNameTaken);
    } else if (tellsOwner(piece)) {
        faults.push_back(NewPieceFault::BenchNameHasOwner);
    }
    if (!piece.owner.isSet() && plain(piece.ownerName).empty()) {
        faults.push_back(NewPieceFault::NoOwner);
    }
    if (piece.procedure.empty()) {
        faults.push_back(NewPieceFault::NoProcedure);
    }
    if (piece.fragments < 1 || piece.fragments > mostFragments) {
        faults.push_back(NewPieceFault::FragmentsOutOfRange);
    }
    return faults;
}

std::optional<std::string> nextPieceNumber(int year, std::span<const std::string> taken)
{
    const auto first = pieceNumber(year, 1);
    if (!first) {
        return std::nullopt;
    }
    constexpr std::size_t yearDigits = 2;
    constexpr std::size_t runningDigits = 4;
    int highest = 0;
    for (const std::string& each : taken) {
        const auto number = readPieceNumber(each);
        if (number && number->compare(0, yearDigits, *first, 0, yearDigits) == 0) {
            highest = std::max(highest, std::stoi(number->substr(yearDigits, runningDigits)));
        }
    }
    return pieceNumber(year, highest + 1);
}

} // namespace mend::record
