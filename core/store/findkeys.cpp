#include "core/store/findkeys.h"

#include "core/base/foldedtext.h"

#include <QString>
#include <algorithm>

namespace mend::store {

namespace {

constexpr std::size_t shortestTail = 4;

bool isPlainAscii(std::string_view text)
{
    return std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

/// One encoding for letters that Unicode has several for: composed, and wide forms as their plain ones.
std::string composed(std::string_view text)
{
    if (isPlainAscii(text)) {
        return std::string(text);
    }
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()))
        .normalized(QString::NormalizationForm_KC)
        .toStdString();
}

void makeUnique(std::vector<std::string>& words)
{
    std::ranges::sort(words);
    const auto twice = std::ranges::unique(words);
    words.erase(twice.begin(), twice.end());
}

std::vector<std::string> wordsOfAll(std::initializer_list<std::string_view> texts)
{
    std::vector<std::string> all;
    for (const std::string_view text : texts) {
        std::vector<std::string> words = findWords(text);
        all.insert(all.end(), std::make_move_iterator(words.begin()), std::make_move_iterator(words.end()));
    }
    makeUnique(all);
    return all;
}

} // namespace

std::vector<std::string> findWords(std::string_view text)
{
    std::vector<std::string> words = foldedWords(composed(text));
    for (std::string& word : words) {
        word = shortened(word, longestFindWord);
    }
    makeUnique(words);
    return words;
}

std::vector<std::string> wordsOfPiece(const record::Piece& piece, std::string_view ownerName)
{
    return wordsOfAll({piece.benchName, piece.looks, piece.maker, piece.marks, ownerName});
}

std::vector<std::string> wordsOfPerson(const record::Customer& person)
{
    std::string written;
    for (const record::ContactWay& way : record::contactsOf(person)) {
        written += way.kind == record::ContactKind::Phone ? std::string() : way.text + ' ';
    }
    return wordsOfAll({person.name, written});
}

std::vector<std::string> nearKeys(std::string_view word)
{
    const std::u32string letters = charactersOf(word);
    if (letters.size() < shortestTypo) {
        return {};
    }
    std::vector<std::string> keys{std::string(word)};
    for (std::size_t at = 0; at < letters.size(); ++at) {
        std::u32string shorter = letters;
        shorter.erase(at, 1);
        keys.push_back(utf8Of(shorter));
    }
    makeUnique(keys);
    return keys;
}

std::vector<std::string> phoneTails(const record::Customer& person)
{
    std::vector<std::string> tails;
    for (const record::ContactWay& way : record::contactsOf(person)) {
        const std::string digits = way.kind == record::ContactKind::Phone ? digitsOf(way.text) : std::string();
        for (std::size_t at = 0; at + shortestTail <= digits.size() && at < longestFindWord; ++at) {
            tails.push_back(digits.substr(at));
        }
    }
    makeUnique(tails);
    return tails;
}

int wordDistance(std::string_view typed, std::string_view known)
{
    if (typed == known) {
        return 0;
    }
    if (known.starts_with(typed)) {
        return 1;
    }
    const std::u32string letters = charactersOf(typed);
    if (letters.size() < shortestTypo) {
        return notAlike;
    }
    if (lettersApart(typed, known, 1) <= 1) {
        return 2;
    }
    const std::u32string whole = charactersOf(known);
    for (std::size_t length = letters.size() - 1; length <= letters.size() + 1 && length < whole.size(); ++length) {
        if (lettersApart(typed, utf8Of(std::u32string_view(whole).substr(0, length)), 1) <= 1) {
            return 3;
        }
    }
    return notAlike;
}

std::string afterPrefix(std::string_view prefix) { return std::string(prefix) + "\xf4\x8f\xbf\xbf"; }

} // namespace mend::store
