#include "core/store/findquery.h"

#include "core/base/foldedtext.h"
#include "core/record/piecenumber.h"
#include "core/store/findkeys.h"

#include <QString>
#include <algorithm>
#include <array>
#include <set>
#include <sstream>

namespace mend::store {

namespace {

constexpr std::size_t mostPieces = 20;
constexpr std::size_t mostPeople = 10;
constexpr std::size_t mostTypedWords = 6;
constexpr std::size_t mostMeanings = 16;
constexpr std::size_t mostCandidates = 60;
constexpr std::size_t enoughCandidates = 8;
constexpr std::size_t longestTyped = 200;
constexpr int missingWord = 10;
constexpr std::array<int, 4> pointsApart{0, 1, 3, 4}; ///< by `wordDistance`
constexpr std::size_t wholeNumber = 7;

/// The signs of a number or a phone and nothing else, with a digit among them.
bool isDigits(std::string_view typed)
{
    return !digitsOf(typed).empty() && typed.find_first_not_of("0123456789 +-()/.xXoOlI") == std::string_view::npos;
}

/// As `readPieceNumber` reads, but half typed.
std::string numberTyped(std::string_view typed)
{
    std::string number;
    for (const char c : typed) {
        const char read = c == 'o' || c == 'O' ? '0' : c == 'l' || c == 'I' ? '1' : c == 'x' ? 'X' : c;
        if ((read >= '0' && read <= '9') || read == 'X') {
            number += read;
        }
    }
    return number;
}

std::vector<std::string> typedWords(std::string_view typed)
{
    const QString text = QString::fromUtf8(typed.data(), static_cast<qsizetype>(typed.size()));
    std::vector<std::string> words = foldedWords(text.normalized(QString::NormalizationForm_KC).toStdString());
    if (words.size() > mostTypedWords) {
        words.resize(mostTypedWords);
    }
    for (std::string& word : words) {
        word = shortened(word, longestFindWord);
    }
    return words;
}

/// As many question marks as the next of a few sizes, so that few sentences are kept ready.
std::size_t slotsFor(std::size_t count) { return count <= 1 ? 1 : count <= 4 ? 4 : mostMeanings; }

std::string slots(std::size_t count)
{
    std::string text = "(?";
    for (std::size_t i = 1; i < count; ++i) {
        text += ",?";
    }
    return text + ")";
}

} // namespace

Statement& FindQuery::ask(std::string_view sql, const std::vector<Value>& values)
{
    if (m_watch) {
        m_watch(sql, values);
    }
    Statement& statement = m_ready(sql);
    int position = 0;
    for (const Value& value : values) {
        ++position;
        std::visit([&](const auto& held) { statement.bind(position, held); }, value);
    }
    return statement;
}

Found FindQuery::find(std::string_view typed)
{
    const std::string text = shortened(cleanText(typed), longestTyped);
    return rowsOf(isDigits(text) ? byDigits(text) : byWords(text));
}

std::vector<FoundPerson> FindQuery::findPeople(std::string_view typed)
{
    m_peopleOnly = true;
    return find(typed).people;
}

std::vector<FindQuery::Candidate> FindQuery::byDigits(std::string_view typed)
{
    std::vector<Candidate> candidates;
    std::set<std::int64_t> met;
    const auto add = [&](std::int64_t entry, int apart) {
        if (met.insert(entry).second) {
            candidates.push_back({entry, apart, isInHand(entry)});
        }
    };
    const std::string number = numberTyped(typed);
    for (const std::int64_t piece : byNumber(number)) {
        add(entryOf(PieceId(piece)), 0);
    }
    for (const std::int64_t person : peopleByPhone(typed)) {
        add(entryOf(CustomerId(person)), 1);
        for (const std::int64_t piece : piecesOf(person)) {
            add(entryOf(PieceId(piece)), 1);
        }
    }
    if (number.size() == wholeNumber && !record::readPieceNumber(number)) {
        for (const std::int64_t piece : byMistypedNumber(number)) {
            add(entryOf(PieceId(piece)), 3);
        }
    }
    return candidates;
}

std::vector<std::int64_t> FindQuery::byNumber(const std::string& number)
{
    std::vector<std::int64_t> pieces;
    Statement& rows = ask("SELECT id FROM piece WHERE number >= ? AND number < ? ORDER BY number DESC LIMIT 20",
                          {number, afterPrefix(number)});
    while (rows.step()) {
        pieces.push_back(rows.integer(0));
    }
    return pieces;
}

/// Every number that is one changed or two swapped characters away and holds together.
std::vector<std::int64_t> FindQuery::byMistypedNumber(const std::string& number)
{
    std::set<std::string> meant;
    const auto consider = [&](const std::string& changed) {
        if (record::readPieceNumber(changed)) {
            meant.insert(changed);
        }
    };
    for (std::size_t at = 0; at < number.size(); ++at) {
        std::string changed = number;
        for (const char digit : std::string_view("0123456789X")) {
            changed[at] = digit;
            consider(changed);
        }
        if (at > 0) {
            changed = number;
            std::swap(changed[at - 1], changed[at]);
            consider(changed);
        }
    }
    std::vector<std::int64_t> pieces;
    for (const std::string& each : meant) {
        Statement& row = ask("SELECT id FROM piece WHERE number = ?", {each});
        if (row.step()) {
            pieces.push_back(row.integer(0));
        }
    }
    return pieces;
}

/// Whichever way the country code or the leading nought was told or left out.
std::vector<std::int64_t> FindQuery::peopleByPhone(std::string_view typed)
{
    constexpr std::size_t fewestDigits = 4;
    constexpr std::size_t tail = 9;
    std::string digits = digitsOf(typed);
    std::vector<std::string> tries{digits};
    if (digits.starts_with('0')) {
        tries.push_back(digits.substr(digits.starts_with("00") ? 2 : 1));
    }
    if (digits.size() > tail) {
        tries.push_back(digits.substr(digits.size() - tail));
    }
    std::vector<std::int64_t> people;
    for (const std::string& each : tries) {
        if (each.size() < fewestDigits || !people.empty()) {
            continue;
        }
        Statement& rows = ask("SELECT DISTINCT person FROM find_phone WHERE digits >= ? AND digits < ? LIMIT 20",
                              {each, afterPrefix(each)});
        while (rows.step()) {
            people.push_back(rows.integer(0));
        }
    }
    return people;
}

void FindQuery::addWords(Statement& rows, const std::string& typed, int most, Meant& meant, std::vector<int>& apart)
{
    while (rows.step() && meant.words.size() < mostMeanings) {
        const int distance = wordDistance(typed, rows.text(1));
        if (distance <= most && std::ranges::find(meant.words, rows.integer(0)) == meant.words.end()) {
            const auto place = std::ranges::upper_bound(apart, distance);
            meant.words.insert(meant.words.begin() + (place - apart.begin()), rows.integer(0));
            apart.insert(place, distance);
            meant.uses += rows.integer(2);
        }
    }
    rows.reset();
}

/// A word typed whole means itself alone; one that nothing is called, or the last one, which may go on, also
/// what begins so.
FindQuery::Meant FindQuery::meaning(const std::string& word, bool isLast)
{
    Meant meant;
    std::vector<int> apart;
    addWords(ask("SELECT id, word, uses FROM find_word WHERE word = ?", {word}), word, 0, meant, apart);
    if (meant.words.empty() || isLast) {
        addWords(ask("SELECT id, word, uses FROM find_word WHERE word >= ? AND word < ? ORDER BY uses DESC LIMIT 16",
                     {word, afterPrefix(word)}),
                 word, 1, meant, apart);
    }
    return meant;
}

/// What a word may mean if there is one slip in it.
FindQuery::Meant FindQuery::slipOf(const std::string& word, bool isLast)
{
    Meant meant;
    std::vector<int> apart;
    const std::vector<std::string> keys = nearKeys(word);
    for (const std::string& key : keys) {
        addWords(ask("SELECT w.id, w.word, w.uses FROM find_near n JOIN find_word w ON w.id = n.word "
                     "WHERE n.nearly = ? LIMIT 20",
                     {key}),
                 word, 2, meant, apart);
    }
    for (const std::string& key : keys) {
        if (isLast) {
            addWords(ask("SELECT w.id, w.word, w.uses FROM find_near n JOIN find_word w ON w.id = n.word "
                         "WHERE n.nearly >= ? AND n.nearly < ? LIMIT 20",
                         {key, afterPrefix(key)}),
                     word, 3, meant, apart);
        }
    }
    return meant;
}

/// Entries that hold one meaning of every typed word: the rarest word leads, the others are asked of each.
std::vector<std::int64_t> FindQuery::holdingAll(std::vector<Meant> meanings)
{
    std::ranges::sort(meanings, {}, &Meant::uses);
    std::string sql = "SELECT p.entry FROM find_post p WHERE p.word = ?";
    sql += m_peopleOnly ? " AND p.entry % 2 = 1" : "";
    std::vector<Value> values{std::int64_t{0}};
    for (std::size_t i = 1; i < meanings.size(); ++i) {
        const std::vector<std::int64_t>& words = meanings[i].words;
        const std::size_t count = slotsFor(words.size());
        sql += " AND EXISTS (SELECT 1 FROM find_post q WHERE q.entry = p.entry AND q.word IN " + slots(count) + ")";
        for (std::size_t at = 0; at < count; ++at) {
            values.emplace_back(words[std::min(at, words.size() - 1)]);
        }
    }
    sql += " ORDER BY p.entry DESC LIMIT 60";
    std::vector<std::int64_t> entries;
    for (const std::int64_t word : meanings.front().words) {
        values.front() = word;
        Statement& rows = ask(sql, values);
        while (rows.step()) {
            entries.push_back(rows.integer(0));
        }
        if (entries.size() >= mostCandidates) {
            break;
        }
    }
    return entries;
}

/// Where nothing holds all words, what holds all but one.
std::vector<std::int64_t> FindQuery::holdingMost(std::vector<Meant> meanings)
{
    std::erase_if(meanings, [](const Meant& meant) { return meant.words.empty(); });
    std::vector<std::int64_t> entries;
    for (std::size_t left = 0; meanings.size() > 1 && left < meanings.size(); ++left) {
        std::vector<Meant> fewer = meanings;
        fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(left));
        const auto some = holdingAll(std::move(fewer));
        entries.insert(entries.end(), some.begin(), some.end());
    }
    return entries;
}

/// First as typed; where that gives too little, with a slip in one word after the other.
std::vector<FindQuery::Candidate> FindQuery::byWords(std::string_view typed)
{
    const std::vector<std::string> words = typedWords(typed);
    std::vector<Meant> plain;
    std::vector<Meant> slips(words.size());
    for (std::size_t i = 0; i < words.size(); ++i) {
        plain.push_back(meaning(words[i], i + 1 == words.size()));
        if (plain[i].words.empty()) {
            plain[i] = slips[i] = slipOf(words[i], i + 1 == words.size());
        }
    }
    std::vector<std::int64_t> entries;
    const auto hold = [&](const std::vector<Meant>& meanings) {
        std::vector<Meant> known;
        std::ranges::copy_if(meanings, std::back_inserter(known),
                             [](const Meant& meant) { return !meant.words.empty(); });
        if (!known.empty()) {
            const auto found = holdingAll(std::move(known));
            entries.insert(entries.end(), found.begin(), found.end());
        }
    };
    hold(plain);
    for (std::size_t i = 0; i < words.size() && entries.size() < enoughCandidates; ++i) {
        if (slips[i].words.empty()) {
            std::vector<Meant> meanings = plain;
            meanings[i] = slipOf(words[i], i + 1 == words.size());
            if (!meanings[i].words.empty()) {
                hold(meanings);
            }
        }
    }
    if (entries.empty()) {
        entries = holdingMost(plain);
    }
    std::vector<Candidate> candidates = judged(entries, words);
    addPiecesOf(candidates);
    return candidates;
}

/// A person is found by more than stands with their pieces: a mail address leads to the pieces, too.
void FindQuery::addPiecesOf(std::vector<Candidate>& candidates)
{
    std::set<std::int64_t> met;
    std::vector<Candidate> people;
    for (const Candidate& each : candidates) {
        met.insert(each.entry);
        if (each.entry % 2 != 0) {
            people.push_back(each);
        }
    }
    for (std::size_t i = 0; !m_peopleOnly && i < std::min(people.size(), mostPeople); ++i) {
        for (const std::int64_t piece : piecesOf(people[i].entry / 2)) {
            const std::int64_t entry = entryOf(PieceId(piece));
            if (met.insert(entry).second) {
                candidates.push_back({entry, people[i].apart + 1, isInHand(entry)});
            }
        }
    }
}

std::vector<std::int64_t> FindQuery::piecesOf(std::int64_t person)
{
    std::vector<std::int64_t> pieces;
    Statement& rows = ask("SELECT id FROM piece WHERE owner = ? ORDER BY id DESC LIMIT 20", {person});
    while (rows.step()) {
        pieces.push_back(rows.integer(0));
    }
    return pieces;
}

std::vector<FindQuery::Candidate> FindQuery::judged(const std::vector<std::int64_t>& entries,
                                                    const std::vector<std::string>& typed)
{
    std::vector<Candidate> candidates;
    std::set<std::int64_t> met;
    for (const std::int64_t entry : entries) {
        if (!met.insert(entry).second) {
            continue;
        }
        Statement& row = ask("SELECT words FROM find_entry WHERE entry = ?", {entry});
        std::istringstream held(row.step() ? row.text(0) : std::string());
        std::vector<int> best(typed.size(), notAlike);
        for (std::string word; held >> word;) {
            for (std::size_t i = 0; i < typed.size(); ++i) {
                best[i] = best[i] == 0 ? 0 : std::min(best[i], wordDistance(typed[i], word));
            }
        }
        Candidate candidate{entry, 0, isInHand(entry)};
        for (const int distance : best) {
            candidate.apart += distance == notAlike ? missingWord : pointsApart.at(static_cast<std::size_t>(distance));
        }
        candidates.push_back(candidate);
    }
    return candidates;
}

bool FindQuery::isInHand(std::int64_t entry)
{
    return entry % 2 == 0 && ask("SELECT 1 FROM in_hand WHERE piece = ?", {entry / 2}).step();
}

Found FindQuery::rowsOf(std::vector<Candidate> candidates)
{
    std::ranges::sort(candidates, [](const Candidate& a, const Candidate& b) {
        return std::tuple(a.apart, !a.inHand, -a.entry) < std::tuple(b.apart, !b.inHand, -b.entry);
    });
    const RecordRows rows(m_ready.database());
    Found found;
    for (const Candidate& candidate : candidates) {
        if (candidate.entry % 2 != 0) {
            if (const auto person = rows.customer(CustomerId(candidate.entry / 2));
                person && found.people.size() < mostPeople) {
                found.people.push_back({*person, candidate.apart});
            }
        } else if (found.pieces.size() < mostPieces) {
            if (auto piece = rows.piece(PieceId(candidate.entry / 2))) {
                auto owner = rows.customer(piece->owner);
                found.pieces.push_back(
                    {std::move(*piece), owner.value_or(record::Customer{}), candidate.inHand, candidate.apart});
            }
        }
    }
    return found;
}

} // namespace mend::store
