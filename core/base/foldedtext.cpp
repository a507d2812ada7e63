#include "core/base/foldedtext.h"

#include <algorithm>
#include <array>
#include <optional>

namespace mend {

namespace {

/// What the letters of one stretch of Unicode are without accent and small; '.' where that is no single letter.
struct FoldedRange {
    char32_t first;
    std::u32string_view letters;
};

constexpr std::u32string_view latinLetters = U"aaaaaaæceeeeiiiidnooooo×ouuuuyþßaaaaaaæceeeeiiiidnooooo÷ouuuuyþy"
                                             U"aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiii..jjkkklllllll"
                                             U"lllnnnnnnnnnooooooœœrrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";
constexpr std::u32string_view latinAdditional = U"aabbbbbbccddddddddddeeeeeeeeeeffgghhhhhhhhhhiiiikkkkkkllllllllmm"
                                                U"mmmmnnnnnnnnoooooooopppprrrrrrrrssssssssssttttttttuuuuuuuuuuvvvv"
                                                U"wwwwwwwwwwxxxxyyzzzzzzhtwy.sẜẝßẟaaaaaaaaaaaaaaaaaaaaaaaaeeeeeeee"
                                                U"eeeeeeeeiiiioooooooooooooooooooooooouuuuuuuuuuuuuuyyyyyyyyỻỻỽỽỿỿ";
constexpr std::u32string_view greekLetters = U"α·εηι΋ο΍υωιαβγδεζηθικλμν"
                                             U"ξοπρ΢στυφχψωιυαεηιυαβγδε"
                                             U"ζηθικλμνξοπρςστυφχψωιυουω";
constexpr std::u32string_view romanianLetters = U"sstt";

constexpr std::array<FoldedRange, 4> foldedRanges{
    {{0xC0, latinLetters}, {0x1E00, latinAdditional}, {0x386, greekLetters}, {0x218, romanianLetters}}};

constexpr char32_t noCharacter = 0xFFFD;
constexpr std::size_t mostAccents = 4;

bool isAccent(char32_t c)
{
    return (c >= 0x300 && c <= 0x36F) || (c >= 0x1AB0 && c <= 0x1AFF) || (c >= 0x1DC0 && c <= 0x1DFF) ||
           (c >= 0x20D0 && c <= 0x20FF) || (c >= 0xFE20 && c <= 0xFE2F);
}

/// A mark that belongs to the letter before it in a script of India or the Near East, or a picture's variant.
bool belongsToLetterBefore(char32_t c)
{
    return isAccent(c) || c == 0x200D || (c >= 0xFE00 && c <= 0xFE0F) || (c >= 0x1F3FB && c <= 0x1F3FF) ||
           (c >= 0x591 && c <= 0x5BD) || (c >= 0x64B && c <= 0x65F) || (c >= 0x93E && c <= 0x94D) ||
           (c >= 0xE31 && c <= 0xE3A && c != 0xE32 && c != 0xE33) || (c >= 0xE47 && c <= 0xE4E);
}

bool isWordByItself(char32_t c)
{
    return (c >= 0x3041 && c <= 0x30FF) || (c >= 0x3400 && c <= 0x9FFF) || (c >= 0xF900 && c <= 0xFAFF) ||
           (c >= 0x20000 && c <= 0x3134F);
}

/// Digits of other scripts, and the full-width ones.
std::optional<char32_t> digitOf(char32_t c)
{
    for (const char32_t zero : {U'0', U'\u0660', U'\u06F0', U'\u0966', U'\u09E6', U'\uFF10'}) {
        if (c >= zero && c <= zero + 9) {
            return U'0' + (c - zero);
        }
    }
    return std::nullopt;
}

char32_t foldedCyrillic(char32_t c)
{
    if (c >= 0x410 && c <= 0x42F) {
        c += 0x20;
    } else if (c >= 0x400 && c <= 0x40F) {
        c += 0x50;
    }
    switch (c) {
    case 0x439: // short i
        return 0x438;
    case 0x450:
    case 0x451:
        return 0x435;
    case 0x457:
        return 0x456;
    case 0x45D:
        return 0x438;
    case 0x453:
        return 0x433;
    case 0x45C:
        return 0x43A;
    default:
        return c;
    }
}

void addFolded(std::u32string& text, char32_t c)
{
    if (isAccent(c)) {
        return;
    }
    if (const auto digit = digitOf(c)) {
        text += *digit;
        return;
    }
    if (c >= U'A' && c <= U'Z') {
        text += static_cast<char32_t>(c + 0x20);
        return;
    }
    switch (c) {
    case 0xDF:
    case 0x1E9E:
        text += U"ss";
        return;
    case 0xC6:
    case 0xE6:
        text += U"ae";
        return;
    case 0x152:
    case 0x153:
        text += U"oe";
        return;
    case 0x132:
    case 0x133:
        text += U"ij";
        return;
    case 0xDE:
    case 0xFE:
        text += U"th";
        return;
    case 0x1A0: // Vietnamese
    case 0x1A1:
        text += U'o';
        return;
    case 0x1AF:
    case 0x1B0:
        text += U'u';
        return;
    case 0x3C2: // a sigma at the end of a word
        text += U'\u03C3';
        return;
    default:
        break;
    }
    for (const FoldedRange& range : foldedRanges) {
        if (c >= range.first && c < range.first + range.letters.size()) {
            const char32_t letter = range.letters[c - range.first];
            text += letter == U'.' ? c : letter;
            return;
        }
    }
    text += c >= 0x400 && c <= 0x45F     ? foldedCyrillic(c)
            : c >= 0xFF21 && c <= 0xFF3A ? c - 0xFF21 + U'a' // full width
            : c >= 0xFF41 && c <= 0xFF5A ? c - 0xFF41 + U'a'
                                         : c;
}

bool isLetterOrDigit(char32_t c)
{
    if (c < 0x80) {
        return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z') || (c >= U'0' && c <= U'9');
    }
    const bool isPunctuation = (c >= 0x80 && c <= 0xBF) || c == 0xD7 || c == 0xF7 || (c >= 0x2000 && c <= 0x206F) ||
                               (c >= 0x2E00 && c <= 0x2E7F) || (c >= 0x3000 && c <= 0x3020) || c == noCharacter ||
                               (c >= 0xFE00 && c <= 0xFE0F) || (c >= 0xFF00 && c <= 0xFF0F);
    return !isPunctuation;
}

bool isApostrophe(char32_t c)
{
    return c == U'\'' || c == 0x2019 || c == 0x2018 || c == 0x2BC || c == 0xB4 || c == U'`';
}

/// Turns the direction of writing, or is not seen at all; the joiners stay, some scripts need them.
bool isHidden(char32_t c)
{
    return (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069) || c == 0x200B || c == 0x200E || c == 0x200F ||
           c == 0x2060 || c == 0xFEFF || c == 0x61C || (c >= 0xFFF9 && c <= 0xFFFB) || c == 0xAD ||
           (c >= 0xE0000 && c <= 0xE007F) || c == 0x2028 || c == 0x2029;
}

} // namespace

std::u32string charactersOf(std::string_view text)
{
    std::u32string characters;
    characters.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const auto lead = static_cast<unsigned char>(text[at]);
        const std::size_t length = lead < 0x80 ? 1 : lead >= 0xF0 && lead < 0xF5 ? 4 : lead >= 0xE0 ? 3 : 2;
        char32_t c = lead < 0x80 ? lead : lead & (0xFFU >> (length + 1));
        bool isWhole = lead < 0x80 || (lead >= 0xC2 && lead < 0xF5 && at + length <= text.size());
        for (std::size_t i = 1; isWhole && i < length; ++i) {
            const auto next = static_cast<unsigned char>(text[at + i]);
            isWhole = (next & 0xC0U) == 0x80U;
            c = (c << 6U) | (next & 0x3FU);
        }
        const bool isShortest = length < 3 || (length == 3 ? c >= 0x800 : c >= 0x10000);
        const bool isCharacter = isWhole && isShortest && c <= 0x10FFFF && !(c >= 0xD800 && c <= 0xDFFF);
        characters += isCharacter ? c : noCharacter;
        at += isCharacter ? length : 1;
    }
    return characters;
}

std::string utf8Of(std::u32string_view characters)
{
    std::string text;
    text.reserve(characters.size());
    for (const char32_t c : characters) {
        if (c < 0x80) {
            text += static_cast<char>(c);
        } else if (c < 0x800) {
            text += static_cast<char>(0xC0U | (c >> 6U));
            text += static_cast<char>(0x80U | (c & 0x3FU));
        } else if (c < 0x10000) {
            text += static_cast<char>(0xE0U | (c >> 12U));
            text += static_cast<char>(0x80U | ((c >> 6U) & 0x3FU));
            text += static_cast<char>(0x80U | (c & 0x3FU));
        } else {
            text += static_cast<char>(0xF0U | (c >> 18U));
            text += static_cast<char>(0x80U | ((c >> 12U) & 0x3FU));
            text += static_cast<char>(0x80U | ((c >> 6U) & 0x3FU));
            text += static_cast<char>(0x80U | (c & 0x3FU));
        }
    }
    return text;
}

std::string foldedText(std::string_view text)
{
    std::u32string folded;
    for (const char32_t c : charactersOf(text)) {
        if (c != noCharacter) {
            addFolded(folded, c);
        }
    }
    return utf8Of(folded);
}

std::vector<std::string> foldedWords(std::string_view text)
{
    std::vector<std::string> words;
    std::u32string word;
    const auto end = [&] {
        if (!word.empty()) {
            words.push_back(utf8Of(word));
            word.clear();
        }
    };
    for (const char32_t c : charactersOf(text)) {
        if (isAccent(c) || isHidden(c) || (isApostrophe(c) && !word.empty())) {
            continue;
        }
        if (!isLetterOrDigit(c)) {
            end();
        } else if (isWordByItself(c)) {
            end();
            word = c;
            end();
        } else {
            addFolded(word, c);
        }
    }
    end();
    return words;
}

std::string digitsOf(std::string_view text)
{
    std::string digits;
    for (const char32_t c : charactersOf(text)) {
        if (const auto digit = digitOf(c)) {
            digits += static_cast<char>(*digit);
        }
    }
    return digits;
}

int lettersApart(std::string_view one, std::string_view other, int most)
{
    const std::u32string a = charactersOf(one);
    const std::u32string b = charactersOf(other);
    const auto difference = static_cast<std::ptrdiff_t>(a.size()) - static_cast<std::ptrdiff_t>(b.size());
    if (difference > most || -difference > most) {
        return most + 1;
    }
    std::vector<int> beforeLast(b.size() + 1);
    std::vector<int> last(b.size() + 1);
    std::vector<int> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) {
        last[j] = static_cast<int>(j);
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = static_cast<int>(i);
        for (std::size_t j = 1; j <= b.size(); ++j) {
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                row[j] = std::min(row[j], beforeLast[j - 2] + 1);
            }
        }
        std::swap(beforeLast, last);
        std::swap(last, row);
    }
    return std::min(last[b.size()], most + 1);
}

std::string cleanText(std::string_view text, bool lines)
{
    std::u32string kept;
    std::size_t accents = 0;
    for (const char32_t c : charactersOf(text)) {
        const bool isBreak = c == U'\n' || c == U'\t';
        const bool isControl = c < 0x20 || (c >= 0x7F && c < 0xA0);
        accents = isAccent(c) ? accents + 1 : 0;
        if (c == noCharacter || isHidden(c) || accents > mostAccents || (isControl && !(lines && isBreak))) {
            continue;
        }
        kept += c;
    }
    const auto isBlank = [](char32_t c) { return c == U' ' || c == U'\n' || c == U'\t' || c == 0xA0 || c == 0x3000; };
    const auto first = std::ranges::find_if_not(kept, isBlank);
    const auto last = std::find_if_not(kept.rbegin(), std::make_reverse_iterator(first), isBlank).base();
    return utf8Of(std::u32string(first, last));
}

std::string shortened(std::string_view text, std::size_t most)
{
    const std::u32string characters = charactersOf(text);
    if (characters.size() <= most) {
        return std::string(text);
    }
    std::size_t end = most;
    while (end > 0 && (belongsToLetterBefore(characters[end]) || characters[end - 1] == 0x200D)) {
        --end;
    }
    return utf8Of(std::u32string_view(characters).substr(0, end));
}

} // namespace mend
