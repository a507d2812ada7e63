#pragma once

#include "core/record/piece.h"

#include <span>
#include <string>
#include <vector>

namespace mend::record {

/// A piece as the short form asks for it: enough to begin mending, the rest can follow.
struct NewPiece {
    std::string benchName; ///< "Heron bowl"
    CustomerId owner;      ///< somebody known already; unset: `ownerName` is new
    std::string ownerName;
    std::string contact;   ///< may be empty
    std::string procedure; ///< key
    int fragments = 0;
    bool operator==(const NewPiece&) const = default;
};

/// The most fragments that one form takes; above it a slip of the finger is likelier than such a pot
/// (common practice, no source).
constexpr int mostFragments = 999;

/// What is missing or wrong in the form, each named by the line that it belongs to.
enum class NewPieceFault {
    NoBenchName,
    BenchNameTooLong,  ///< it is spoken, and read from two metres
    BenchNameTaken,    ///< two pieces in hand that are called alike cannot be told apart by ear
    BenchNameHasOwner, ///< it is spoken aloud, and an owner's name is nobody's business
    NoOwner,
    NoProcedure,
    FragmentsOutOfRange,
};

/// Everything that stands against taking it in, at once. `namesInHand`: the bench names in use.
std::vector<NewPieceFault> faultsOf(const NewPiece& piece, std::span<const std::string> namesInHand);

/// The next free piece number of that civil year, after the highest one given; empty once 9999 are given.
std::optional<std::string> nextPieceNumber(int year, std::span<const std::string> taken);

} // namespace mend::record
