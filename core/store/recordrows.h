#pragma once

#include "core/record/piece.h"
#include "core/store/sqlite.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::store {

/// What a look at some rows of a table found.
struct CheckedRows {
    std::int64_t last = 0; ///< the number of the last row looked at
    int rows = 0;          ///< 0: there are no more
    std::vector<std::string> broken;
};

/// Looks at the rows that `rows` gives, numbered in the first column, with a reader that throws at a broken seal.
template <class Reader> CheckedRows checkRows(Statement rows, std::int64_t after, int count, Reader reader)
{
    rows.with(after, count);
    CheckedRows checked{after, 0, {}};
    while (rows.step()) {
        checked.last = rows.integer(0);
        ++checked.rows;
        try {
            reader(rows);
        } catch (const SqlError& error) {
            checked.broken.push_back(error.fault().detail);
        }
    }
    return checked;
}

/// The rows that may be put right: owners, pieces, places, people. Each carries a seal, so that
/// a flipped bit is found. Writing one with an id that is set replaces it, else it gets the
/// next number. Throws SqlError; Damaged where a seal is broken.
class RecordRows {
public:
    explicit RecordRows(const Database& database) : m_database(&database) {}

    CustomerId put(const record::Customer& customer);
    PieceId put(const record::Piece& piece);
    PlaceId put(const record::Place& place);
    PersonId put(const record::Person& person);

    std::vector<record::Customer> customers() const;
    std::vector<record::Customer> ownersInHand() const;
    std::vector<record::Place> places() const;
    std::vector<record::Person> people() const;
    std::vector<record::Piece> pieces() const;
    std::vector<record::Piece> piecesInHand() const;
    std::optional<record::Piece> piece(PieceId id) const;
    std::vector<record::Piece> piecesOf(CustomerId owner) const;
    std::optional<record::Piece> pieceNumbered(const std::string& number) const;
    std::optional<record::Customer> customer(CustomerId id) const;

    /// Reads at most `count` rows after `after` of one table and says whose seal is broken.
    enum class Table { Customers, Pieces, Places, People };
    CheckedRows check(Table table, std::int64_t after, int count) const;

private:
    std::int64_t idFor(std::int64_t given, const char* table) const;
    const Database* m_database;
};

} // namespace mend::store
