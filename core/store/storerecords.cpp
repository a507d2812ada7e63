// The part of the store that the door needs: whole pages, visits, finding, forgetting.
#include "core/base/foldedtext.h"
#include "core/record/fields.h"
#include "core/record/piecenumber.h"
#include "core/store/bulk.h"
#include "core/store/eventrows.h"
#include "core/store/sheets.h"
#include "core/store/store.h"

#include <algorithm>

#include <sqlite3.h>

namespace mend::store {

using bench::Event;

namespace {

/// The next free number of a year, after the highest that is given.
std::string nextNumber(const Database& database, int year)
{
    const auto first = record::pieceNumber(year, 1);
    if (!first) {
        throw SqlError(Fault{FaultKind::BadInput, "no such year"});
    }
    const std::string begin = first->substr(0, 2);
    Statement row = database.prepare("SELECT coalesce(max(number), '') FROM piece WHERE number >= ?1 AND number < ?2");
    row.with(begin, begin + ":"); // the sign after 9
    const std::string highest = row.step() ? row.text(0) : std::string();
    const int running = highest.size() >= 6 ? std::stoi(highest.substr(2, 4)) : 0;
    const auto number = record::pieceNumber(year, running + 1);
    if (!number) {
        throw SqlError(Fault{FaultKind::Conflict, "all numbers of the year are given"});
    }
    return *number;
}

/// Looks for a person's own words in texts that may hold them.
class Traces {
public:
    explicit Traces(const record::Customer& person)
    {
        for (std::string& word : foldedWords(person.name)) {
            if (charactersOf(word).size() > 2) {
                m_names.push_back(std::move(word));
            }
        }
        for (const record::ContactWay& way : record::contactsOf(person)) {
            m_contacts.push_back(way.text);
        }
    }

    bool areIn(const std::string& text) const
    {
        const std::vector<std::string> words = foldedWords(text);
        return std::ranges::any_of(
                   m_names, [&](const std::string& name) { return std::ranges::find(words, name) != words.end(); }) ||
               std::ranges::any_of(m_contacts,
                                   [&](const std::string& contact) { return text.find(contact) != std::string::npos; });
    }
    void wipe(std::string& text) const
    {
        if (areIn(text)) {
            text.clear();
        }
    }

private:
    std::vector<std::string> m_names;
    std::vector<std::string> m_contacts;
};

void wipeVisit(record::Visit& visit, const Traces& traces)
{
    visit.story.clear();
    visit.wishes.clear();
    visit.consent.picture.clear();
    for (std::string* text :
         {&visit.condition.seen, &visit.condition.inferred, &visit.condition.how, &visit.consent.scope}) {
        traces.wipe(*text);
    }
    for (record::Accessory& each : visit.accessories) {
        traces.wipe(each.what);
    }
    for (std::string& mend : visit.condition.oldMends) {
        traces.wipe(mend);
    }
}

} // namespace

Result<TakenIn> Store::takeIn(const record::Intake& intake, int year, std::span<const Event> events,
                              const std::string& draft)
{
    return writing([&] {
        const TakenIn taken = takeInRows(intake, year, events);
        VisitRows(m_database).dropDraft(draft);
        return taken;
    });
}

TakenIn Store::takeInRows(const record::Intake& intake, int year, std::span<const Event> events)
{
    if (events.empty()) {
        throw SqlError(Fault{FaultKind::BadInput, "nothing is told of the piece"});
    }
    const RecordRows rows(m_database);
    if (const auto told = EventRows(m_database).find(events.front().id)) {
        const auto held = rows.piece(told->piece);
        if (!held) {
            throw SqlError(Fault{FaultKind::Conflict, "the number of the event is another's"});
        }
        return {held->id, held->owner, held->number, VisitRows(m_database).nextNumber(held->id) - 1};
    }
    const auto held = intake.piece.id.isSet() ? rows.piece(intake.piece.id) : std::nullopt;
    if (intake.piece.id.isSet() && !held) {
        throw SqlError(Fault{FaultKind::BadInput, "no such piece"});
    }
    record::Piece piece = intake.piece;
    piece.number = held ? held->number : nextNumber(m_database, year);
    piece.owner = putFindable(intake.owner);
    piece.id = putFindable(piece);
    record::Visit visit = intake.visit;
    visit.piece = piece.id;
    visit.number = VisitRows(m_database).nextNumber(piece.id);
    visit.procedure = piece.procedure;
    visit.fragments = piece.fragments;
    VisitRows(m_database).put(visit);
    std::vector<Event> told(events.begin(), events.end());
    for (Event& event : told) {
        event.piece = piece.id;
    }
    addAll(told);
    return {piece.id, piece.owner, piece.number, visit.number};
}

Outcome Store::put(const record::Visit& visit)
{
    return writing([&] { VisitRows(m_database).put(visit); });
}

Result<std::vector<record::Visit>> Store::visitsOf(PieceId piece) const
{
    return guarded([&] { return VisitRows(m_database).of(piece); });
}

Result<std::vector<record::Visit>> Store::visits() const
{
    return guarded([&] { return VisitRows(m_database).all(); });
}

Result<std::vector<Event>> Store::mixesOn(PieceId piece) const
{
    return guarded([&] { return EventRows(m_database).mixesOn(piece); });
}

Result<std::optional<record::Customer>> Store::customer(CustomerId id) const
{
    return guarded([&] { return RecordRows(m_database).customer(id); });
}

Result<std::vector<record::Piece>> Store::piecesOf(CustomerId owner) const
{
    return guarded([&] { return RecordRows(m_database).piecesOf(owner); });
}

Result<std::optional<record::Piece>> Store::pieceNumbered(const std::string& number) const
{
    return guarded([&] { return RecordRows(m_database).pieceNumbered(number); });
}

Outcome Store::putAll(std::span<const record::Customer> people)
{
    return writing([&] {
        for (const record::Customer& person : people) {
            putFindable(person);
        }
    });
}

Result<std::string> Store::addPhoto(const Bytes& bytes, const Bytes& thumbnail, PhotoUse use,
                                    const record::PhotoNote& note)
{
    return writing([&] {
        PhotoRows rows(m_database);
        use.photo = rows.put(bytes, thumbnail);
        rows.use(use);
        VisitRows(m_database).putNote(use, note);
        return use.photo;
    });
}

Outcome Store::fill(const std::function<Outcome(Bulk&)>& fill)
{
    return writing([&] {
        Bulk bulk(*this);
        demand(fill(bulk));
    });
}

Result<std::vector<std::string>> Store::photoHashes() const
{
    return guarded([&] { return PhotoRows(m_database).hashes(); });
}

Outcome Store::putNote(const PhotoUse& use, const record::PhotoNote& note)
{
    return writing([&] { VisitRows(m_database).putNote(use, note); });
}

Result<std::vector<NotedPhoto>> Store::notedPhotosOf(PieceId piece) const
{
    return guarded([&] { return VisitRows(m_database).photosOf(piece); });
}

Outcome Store::putDraft(const Draft& draft)
{
    return writing([&] { VisitRows(m_database).putDraft(draft); });
}

Result<std::vector<Draft>> Store::drafts() const
{
    return guarded([&] { return VisitRows(m_database).drafts(); });
}

Outcome Store::dropDraft(const std::string& name)
{
    return writing([&] { VisitRows(m_database).dropDraft(name); });
}

Result<Found> Store::find(std::string_view typed, FindQuery::Watch watch) const
{
    auto found = guarded([&] { return FindQuery(m_ready, std::move(watch)).find(typed); });
    m_ready.rest();
    return found;
}

Result<std::vector<FoundPerson>> Store::findPeople(std::string_view typed) const
{
    auto found = guarded([&] { return FindQuery(m_ready).findPeople(typed); });
    m_ready.rest();
    return found;
}

Result<std::vector<LongGone>> Store::longGone(Instant before) const
{
    return guarded([&] {
        const RecordRows people(m_database);
        Statement rows = m_database.prepare(
            "SELECT p.owner, max(e.happened), count(DISTINCT p.id) FROM piece p JOIN event e ON e.piece = p.id "
            "WHERE p.owner IS NOT NULL GROUP BY p.owner HAVING max(e.happened) < ?1 AND NOT EXISTS (SELECT 1 FROM "
            "in_hand h JOIN piece q ON q.id = h.piece WHERE q.owner = p.owner) ORDER BY 2");
        rows.with(toRfc3339(before));
        std::vector<LongGone> gone;
        while (rows.step()) {
            auto person = people.customer(CustomerId(rows.integer(0)));
            if (person && !person->isErased()) {
                gone.push_back({std::move(*person), fromRfc3339(rows.text(1)).value_or(Instant{}),
                                static_cast<int>(rows.integer(2))});
            }
        }
        return gone;
    });
}

void Store::eraseRows(const record::Customer& person)
{
    const Traces traces(person);
    const RecordRows rows(m_database);
    for (record::Piece& piece : RecordRows(m_database).piecesOf(person.id)) {
        for (record::Visit& visit : VisitRows(m_database).of(piece.id)) {
            wipeVisit(visit, traces);
            VisitRows(m_database).put(visit);
        }
        traces.wipe(piece.looks);
        traces.wipe(piece.maker);
        traces.wipe(piece.marks);
        putFindable(piece);
    }
    Statement notes = m_database.prepare("SELECT event, text FROM note");
    std::vector<std::int64_t> telling;
    while (notes.step()) {
        if (traces.areIn(notes.text(1))) {
            telling.push_back(notes.integer(0));
        }
    }
    notes.reset();
    for (const std::int64_t event : telling) {
        m_database.prepare("DELETE FROM note WHERE event = ?1").with(event).run();
    }
    for (const Draft& draft : VisitRows(m_database).drafts()) {
        const auto sheet = record::sheetFromText(draft.sheet);
        const auto page = sheet ? record::fromSheet<record::Intake>(*sheet) : std::nullopt;
        if (traces.areIn(draft.sheet) || (page && page->owner.id == person.id)) {
            VisitRows(m_database).dropDraft(draft.name);
        }
    }
    for (const char* const sql :
         {"DELETE FROM note WHERE event IN (SELECT e.id FROM event e JOIN piece p ON p.id = e.piece "
          "WHERE p.owner = ?1)",
          "DELETE FROM photo_use WHERE piece IN (SELECT id FROM piece WHERE owner = ?1)"}) {
        m_database.prepare(sql).with(person.id.value()).run();
    }
    m_database.run("DELETE FROM photo_bytes WHERE hash NOT IN (SELECT photo FROM photo_use)");
    m_database.run("DELETE FROM photo WHERE hash NOT IN (SELECT photo FROM photo_use)");
    putFindable(record::Customer{person.id, "", ""});
}

Outcome Store::erase(CustomerId id)
{
    const Outcome erased = writing([&] {
        const auto person = RecordRows(m_database).customer(id);
        if (!person) {
            throw SqlError(Fault{FaultKind::NotFound, "nobody of that number"});
        }
        Statement here = m_database.prepare("SELECT count(*) FROM in_hand h JOIN piece p ON p.id = h.piece "
                                            "WHERE p.owner = ?1");
        here.with(id.value());
        if (here.step() && here.integer(0) > 0) {
            throw SqlError(Fault{FaultKind::Conflict, "a piece of theirs is in the house"});
        }
        here.reset();
        eraseRows(*person);
    });
    if (!erased) {
        return erased;
    }
    // Deleted rows are overwritten with zeroes (secure_delete); writing the file anew also leaves nothing between
    // the rows of pages that were only tidied up.
    return guarded([&] {
        m_ready.rest();
        sqlite3_limit(m_database.handle(), SQLITE_LIMIT_ATTACHED, 1); // SQLite's own way of doing it
        const Outcome anew = guarded([&] { m_database.run("VACUUM"); });
        sqlite3_limit(m_database.handle(), SQLITE_LIMIT_ATTACHED, 0);
        demand(anew);
    });
}

} // namespace mend::store
