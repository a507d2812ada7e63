#include "core/record/benchname.h"

#include "core/base/foldedtext.h"

#include <algorithm>

namespace mend::record {

namespace {

std::vector<std::string> sortedWords(std::string_view name)
{
    std::vector<std::string> words = foldedWords(name);
    std::ranges::sort(words);
    return words;
}

/// A word of the owner's name of more than two letters stands in the bench name: initials and "de" do not tell.
bool tellsOwner(std::string_view benchName, std::string_view ownerName)
{
    const std::vector<std::string> spoken = foldedWords(benchName);
    return std::ranges::any_of(foldedWords(ownerName), [&](const std::string& word) {
        return charactersOf(word).size() > 2 && std::ranges::find(spoken, word) != spoken.end();
    });
}

bool soundAlike(const std::vector<std::string>& one, const std::vector<std::string>& other)
{
    if (one.empty() || other.empty()) {
        return false;
    }
    if (std::ranges::includes(one, other) || std::ranges::includes(other, one)) {
        return true;
    }
    if (one.size() != other.size()) {
        return false;
    }
    int apart = 0;
    for (std::size_t i = 0; i < one.size(); ++i) {
        apart += one[i].size() > 2 && other[i].size() > 2 ? lettersApart(one[i], other[i], 1)
                 : one[i] == other[i]                     ? 0
                                                          : 2;
    }
    return apart <= 1;
}

} // namespace

std::optional<BenchNameFault> faultOfBenchName(std::string_view name, std::string_view ownerName,
                                               std::span<const std::string> inHand)
{
    const std::vector<std::string> words = foldedWords(name);
    if (words.empty()) {
        return BenchNameFault::Missing;
    }
    if (charactersOf(name).size() > longestBenchName || words.size() > mostBenchNameWords) {
        return BenchNameFault::TooLong;
    }
    if (std::ranges::any_of(inHand, [&](const std::string& taken) { return foldedWords(taken) == words; })) {
        return BenchNameFault::Taken;
    }
    return tellsOwner(name, ownerName) ? std::optional(BenchNameFault::HasOwner) : std::nullopt;
}

std::vector<std::string> alikeBenchNames(std::string_view name, std::span<const std::string> inHand)
{
    const std::vector<std::string> words = sortedWords(name);
    std::vector<std::string> alike;
    std::ranges::copy_if(inHand, std::back_inserter(alike),
                         [&](const std::string& held) { return soundAlike(words, sortedWords(held)); });
    return alike;
}

} // namespace mend::record
