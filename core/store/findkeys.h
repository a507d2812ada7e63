#pragma once

#include "core/record/piece.h"

#include <string>
#include <string_view>
#include <vector>

namespace mend::store {

/// Longest word that is told apart from others; what is longer is cut.
constexpr std::size_t longestFindWord = 40;
/// Shortest word that a slip of the finger is looked for in.
constexpr std::size_t shortestTypo = 4;

/// The folded words of a text for looking up, each once, in the order of the alphabet. Whichever way accents
/// and wide digits are encoded, they come out the same.
std::vector<std::string> findWords(std::string_view text);

/// What a piece is found by: its bench name, what it looks like, its maker and marks, its owner's name.
std::vector<std::string> wordsOfPiece(const record::Piece& piece, std::string_view ownerName);
/// What a person is found by: name and written contacts; phones go by their digits.
std::vector<std::string> wordsOfPerson(const record::Customer& person);

/// The word itself and the word with each of its letters left out: two words that are one slip apart (a letter
/// put in, left out, changed, two swapped) share one of these. Empty for words too short for it.
std::vector<std::string> nearKeys(std::string_view word);

/// The digits of each phone of a person, from each place on, as long as four are left.
std::vector<std::string> phoneTails(const record::Customer& person);

/// How far a typed word is from a word known: 0 the same, 1 it is its beginning, 2 one slip apart, 3 it is its
/// beginning with one slip in it; 9 none of these.
constexpr int notAlike = 9;
int wordDistance(std::string_view typed, std::string_view known);

/// What comes after every text that begins so, in the order of bytes.
std::string afterPrefix(std::string_view prefix);

} // namespace mend::store
