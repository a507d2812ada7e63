#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace mend::record {

/// The longest bench name: it is spoken, and read from two metres (common practice, no source).
constexpr std::size_t longestBenchName = 24;
constexpr std::size_t mostBenchNameWords = 4;

/// Why a bench name cannot be used as it is.
enum class BenchNameFault {
    Missing,
    TooLong,  ///< more letters or words than can be spoken in one breath
    Taken,    ///< two pieces in hand that are called the same cannot be told apart by ear
    HasOwner, ///< it is spoken aloud, and an owner's name is nobody's business
};

/// What stands against a bench name, if anything.
std::optional<BenchNameFault> faultOfBenchName(std::string_view name, std::string_view ownerName,
                                               std::span<const std::string> inHand);

/// The names in hand that sound nearly the same ("Heron bowl", "Herons bowl", "Bowl heron", "Blue heron bowl"):
/// one of the two needs a word that tells them apart.
std::vector<std::string> alikeBenchNames(std::string_view name, std::span<const std::string> inHand);

} // namespace mend::record
