#include "core/store/store.h"

#include "core/store/eventrows.h"
#include "core/store/inhand.h"
#include "core/store/opening.h"
#include "core/store/pagecopy.h"
#include "core/store/recordrows.h"

#include <algorithm>
#include <set>

namespace mend::store {

using bench::Event;

namespace {

void setInHand(const Database& database, PieceId piece, bool inHand)
{
    database.prepare(inHand ? "INSERT OR IGNORE INTO in_hand VALUES (?1)" : "DELETE FROM in_hand WHERE piece = ?1")
        .with(piece.value())
        .run();
}

/// The piece that a former, seemingly failed, try of the same take-in left, if one did.
PieceId takenInAlready(const Database& database, const record::Customer& owner, record::Piece piece)
{
    const RecordRows rows(database);
    const auto held = piece.id.isSet() ? std::nullopt : rows.pieceNumbered(piece.number);
    const auto heldOwner = held ? rows.customer(held->owner) : std::nullopt;
    if (!heldOwner || heldOwner->name != owner.name || heldOwner->contact != owner.contact) {
        return {};
    }
    piece.id = held->id;
    piece.owner = held->owner;
    return piece == *held ? held->id : PieceId();
}

} // namespace

Result<std::unique_ptr<Store>> Store::open(const std::filesystem::path& file, const OpenOptions& options)
{
    return guarded([&] { return Opening(file, options).run(); });
}

Result<std::unique_ptr<Store>> Store::open(const std::filesystem::path& file, OpenMode mode)
{
    OpenOptions options;
    options.mode = mode;
    return open(file, options);
}

Store::Store(Database database, std::filesystem::path file, OwnerLock lock, Standing standing)
    : m_lock(std::move(lock)), m_database(std::move(database)), m_file(std::move(file)), m_identity(identityOf(m_file)),
      m_standing(standing)
{
}

bool Store::isStillThere()
{
    if (m_standing == Standing::Writable || m_standing == Standing::Gone) {
        m_standing = identityOf(m_file) == m_identity ? Standing::Writable : Standing::Gone;
    }
    return m_standing != Standing::Gone;
}

CustomerId Store::putFindable(const record::Customer& customer)
{
    record::Customer row = customer;
    row.id = RecordRows(m_database).put(customer);
    findable().note(row);
    return row.id;
}

PieceId Store::putFindable(const record::Piece& piece)
{
    RecordRows rows(m_database);
    record::Piece row = piece;
    const bool known = piece.id.isSet() && rows.piece(piece.id);
    row.id = rows.put(piece);
    findable().note(row);
    if (!known) {
        setInHand(m_database, row.id, true);
    }
    return row.id;
}

Outcome Store::append(std::span<const Event> events)
{
    return writing([&] { addAll(events); });
}

void Store::addAll(std::span<const Event> events)
{
    EventRows rows(m_database);
    ChainEnd end = rows.end();
    for (const Event& event : events) {
        if (const auto why = whyNotStorable(event)) {
            throw SqlError(Fault{FaultKind::BadInput, *why});
        }
        if (event.id > end.last) {
            rows.add(event, end);
        } else if (rows.find(event.id) != event) {
            throw SqlError(Fault{FaultKind::Conflict, "event " + std::to_string(event.id.value()) + " is another"});
        }
    }
    settleInHand(events);
}

void Store::settleInHand(std::span<const Event> events)
{
    const EventRows rows(m_database);
    std::set<PieceId> moved;
    for (const Event& event : events) {
        if (!movesPiece(event)) {
            continue;
        }
        moved.insert(event.piece);
        // What is taken back may itself be a retelling or a void: follow it to the fact.
        for (EventId target = event.target; target.isSet();) {
            const auto fact = rows.find(target);
            if (!fact) {
                break;
            }
            moved.insert(fact->piece);
            target = fact->target;
        }
    }
    for (const PieceId piece : moved) {
        if (piece.isSet()) {
            setInHand(m_database, piece, isInHand(rows.concerning(piece), piece));
        }
    }
}

EventId Store::nextEventId() const
{
    const auto end = guarded([&] { return EventRows(m_database).end(); });
    return EventId(end ? end.value().last.value() + 1 : 1);
}

Result<std::vector<Event>> Store::benchEvents(Instant since) const
{
    return guarded([&] { return EventRows(m_database).forBench(since); });
}

Result<std::optional<Instant>> Store::oldestInHand() const
{
    return guarded([&] { return EventRows(m_database).oldestInHand(); });
}

Result<std::vector<Event>> Store::eventsOf(PieceId piece) const
{
    return guarded([&] { return EventRows(m_database).concerning(piece); });
}

Result<std::vector<Event>> Store::allEvents() const
{
    return guarded([&] { return EventRows(m_database).all(); });
}

Result<PieceId> Store::takeIn(const record::Customer& owner, const record::Piece& piece, std::span<const Event> events)
{
    return writing([&] {
        const PieceId known = takenInAlready(m_database, owner, piece);
        record::Piece row = piece;
        row.owner = known.isSet() ? CustomerId() : putFindable(owner);
        const PieceId id = known.isSet() ? known : putFindable(row);
        std::vector<Event> first(events.begin(), events.end());
        for (Event& event : first) {
            event.piece = event.piece.isSet() ? event.piece : id;
        }
        addAll(first);
        return id;
    });
}

Result<CustomerId> Store::put(const record::Customer& customer)
{
    return writing([&] { return putFindable(customer); });
}

Result<PieceId> Store::put(const record::Piece& piece)
{
    return writing([&] { return putFindable(piece); });
}

Result<PlaceId> Store::put(const record::Place& place)
{
    return writing([&] { return RecordRows(m_database).put(place); });
}

Result<PersonId> Store::put(const record::Person& person)
{
    return writing([&] { return RecordRows(m_database).put(person); });
}

Result<std::vector<record::Customer>> Store::customers() const
{
    return guarded([&] { return RecordRows(m_database).customers(); });
}

Result<std::vector<record::Customer>> Store::ownersInHand() const
{
    return guarded([&] { return RecordRows(m_database).ownersInHand(); });
}

Result<std::vector<record::Piece>> Store::pieces() const
{
    return guarded([&] { return RecordRows(m_database).pieces(); });
}

Result<std::vector<record::Piece>> Store::piecesInHand() const
{
    return guarded([&] { return RecordRows(m_database).piecesInHand(); });
}

Result<std::optional<record::Piece>> Store::piece(PieceId id) const
{
    return guarded([&] { return RecordRows(m_database).piece(id); });
}

Result<std::vector<record::Place>> Store::places() const
{
    return guarded([&] { return RecordRows(m_database).places(); });
}

Result<std::vector<record::Person>> Store::people() const
{
    return guarded([&] { return RecordRows(m_database).people(); });
}

Outcome Store::setSetting(const std::string& key, const std::string& value)
{
    return writing([&] { WordRows(m_database).setSetting(key, value); });
}

Result<std::map<std::string, std::string>> Store::settings() const
{
    return guarded([&] { return WordRows(m_database).settings(); });
}

Outcome Store::putRules(const RuleText& revision)
{
    return writing([&] { WordRows(m_database).putRules(revision); });
}

Result<std::optional<std::string>> Store::rules(const std::string& hash) const
{
    return guarded([&] { return WordRows(m_database).rules(hash); });
}

Result<std::vector<RuleText>> Store::allRules() const
{
    return guarded([&] { return WordRows(m_database).allRules(); });
}

Result<std::string> Store::putPhoto(const Bytes& bytes, const Bytes& thumbnail)
{
    return writing([&] { return PhotoRows(m_database).put(bytes, thumbnail); });
}

Result<std::string> Store::putPhoto(const Bytes& bytes, const Bytes& thumbnail, PhotoUse use)
{
    return writing([&] {
        PhotoRows rows(m_database);
        use.photo = rows.put(bytes, thumbnail);
        rows.use(use);
        return use.photo;
    });
}

Result<std::optional<Bytes>> Store::photo(const std::string& hash) const
{
    return guarded([&] { return PhotoRows(m_database).bytes(hash); });
}

Result<std::optional<Bytes>> Store::thumbnail(const std::string& hash) const
{
    return guarded([&] { return PhotoRows(m_database).thumbnail(hash); });
}

Result<std::vector<PhotoUse>> Store::photosOf(PieceId piece) const
{
    return guarded([&] { return PhotoRows(m_database).usesOf(piece); });
}

Outcome Store::saveAs(const std::filesystem::path& to)
{
    return guarded([&] {
        const std::filesystem::path made = to.native() + ".unfinished";
        copyWhole(m_database, made);
        if (const Outcome named = renameIfFree(made, to); !named) {
            std::filesystem::remove(made);
            throw SqlError(named.fault());
        }
    });
}

} // namespace mend::store
