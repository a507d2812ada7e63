#pragma once

#include "core/record/piece.h"
#include "core/store/sqlite.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::store {

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
    std::optional<record::Customer> customer(CustomerId id) const;

private:
    std::int64_t idFor(std::int64_t given, const char* table) const;
    const Database* m_database;
};

} // namespace mend::store
