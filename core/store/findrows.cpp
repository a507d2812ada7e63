#include "core/store/findrows.h"

#include "core/base/foldedtext.h"
#include "core/store/findkeys.h"
#include "core/store/wordrows.h"

#include <algorithm>
#include <sstream>

namespace mend::store {

namespace {

constexpr auto versionKey = "findWords";
constexpr auto wordsVersion = "1"; ///< raised when the words of a row come out differently

std::string asLine(const std::vector<std::string>& words)
{
    std::string line;
    for (const std::string& word : words) {
        line += (line.empty() ? "" : " ") + word;
    }
    return line;
}

std::vector<std::string> fromLine(const std::string& line)
{
    std::vector<std::string> words;
    std::istringstream stream(line);
    for (std::string word; stream >> word;) {
        words.push_back(word);
    }
    return words;
}

} // namespace

Statement& Prepared::operator()(std::string_view sql)
{
    const auto held = m_ready.find(sql);
    if (held != m_ready.end()) {
        held->second.reset();
        return held->second;
    }
    return m_ready.emplace(std::string(sql), m_database->prepare(sql)).first->second;
}

void Prepared::rest()
{
    for (auto& [sql, statement] : m_ready) {
        statement.reset();
    }
}

void FindRows::drop(const std::string& word, std::int64_t entry)
{
    Statement& known = m_ready("SELECT id, uses FROM find_word WHERE word = ?1");
    known.with(word);
    if (!known.step()) {
        return;
    }
    const std::int64_t id = known.integer(0);
    const std::int64_t uses = known.integer(1);
    known.reset();
    m_ready("DELETE FROM find_post WHERE word = ?1 AND entry = ?2").with(id, entry).run();
    if (uses > 1) {
        m_ready("UPDATE find_word SET uses = ?1 WHERE id = ?2").with(uses - 1, id).run();
        return;
    }
    for (const std::string& key : nearKeys(word)) {
        m_ready("DELETE FROM find_near WHERE nearly = ?1 AND word = ?2").with(key, id).run();
    }
    m_ready("DELETE FROM find_word WHERE id = ?1").with(id).run();
}

void FindRows::add(const std::string& word, std::int64_t entry)
{
    Statement& known = m_ready("INSERT INTO find_word (word, uses) VALUES (?1, 1) ON CONFLICT (word) DO UPDATE "
                               "SET uses = uses + 1 RETURNING id, uses");
    known.with(word);
    if (!known.step()) {
        return;
    }
    const std::int64_t id = known.integer(0);
    const bool isNew = known.integer(1) == 1;
    known.run();
    m_ready("INSERT OR IGNORE INTO find_post VALUES (?1, ?2)").with(id, entry).run();
    if (isNew) {
        for (const std::string& key : nearKeys(word)) {
            m_ready("INSERT OR IGNORE INTO find_near VALUES (?1, ?2)").with(key, id).run();
        }
    }
}

void FindRows::setWords(std::int64_t entry, const std::vector<std::string>& words)
{
    Statement& held = m_ready("SELECT words FROM find_entry WHERE entry = ?1");
    held.with(entry);
    const std::vector<std::string> before = held.step() ? fromLine(held.text(0)) : std::vector<std::string>();
    held.reset();
    for (const std::string& word : before) {
        if (!std::ranges::binary_search(words, word)) {
            drop(word, entry);
        }
    }
    for (const std::string& word : words) {
        if (!std::ranges::binary_search(before, word)) {
            add(word, entry);
        }
    }
    if (words.empty()) {
        m_ready("DELETE FROM find_entry WHERE entry = ?1").with(entry).run();
    } else if (words != before) {
        m_ready("INSERT INTO find_entry VALUES (?1, ?2) ON CONFLICT (entry) DO UPDATE SET words = excluded.words")
            .with(entry, asLine(words))
            .run();
    }
}

void FindRows::note(const record::Piece& piece)
{
    const auto owner = RecordRows(m_ready.database()).customer(piece.owner);
    setWords(entryOf(piece.id), wordsOfPiece(piece, owner ? owner->name : std::string()));
}

void FindRows::note(const record::Customer& person)
{
    setWords(entryOf(person.id), wordsOfPerson(person));
    m_ready("DELETE FROM find_phone WHERE person = ?1").with(person.id.value()).run();
    for (const std::string& tail : phoneTails(person)) {
        m_ready("INSERT INTO find_phone VALUES (?1, ?2)").with(tail, person.id.value()).run();
    }
    for (const record::Piece& piece : RecordRows(m_ready.database()).piecesOf(person.id)) {
        setWords(entryOf(piece.id), wordsOfPiece(piece, person.name));
    }
}

void FindRows::rebuild()
{
    for (const char* const sql : {"DELETE FROM find_post", "DELETE FROM find_near", "DELETE FROM find_word",
                                  "DELETE FROM find_entry", "DELETE FROM find_phone"}) {
        m_ready(sql).with().run();
    }
    const RecordRows rows(m_ready.database());
    for (const record::Customer& person : rows.customers()) {
        note(person);
    }
    for (const record::Piece& piece : rows.pieces()) {
        if (!piece.owner.isSet()) {
            note(piece);
        }
    }
    WordRows(m_ready.database()).setMeta(versionKey, wordsVersion);
}

bool FindRows::isUpToDate() const { return WordRows(m_ready.database()).meta(versionKey) == wordsVersion; }

CheckedRows FindRows::check(std::int64_t after, int count) const
{
    const RecordRows rows(m_ready.database());
    Statement post = m_ready.database().prepare("SELECT 1 FROM find_word w JOIN find_post p ON p.word = w.id "
                                                "WHERE w.word = ?1 AND p.entry = ?2");
    return checkRows(
        m_ready.database().prepare("SELECT entry, words FROM find_entry WHERE entry > ?1 ORDER BY entry LIMIT ?2"),
        after, count, [&](const Statement& row) {
            const std::int64_t entry = row.integer(0);
            std::vector<std::string> words;
            if (entry % 2 != 0) {
                const auto person = rows.customer(CustomerId(entry / 2));
                words = person ? wordsOfPerson(*person) : words;
            } else if (const auto piece = rows.piece(PieceId(entry / 2))) {
                const auto owner = rows.customer(piece->owner);
                words = wordsOfPiece(*piece, owner ? owner->name : std::string());
            }
            const bool isPosted = std::ranges::all_of(words, [&](const std::string& word) {
                post.with(word, entry);
                return post.step();
            });
            if (row.text(1) != asLine(words) || !isPosted) {
                throw SqlError(Fault{FaultKind::Damaged, "the words of entry " + std::to_string(entry)});
            }
        });
}

} // namespace mend::store
