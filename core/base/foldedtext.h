#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace mend {

/// A name as it is looked for: "Müller-Ångström" and "muller angstrom" come out the same. Small letters,
/// without accents; the dotless i and the dotted I are an i, sharp s is "ss", digits of other scripts are
/// 0 to 9. Latin, Greek and Cyrillic are known letter by letter, whether an accent is part of the letter or
/// follows it; other scripts are left as they are. Takes UTF-8; bytes that are none are passed over.
std::string foldedText(std::string_view text);

/// The words of a folded text: letters and digits that stand together. A character of a script that writes
/// without spaces (Han, kana) is a word of its own. An apostrophe inside a word is passed over, so that
/// "O'Shea" is "oshea".
std::vector<std::string> foldedWords(std::string_view text);

/// The digits of a text one after the other: "+44 20 7946-0618" is "442079460618".
std::string digitsOf(std::string_view text);

/// How many letters differ, at most `most` + 1: letters put in, left out, changed, or two neighbours swapped
/// count one each (the restricted Damerau-Levenshtein distance). Counts characters, not bytes.
int lettersApart(std::string_view one, std::string_view other, int most);

/// A text without what must not be in it: control characters (tab and line end stay where `lines`), the
/// marks that turn the direction of writing, zero-width characters other than the joiners, more than four
/// accents on one letter, bytes that are not UTF-8. Blanks at both ends go.
std::string cleanText(std::string_view text, bool lines = false);

/// Shortened to at most so many characters, never within a letter and its accents or a joined picture.
std::string shortened(std::string_view text, std::size_t most);

/// The characters of a UTF-8 text; bytes that are none come out as U+FFFD.
std::u32string charactersOf(std::string_view text);
std::string utf8Of(std::u32string_view characters);

} // namespace mend
