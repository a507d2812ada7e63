#include "core/store/recordrows.h"

#include "core/record/fields.h"
#include "core/store/seal.h"
#include "core/store/sheets.h"

#include <sstream>

namespace mend::store {

using namespace record;

namespace {

const std::string selectCustomer = "SELECT id, name, contact, seal, sheet FROM customer ";
const std::string selectPlace = "SELECT id, name, kind, slots, seal FROM place ";
const std::string selectPerson = "SELECT id, name, seal FROM person ";
const std::string selectPiece = "SELECT id, number, bench_name, owner, procedure, body, fragments, joins, sets, "
                                "seam_um, chip_um, optional_stages, materials, seal, sheet FROM piece ";

std::string asLines(const std::vector<std::string>& keys)
{
    std::string lines;
    for (const std::string& key : keys) {
        if (key.empty() || key.find('\n') != std::string::npos) {
            throw SqlError(Fault{FaultKind::BadInput, "a key is empty or holds a line end"});
        }
        lines += key + '\n';
    }
    return lines;
}

std::vector<std::string> fromLines(const std::string& lines)
{
    std::vector<std::string> keys;
    std::istringstream stream(lines);
    for (std::string key; std::getline(stream, key);) {
        keys.push_back(key);
    }
    return keys;
}

Bytes sealOf(const Customer& customer)
{
    Canon canon("customer");
    canon.add(customer.id.value()).add(customer.name).add(customer.contact);
    return addRest(canon, customer).seal();
}

Bytes sealOf(const Place& place)
{
    return Canon("place")
        .add(place.id.value())
        .add(place.name)
        .add(placeKindKey(place.kind))
        .add(std::int64_t{place.slots})
        .seal();
}

Bytes sealOf(const Person& person) { return Canon("person").add(person.id.value()).add(person.name).seal(); }

Bytes sealOf(const Piece& piece)
{
    Canon canon("piece");
    canon.add(piece.id.value()).add(piece.number).add(piece.benchName).add(piece.owner.value()).add(piece.procedure);
    for (const int number : {static_cast<int>(piece.body), piece.fragments, piece.joins, piece.sets}) {
        canon.add(std::int64_t{number});
    }
    canon.add(piece.seam.count()).add(piece.chip.count());
    canon.add(asLines(piece.optionalStages)).add(asLines(piece.materialsInIt));
    return addRest(canon, piece).seal();
}

template <class Row> Row sealed(Row row, const std::string& seal, const char* table)
{
    if (seal != sealOf(row)) {
        throw SqlError(Fault{FaultKind::Damaged, std::string(table) + " " + std::to_string(row.id.value())});
    }
    return row;
}

Customer customerAt(const Statement& row)
{
    Customer customer{CustomerId(row.integer(0)), row.text(1), row.text(2)};
    takeRest(row, 4, customer, "customer");
    return sealed(std::move(customer), row.text(3), "customer");
}

Place placeAt(const Statement& row)
{
    const auto kind = placeKindFromKey(row.text(2));
    return sealed(Place{PlaceId(row.integer(0)), row.text(1), kind.value_or(PlaceKind::Outside),
                        static_cast<int>(row.integer(3))},
                  row.text(4), "place");
}

Person personAt(const Statement& row)
{
    return sealed(Person{PersonId(row.integer(0)), row.text(1)}, row.text(2), "person");
}

Piece pieceAt(const Statement& row)
{
    Piece piece;
    piece.id = PieceId(row.integer(0));
    piece.number = row.text(1);
    piece.benchName = row.text(2);
    piece.owner = CustomerId(row.integer(3));
    piece.procedure = row.text(4);
    piece.body = static_cast<Body>(row.integer(5));
    piece.fragments = static_cast<int>(row.integer(6));
    piece.joins = static_cast<int>(row.integer(7));
    piece.sets = static_cast<int>(row.integer(8));
    piece.seam = micrometres(row.integer(9));
    piece.chip = micrometres(row.integer(10));
    piece.optionalStages = fromLines(row.text(11));
    piece.materialsInIt = fromLines(row.text(12));
    takeRest(row, 14, piece, "piece");
    return sealed(std::move(piece), row.text(13), "piece");
}

template <class Reader> auto readAll(Statement statement, Reader reader)
{
    std::vector<decltype(reader(statement))> rows;
    while (statement.step()) {
        rows.push_back(reader(statement));
    }
    return rows;
}

} // namespace

std::int64_t RecordRows::idFor(std::int64_t given, const char* table) const
{
    // Above every number in use and, for rows that were taken away, above those still named by events.
    return given > 0 ? given : m_database->number("SELECT coalesce(max(id), 0) + 1 FROM " + std::string(table));
}

CustomerId RecordRows::put(const Customer& customer)
{
    Customer row = customer;
    row.id = CustomerId(idFor(customer.id.value(), "customer"));
    m_database
        ->prepare("INSERT INTO customer VALUES (?1, ?2, ?3, ?4, ?5) ON CONFLICT (id) DO UPDATE "
                  "SET name = excluded.name, contact = excluded.contact, seal = excluded.seal, sheet = excluded.sheet")
        .with(row.id.value(), row.name, row.contact, Blob{sealOf(row)}, restText(row))
        .run();
    return row.id;
}

PlaceId RecordRows::put(const Place& place)
{
    Place row = place;
    row.id = PlaceId(idFor(place.id.value(), "place"));
    m_database
        ->prepare("INSERT INTO place VALUES (?1, ?2, ?3, ?4, ?5) ON CONFLICT (id) DO UPDATE "
                  "SET name = excluded.name, kind = excluded.kind, slots = excluded.slots, seal = excluded.seal")
        .with(row.id.value(), row.name, placeKindKey(row.kind), row.slots, Blob{sealOf(row)})
        .run();
    return row.id;
}

PersonId RecordRows::put(const Person& person)
{
    Person row = person;
    row.id = PersonId(idFor(person.id.value(), "person"));
    m_database
        ->prepare("INSERT INTO person VALUES (?1, ?2, ?3) ON CONFLICT (id) DO UPDATE "
                  "SET name = excluded.name, seal = excluded.seal")
        .with(row.id.value(), row.name, Blob{sealOf(row)})
        .run();
    return row.id;
}

PieceId RecordRows::put(const Piece& piece)
{
    Piece row = piece;
    row.id = PieceId(idFor(piece.id.value(), "piece"));
    const auto owner = row.owner.isSet() ? std::optional(row.owner.value()) : std::nullopt;
    m_database
        ->prepare("INSERT INTO piece VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15) "
                  "ON CONFLICT (id) DO UPDATE SET number = excluded.number, bench_name = excluded.bench_name, "
                  "owner = excluded.owner, procedure = excluded.procedure, body = excluded.body, "
                  "fragments = excluded.fragments, joins = excluded.joins, sets = excluded.sets, "
                  "seam_um = excluded.seam_um, chip_um = excluded.chip_um, "
                  "optional_stages = excluded.optional_stages, materials = excluded.materials, seal = excluded.seal, "
                  "sheet = excluded.sheet")
        .with(row.id.value(), row.number, row.benchName, owner, row.procedure, static_cast<int>(row.body),
              row.fragments, row.joins, row.sets, row.seam.count(), row.chip.count(), asLines(row.optionalStages),
              asLines(row.materialsInIt), Blob{sealOf(row)}, restText(row))
        .run();
    return row.id;
}

std::vector<Customer> RecordRows::customers() const
{
    return readAll(m_database->prepare(selectCustomer + "ORDER BY id"), customerAt);
}

std::vector<Customer> RecordRows::ownersInHand() const
{
    return readAll(m_database->prepare(selectCustomer + "WHERE id IN (SELECT owner FROM piece WHERE id IN "
                                                        "(SELECT piece FROM in_hand)) ORDER BY id"),
                   customerAt);
}

std::vector<Place> RecordRows::places() const
{
    return readAll(m_database->prepare(selectPlace + "ORDER BY id"), placeAt);
}

std::vector<Person> RecordRows::people() const
{
    return readAll(m_database->prepare(selectPerson + "ORDER BY id"), personAt);
}

std::vector<Piece> RecordRows::pieces() const
{
    return readAll(m_database->prepare(selectPiece + "ORDER BY id"), pieceAt);
}

std::vector<Piece> RecordRows::piecesInHand() const
{
    return readAll(m_database->prepare(selectPiece + "WHERE id IN (SELECT piece FROM in_hand) ORDER BY id"), pieceAt);
}

std::optional<Piece> RecordRows::piece(PieceId id) const
{
    Statement statement = m_database->prepare(selectPiece + "WHERE id = ?1");
    statement.with(id.value());
    return statement.step() ? std::optional(pieceAt(statement)) : std::nullopt;
}

std::vector<Piece> RecordRows::piecesOf(CustomerId owner) const
{
    Statement statement = m_database->prepare(selectPiece + "WHERE owner = ?1 ORDER BY id");
    statement.with(owner.value());
    return readAll(std::move(statement), pieceAt);
}

std::optional<Piece> RecordRows::pieceNumbered(const std::string& number) const
{
    Statement statement = m_database->prepare(selectPiece + "WHERE number = ?1");
    statement.with(number);
    return statement.step() ? std::optional(pieceAt(statement)) : std::nullopt;
}

CheckedRows RecordRows::check(Table table, std::int64_t after, int count) const
{
    const std::string page = "WHERE id > ?1 ORDER BY id LIMIT ?2";
    switch (table) {
    case Table::Customers:
        return checkRows(m_database->prepare(selectCustomer + page), after, count, customerAt);
    case Table::Pieces:
        return checkRows(m_database->prepare(selectPiece + page), after, count, pieceAt);
    case Table::Places:
        return checkRows(m_database->prepare(selectPlace + page), after, count, placeAt);
    case Table::People:
        return checkRows(m_database->prepare(selectPerson + page), after, count, personAt);
    }
    return {};
}

std::optional<Customer> RecordRows::customer(CustomerId id) const
{
    Statement statement = m_database->prepare(selectCustomer + "WHERE id = ?1");
    statement.with(id.value());
    return statement.step() ? std::optional(customerAt(statement)) : std::nullopt;
}

} // namespace mend::store
