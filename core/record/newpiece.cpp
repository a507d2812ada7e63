#include "core/record/newpiece.h"

#include "core/base/foldedtext.h"
#include "core/record/benchname.h"
#include "core/record/piecenumber.h"

#include <algorithm>

namespace mend::record {

std::vector<NewPieceFault> faultsOf(const NewPiece& piece, std::span<const std::string> namesInHand)
{
    std::vector<NewPieceFault> faults;
    if (const auto wrong = faultOfBenchName(piece.benchName, piece.ownerName, namesInHand)) {
        faults.push_back(*wrong == BenchNameFault::Taken      ? NewPieceFault::BenchNameTaken
                         : *wrong == BenchNameFault::HasOwner ? NewPieceFault::BenchNameHasOwner
                         : *wrong == BenchNameFault::TooLong  ? NewPieceFault::BenchNameTooLong
                                                              : NewPieceFault::NoBenchName);
    }
    if (!piece.owner.isSet() && foldedWords(piece.ownerName).empty()) {
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
