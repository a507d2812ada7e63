#pragma once

#include "core/record/piece.h"
#include "core/store/recordrows.h"
#include "core/store/sqlite.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace mend::store {

/// Sentences of SQL kept ready, because at the counter every letter typed asks again. Let go before the
/// connection is closed.
class Prepared {
public:
    explicit Prepared(const Database& database) : m_database(&database) {}
    Statement& operator()(std::string_view sql);
    /// Lets go of what is half read, so that nothing holds the file.
    void rest();
    const Database& database() const { return *m_database; }

private:
    const Database* m_database;
    std::map<std::string, Statement, std::less<>> m_ready;
};

/// The words that pieces and people are found by, kept in step with the rows they come from, in the same
/// transaction. Throws SqlError.
class FindRows {
public:
    explicit FindRows(Prepared& prepared) : m_ready(prepared) {}

    /// After any change of a piece's row.
    void note(const record::Piece& piece);
    /// After any change of a person's row: their pieces are found by their name, too.
    void note(const record::Customer& person);
    /// Everything anew.
    void rebuild();
    /// Whether the words were made by this version of the rules for words.
    bool isUpToDate() const;

    /// Compares so many entries after that one with the rows they come from.
    CheckedRows check(std::int64_t after, int count) const;

private:
    void setWords(std::int64_t entry, const std::vector<std::string>& words);
    void drop(const std::string& word, std::int64_t entry);
    void add(const std::string& word, std::int64_t entry);

    Prepared& m_ready;
};

constexpr std::int64_t entryOf(PieceId piece) { return piece.value() * 2; }
constexpr std::int64_t entryOf(CustomerId person) { return person.value() * 2 + 1; }

} // namespace mend::store
