#pragma once

#include "core/base/result.h"
#include "core/bench/event.h"
#include "core/record/intake.h"
#include "core/record/piece.h"
#include "core/store/benchfile.h"
#include "core/store/findquery.h"
#include "core/store/migrator.h"
#include "core/store/ownerlock.h"
#include "core/store/photorows.h"
#include "core/store/sqlite.h"
#include "core/store/visitrows.h"
#include "core/store/wordrows.h"

#include <chrono>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace mend::store {

enum class OpenMode { ReadOnly, ReadWrite, CreateIfMissing };

/// Whether the open file takes new rows, and if not, why.
enum class Standing {
    Writable,
    ReadOnlyAsAsked,
    ReadOnlyFile, ///< the file, its folder or its disk cannot be written
    OnNetwork,    ///< lies on another machine, where locks cannot be relied on
    Gone,         ///< moved or removed while open: nothing more is written
};

struct OpenOptions {
    OpenMode mode = OpenMode::ReadWrite;
    bool ownFolder = false;    ///< the folder is the program's own: everyone else is kept out of it
    bool takeOverLock = false; ///< a person said that the other machine is gone
    std::chrono::milliseconds busyTimeout{50};
    std::filesystem::path copies; ///< where the copy before a migration goes; empty: beside the file
    std::string vfs;              ///< a file layer of tests; empty: the system's own
    std::vector<SchemaStep> schema = shippedSchema();
    std::function<bool(const std::filesystem::path&)> onNetwork = isOnNetwork;
};

/// What became of a page of the intake.
struct TakenIn {
    PieceId piece;
    CustomerId owner;
    std::string number;
    int visit = 1;
    bool operator==(const TakenIn&) const = default;
};

/// Somebody whose pieces are all gone, and since when nothing was done for them.
struct LongGone {
    record::Customer person;
    Instant last;
    int pieces = 0;
};

class Bulk;

/// The bench file: everything the studio knows, in one SQLite file that survives a kill or a
/// power cut at any moment. What returned Done is on the disk; what returned a fault left no trace.
/// One thread at a time; StoreThread gives it one of its own.
class Store {
public:
    /// Faults: NotFound; Damaged (cut short, seal or structure broken); Foreign; Newer (detail: the
    /// version); Locked (detail: who); Conflict (two names for one file); Busy; Unwritable.
    /// A file that cannot be written opens for reading: see `standing`.
    static Result<std::unique_ptr<Store>> open(const std::filesystem::path& file, const OpenOptions& options);
    static Result<std::unique_ptr<Store>> open(const std::filesystem::path& file, OpenMode mode);

    const std::filesystem::path& file() const { return m_file; }
    Standing standing() const { return m_standing; }
    /// Whether the name still leads to the open file; while it does not, nothing is written.
    bool isStillThere();

    // What happened. Each call is one transaction.
    /// Numbers rise from event to event. Events that are there already, word for word, are passed
    /// over, so that a write whose answer was lost can be told again. Conflict: a number out of
    /// order or taken, or a piece, person, place or rule that is not there. BadInput: a time,
    /// temperature or humidity that cannot be.
    Outcome append(std::span<const bench::Event> events);
    EventId nextEventId() const;
    /// What the bench has to know at start; see EventRows::forBench.
    Result<std::vector<bench::Event>> benchEvents(Instant since) const;
    /// When the first thing was told to have happened to any piece in hand; empty where there is none.
    Result<std::optional<Instant>> oldestInHand() const;
    Result<std::vector<bench::Event>> eventsOf(PieceId piece) const;
    Result<std::vector<bench::Event>> allEvents() const;
    /// The mixes that went on a piece, as they were begun: their batches stand there.
    Result<std::vector<bench::Event>> mixesOn(PieceId piece) const;

    // What may be put right. An id that is set replaces the row, else the next number is given.
    /// A new owner (or one already known, by id), their piece and its first events, which may leave
    /// their piece unset. Told again word for word it changes nothing and gives the same id.
    Result<PieceId> takeIn(const record::Customer& owner, const record::Piece& piece,
                           std::span<const bench::Event> events);
    Result<CustomerId> put(const record::Customer& customer);
    Result<PieceId> put(const record::Piece& piece);
    Result<PlaceId> put(const record::Place& place);
    Result<PersonId> put(const record::Person& person);
    Result<std::vector<record::Customer>> customers() const;
    /// Whose pieces are in the house.
    Result<std::vector<record::Customer>> ownersInHand() const;
    Result<std::vector<record::Piece>> pieces() const;
    Result<std::vector<record::Piece>> piecesInHand() const;
    Result<std::optional<record::Piece>> piece(PieceId id) const;
    Result<std::vector<record::Place>> places() const;
    Result<std::vector<record::Person>> people() const;

    Outcome setSetting(const std::string& key, const std::string& value);
    Result<std::map<std::string, std::string>> settings() const;
    Outcome putRules(const RuleText& rules);
    Result<std::optional<std::string>> rules(const std::string& hash) const;
    Result<std::vector<RuleText>> allRules() const;

    // Pictures: written once under their hash, with the row that names them or not at all.
    Result<std::string> putPhoto(const Bytes& bytes, const Bytes& thumbnail);
    Result<std::string> putPhoto(const Bytes& bytes, const Bytes& thumbnail, PhotoUse use);
    Result<std::optional<Bytes>> photo(const std::string& hash) const;
    Result<std::optional<Bytes>> thumbnail(const std::string& hash) const;
    Result<std::vector<PhotoUse>> photosOf(PieceId piece) const;

    // From the door and back to it; see storerecords.cpp.
    /// A whole page of the intake in one transaction: the owner (new where no id is set), the piece (under the next
    /// free number of that year, or a new visit of the one whose id is set), its visit, and the events, at least
    /// one, whose piece is left unset. The draft of that name goes. Told again with the same events it changes
    /// nothing and gives the same answer. Conflict: all numbers of the year are given.
    Result<TakenIn> takeIn(const record::Intake& intake, int year, std::span<const bench::Event> events,
                           const std::string& draft = {});
    Outcome put(const record::Visit& visit);
    Result<std::vector<record::Visit>> visitsOf(PieceId piece) const;
    Result<std::vector<record::Visit>> visits() const;
    Result<std::optional<record::Customer>> customer(CustomerId id) const;
    Result<std::vector<record::Piece>> piecesOf(CustomerId owner) const;
    Result<std::optional<record::Piece>> pieceNumbered(const std::string& number) const;
    /// Those of them that are new: a list that was imported, all or none.
    Outcome putAll(std::span<const record::Customer> people);
    /// A picture, where it is used and what is told of it: all three or none (F8). Its hash.
    Result<std::string> addPhoto(const Bytes& bytes, const Bytes& thumbnail, PhotoUse use,
                                 const record::PhotoNote& note);
    /// Many rows in one transaction, or none of them where `fill` or a row fails.
    Outcome fill(const std::function<Outcome(Bulk&)>& fill);
    /// Every picture's hash, in order.
    Result<std::vector<std::string>> photoHashes() const;
    Outcome putNote(const PhotoUse& use, const record::PhotoNote& note);
    Result<std::vector<NotedPhoto>> notedPhotosOf(PieceId piece) const;
    Outcome putDraft(const Draft& draft);
    Result<std::vector<Draft>> drafts() const;
    Outcome dropDraft(const std::string& name);

    /// What the one field answers; see FindQuery.
    Result<Found> find(std::string_view typed, FindQuery::Watch watch = {}) const;
    Result<std::vector<FoundPerson>> findPeople(std::string_view typed) const;
    /// Who has had nothing here since then, longest gone first: may their data still be kept?
    Result<std::vector<LongGone>> longGone(Instant before) const;

    /// Takes a person out of the file for ever: name, contacts, pictures, their own words, and every note or text
    /// that holds their name. The pieces and what was done to them stay, and the chain with them. The file is
    /// written anew, so that no byte of the name is left in it. Old backups still hold it until they are gone.
    /// Conflict: a piece of theirs is in the house. NotFound: nobody of that number.
    Outcome erase(CustomerId person);

    /// Copies the whole file, pictures too, to a name that must be free: for a file that was moved
    /// or removed while open, or whose disk takes nothing any more.
    Outcome saveAs(const std::filesystem::path& to);

    /// The connection, for this floor's own checks and copies.
    Database& database() { return m_database; }
    const Database& database() const { return m_database; }

private:
    Store(Database database, std::filesystem::path file, OwnerLock lock, Standing standing);
    friend class Opening;
    friend class Bulk;
    template <class Work> ResultOf<Work> writing(Work work);
    void addAll(std::span<const bench::Event> events);
    void settleInHand(std::span<const bench::Event> events);
    CustomerId putFindable(const record::Customer& customer);
    PieceId putFindable(const record::Piece& piece);
    TakenIn takeInRows(const record::Intake& intake, int year, std::span<const bench::Event> events);
    void eraseRows(const record::Customer& person);
    FindRows findable() { return FindRows(m_ready); }

    OwnerLock m_lock; // released last: after the connection is closed
    Database m_database;
    std::filesystem::path m_file;
    std::optional<FileIdentity> m_identity;
    Standing m_standing;
    mutable Prepared m_ready{m_database}; // released first
};

/// One transaction, or nothing at all.
template <class Work> ResultOf<Work> Store::writing(Work work)
{
    return guarded([&]() -> std::invoke_result_t<Work> {
        if (!isStillThere()) {
            throw SqlError(Fault{FaultKind::NotFound, "the file was moved or removed while open"});
        }
        if (m_standing != Standing::Writable) {
            throw SqlError(Fault{FaultKind::ReadOnly, "the file is open for reading"});
        }
        Transaction transaction(m_database);
        if constexpr (std::is_void_v<std::invoke_result_t<Work>>) {
            work();
            transaction.commit();
        } else {
            auto result = work();
            transaction.commit();
            return result;
        }
    });
}

} // namespace mend::store
