#include "core/store/visitrows.h"

#include "core/store/sheets.h"

namespace mend::store {

namespace {

const std::string selectVisit = "SELECT id, piece, number, sheet, seal FROM visit ";
const std::string selectPhotoNote = "SELECT use, sheet, seal FROM photo_note ";
const std::string selectDraft = "SELECT id, name, sheet, saved, seal FROM draft ";

Bytes sealOfSheet(const char* table, std::string_view key, std::int64_t number, std::string_view sheet)
{
    return Canon(table).add(key).add(number).add(sheet).seal();
}

[[noreturn]] void damaged(const char* table, const Statement& row)
{
    throw SqlError(Fault{FaultKind::Damaged, std::string(table) + " " + std::to_string(row.integer(0))});
}

record::Visit visitAt(const Statement& row)
{
    record::Visit visit;
    visit.piece = PieceId(row.integer(1));
    visit.number = static_cast<int>(row.integer(2));
    if (row.text(4) != sealOfSheet("visit", std::to_string(visit.piece.value()), visit.number, row.text(3))) {
        damaged("visit", row);
    }
    takeRest(row, 3, visit, "visit");
    return visit;
}

record::PhotoNote noteAt(const Statement& row, int from)
{
    const std::string sheet = row.text(from + 1);
    if (row.text(from + 2) != sealOfSheet("photo_note", "", row.integer(from), sheet)) {
        damaged("photo_note", row);
    }
    const auto read = record::sheetFromText(sheet);
    const auto note = read ? record::fromSheet<record::PhotoNote>(*read) : std::nullopt;
    if (!note) {
        damaged("photo_note", row);
    }
    return *note;
}

Draft draftAt(const Statement& row)
{
    const auto saved = fromRfc3339(row.text(3));
    Draft draft{row.text(1), row.text(2), saved.value_or(Instant{})};
    if (!saved || row.text(4) != Canon("draft").add(draft.name).add(draft.sheet).add(row.text(3)).seal()) {
        damaged("draft", row);
    }
    return draft;
}

std::vector<record::Visit> readVisits(Statement& rows)
{
    std::vector<record::Visit> visits;
    while (rows.step()) {
        visits.push_back(visitAt(rows));
    }
    return visits;
}

} // namespace

void VisitRows::put(const record::Visit& visit)
{
    const std::string sheet = restText(visit);
    m_database
        ->prepare("INSERT INTO visit (piece, number, sheet, seal) VALUES (?1, ?2, ?3, ?4) "
                  "ON CONFLICT (piece, number) DO UPDATE SET sheet = excluded.sheet, seal = excluded.seal")
        .with(visit.piece.value(), visit.number, sheet,
              Blob{sealOfSheet("visit", std::to_string(visit.piece.value()), visit.number, sheet)})
        .run();
}

std::vector<record::Visit> VisitRows::of(PieceId piece) const
{
    Statement rows = m_database->prepare(selectVisit + "WHERE piece = ?1 ORDER BY number");
    rows.with(piece.value());
    return readVisits(rows);
}

std::vector<record::Visit> VisitRows::all() const
{
    Statement rows = m_database->prepare(selectVisit + "ORDER BY piece, number");
    return readVisits(rows);
}

int VisitRows::nextNumber(PieceId piece) const
{
    Statement row = m_database->prepare("SELECT coalesce(max(number), 0) + 1 FROM visit WHERE piece = ?1");
    row.with(piece.value());
    return row.step() ? static_cast<int>(row.integer(0)) : 1;
}

void VisitRows::putNote(const PhotoUse& use, const record::PhotoNote& note)
{
    const auto hash = fromHex(use.photo);
    Statement row = m_database->prepare("SELECT id FROM photo_use WHERE photo = ?1 AND piece = ?2 AND purpose = ?3");
    row.with(Blob{hash.value_or(Bytes())}, use.piece.value(), use.purpose);
    if (!row.step()) {
        throw SqlError(Fault{FaultKind::Conflict, "no such picture of this piece"});
    }
    const std::int64_t id = row.integer(0);
    row.reset();
    const std::string sheet = record::sheetText(record::sheetOf(note));
    m_database
        ->prepare("INSERT INTO photo_note VALUES (?1, ?2, ?3) ON CONFLICT (use) DO UPDATE "
                  "SET sheet = excluded.sheet, seal = excluded.seal")
        .with(id, sheet, Blob{sealOfSheet("photo_note", "", id, sheet)})
        .run();
}

std::vector<NotedPhoto> VisitRows::photosOf(PieceId piece) const
{
    std::vector<NotedPhoto> photos;
    for (PhotoUse& use : PhotoRows(*m_database).usesOf(piece)) {
        photos.push_back({std::move(use), {}});
    }
    Statement rows = m_database->prepare("SELECT n.use, n.sheet, n.seal, u.photo, u.purpose FROM photo_use u "
                                         "JOIN photo_note n ON n.use = u.id WHERE u.piece = ?1");
    rows.with(piece.value());
    while (rows.step()) {
        for (NotedPhoto& photo : photos) {
            if (photo.use.photo == toHex(rows.text(3)) && photo.use.purpose == rows.text(4)) {
                photo.note = noteAt(rows, 0);
            }
        }
    }
    return photos;
}

void VisitRows::putDraft(const Draft& draft)
{
    const std::string saved = toRfc3339(draft.saved);
    m_database
        ->prepare("INSERT INTO draft (name, sheet, saved, seal) VALUES (?1, ?2, ?3, ?4) ON CONFLICT (name) DO UPDATE "
                  "SET sheet = excluded.sheet, saved = excluded.saved, seal = excluded.seal")
        .with(draft.name, draft.sheet, saved, Blob{Canon("draft").add(draft.name).add(draft.sheet).add(saved).seal()})
        .run();
}

std::vector<Draft> VisitRows::drafts() const
{
    Statement rows = m_database->prepare(selectDraft + "ORDER BY name");
    std::vector<Draft> drafts;
    while (rows.step()) {
        drafts.push_back(draftAt(rows));
    }
    return drafts;
}

void VisitRows::dropDraft(const std::string& name)
{
    m_database->prepare("DELETE FROM draft WHERE name = ?1").with(name).run();
}

CheckedRows VisitRows::check(Table table, std::int64_t after, int count) const
{
    switch (table) {
    case Table::Visits:
        return checkRows(m_database->prepare(selectVisit + "WHERE id > ?1 ORDER BY id LIMIT ?2"), after, count,
                         visitAt);
    case Table::PhotoNotes:
        return checkRows(m_database->prepare(selectPhotoNote + "WHERE use > ?1 ORDER BY use LIMIT ?2"), after, count,
                         [](const Statement& row) { noteAt(row, 0); });
    case Table::Drafts:
        return checkRows(m_database->prepare(selectDraft + "WHERE id > ?1 ORDER BY id LIMIT ?2"), after, count,
                         draftAt);
    }
    return {};
}

} // namespace mend::store
