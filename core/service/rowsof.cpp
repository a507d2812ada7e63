#include "core/service/rowsof.h"

#include "core/exchange/eventfields.h"
#include "core/store/bulk.h"

#include <algorithm>

namespace mend::service {

using exchange::FileRow;
using record::Sheet;

namespace {

Sheet pairOf(const char* firstName, const std::string& first, const char* secondName, const std::string& second)
{
    Sheet sheet;
    sheet.members.emplace_back(firstName, Sheet::ofText(first));
    sheet.members.emplace_back(secondName, Sheet::ofText(second));
    return sheet;
}

Sheet sheetOf(const store::NotedPhoto& photo)
{
    Sheet sheet = pairOf("photo", photo.use.photo, "purpose", photo.use.purpose);
    sheet.members.emplace_back("piece", Sheet::ofNumber(photo.use.piece.value()));
    if (photo.use.event.isSet()) {
        sheet.members.emplace_back("event", Sheet::ofNumber(photo.use.event.value()));
    }
    if (photo.note != record::PhotoNote{}) {
        sheet.members.emplace_back("note", record::sheetOf(photo.note));
    }
    return sheet;
}

/// Gives each row of a list on, or keeps the first fault.
class Giving {
public:
    explicit Giving(const TakeRow& take) : m_take(take) {}

    template <class T, class Shape> void all(const char* kind, const Result<T>& rows, Shape shape)
    {
        if (!rows) {
            m_fault = m_fault ? m_fault : std::optional(rows.fault());
            return;
        }
        for (const auto& row : rows.value()) {
            m_take({kind, shape(row)});
        }
    }
    template <class T> void all(const char* kind, const Result<T>& rows)
    {
        all(kind, rows, [](const auto& row) { return record::sheetOf(row); });
    }
    void photosOf(const store::Store& store, const std::vector<record::Piece>& pieces)
    {
        for (const record::Piece& piece : pieces) {
            all("photo", store.notedPhotosOf(piece.id), [](const auto& photo) { return sheetOf(photo); });
        }
    }
    Outcome outcome() const { return m_fault ? Outcome(*m_fault) : Outcome(Done{}); }

private:
    const TakeRow& m_take;
    std::optional<Fault> m_fault;
};

template <class T> std::optional<T> readRow(const FileRow& row, std::string& wrong)
{
    std::vector<std::string> faults;
    auto read = record::fromSheet<T>(row.parts, &faults);
    if (!read) {
        wrong = row.kind + "/" + faults.front();
    }
    return read;
}

std::string textIn(const Sheet& sheet, const char* name)
{
    const Sheet* const member = sheet.member(name);
    return member && member->kind == Sheet::Kind::Text ? member->text : std::string();
}

std::int64_t numberIn(const Sheet& sheet, const char* name)
{
    const Sheet* const member = sheet.member(name);
    return member && member->kind == Sheet::Kind::Number ? member->number : 0;
}

Outcome bad(const std::string& what) { return Fault{FaultKind::BadInput, what}; }

/// Whether a text is the hash of a picture and nothing that could be a path (F38).
bool isHash(const std::string& text)
{
    return text.size() == 64 && text.find_first_not_of("0123456789abcdef") == std::string::npos;
}

} // namespace

const std::vector<TableRule>& tableRules()
{
    static const std::vector<TableRule> rules{
        {"meta", "", false, "which file it is, not what it holds"},
        {"setting", "setting", false, ""},
        {"customer", "customer", true, ""},
        {"place", "place", false, ""},
        {"person", "person", false, "who works here: another person"},
        {"piece", "piece", true, ""},
        {"rule_revision", "rules", false, ""},
        {"event", "event", true, ""},
        {"chain", "", false, "follows from the events"},
        {"note", "event", true, ""},
        {"in_hand", "", false, "follows from the events"},
        {"photo", "photo", true, ""},
        {"photo_bytes", "photo", true, ""},
        {"photo_use", "photo", true, ""},
        {"visit", "visit", true, ""},
        {"photo_note", "photo", true, ""},
        {"draft", "draft", true, ""},
        {"find_entry", "", false, "follows from the rows"},
        {"find_word", "", false, "follows from the rows"},
        {"find_post", "", false, "follows from the rows"},
        {"find_near", "", false, "follows from the rows"},
        {"find_phone", "", false, "follows from the rows"},
    };
    return rules;
}

Outcome rowsOf(const store::Store& store, const TakeRow& take)
{
    Giving give(take);
    give.all("setting", store.settings(),
             [](const auto& each) { return pairOf("key", each.first, "value", each.second); });
    give.all("rules", store.allRules(), [](const auto& each) { return pairOf("hash", each.hash, "text", each.text); });
    give.all("person", store.people());
    give.all("place", store.places());
    give.all("customer", store.customers());
    const auto pieces = store.pieces();
    give.all("piece", pieces);
    give.all("visit", store.visits());
    give.all("event", store.allEvents());
    if (pieces) {
        give.photosOf(store, pieces.value());
    }
    give.all("draft", store.drafts(), [](const store::Draft& draft) {
        Sheet sheet = pairOf("name", draft.name, "sheet", draft.sheet);
        sheet.members.emplace_back("saved", Sheet::ofText(toRfc3339(draft.saved)));
        return sheet;
    });
    return give.outcome();
}

Outcome rowsOfPerson(const store::Store& store, CustomerId id, const TakeRow& take)
{
    const auto person = store.customer(id);
    const auto pieces = store.piecesOf(id);
    if (!person || !pieces) {
        return person ? pieces.fault() : person.fault();
    }
    if (!person.value()) {
        return Fault{FaultKind::NotFound, "nobody of that number"};
    }
    Giving give(take);
    give.all("customer", Result<std::vector<record::Customer>>({*person.value()}));
    give.all("piece", pieces);
    for (const record::Piece& piece : pieces.value()) {
        give.all("visit", store.visitsOf(piece.id));
        give.all("event", store.eventsOf(piece.id));
    }
    give.photosOf(store, pieces.value());
    if (const auto drafts = store.drafts()) {
        for (const store::Draft& draft : drafts.value()) {
            const auto sheet = record::sheetFromText(draft.sheet);
            const auto page = sheet ? record::fromSheet<record::Intake>(*sheet) : std::nullopt;
            if (page && page->owner.id == id) {
                take({"draft", pairOf("name", draft.name, "sheet", draft.sheet)});
            }
        }
    }
    return give.outcome();
}

Outcome RowsInto::takeWords(const FileRow& row)
{
    if (row.kind == "setting") {
        return m_bulk.setSetting(textIn(row.parts, "key"), textIn(row.parts, "value"));
    }
    if (row.kind == "rules") {
        return m_bulk.putRules({textIn(row.parts, "hash"), textIn(row.parts, "text")});
    }
    const auto saved = fromRfc3339(textIn(row.parts, "saved"));
    return saved ? m_bulk.put(store::Draft{textIn(row.parts, "name"), textIn(row.parts, "sheet"), *saved})
                 : bad("draft/saved is no time in UTC");
}

Outcome RowsInto::takePhoto(const FileRow& row)
{
    store::NotedPhoto photo;
    photo.use = {textIn(row.parts, "photo"), PieceId(numberIn(row.parts, "piece")),
                 EventId(numberIn(row.parts, "event")), textIn(row.parts, "purpose")};
    if (!isHash(photo.use.photo)) {
        return bad("photo/photo is no hash");
    }
    if (const Sheet* const note = row.parts.member("note")) {
        std::vector<std::string> faults;
        const auto read = record::fromSheet<record::PhotoNote>(*note, &faults);
        if (!read) {
            return bad("photo/note/" + faults.front());
        }
        photo.note = *read;
    }
    m_photos.push_back(std::move(photo));
    return Done{};
}

Outcome RowsInto::take(const FileRow& row)
{
    ++m_rows;
    std::string wrong;
    const auto put = [&](const auto& read) { return read ? m_bulk.put(*read) : bad(wrong); };
    if (row.kind == "customer") {
        return put(readRow<record::Customer>(row, wrong));
    }
    if (row.kind == "piece") {
        return put(readRow<record::Piece>(row, wrong));
    }
    if (row.kind == "visit") {
        return put(readRow<record::Visit>(row, wrong));
    }
    if (row.kind == "place") {
        return put(readRow<record::Place>(row, wrong));
    }
    if (row.kind == "person") {
        return put(readRow<record::Person>(row, wrong));
    }
    if (row.kind == "event") {
        auto event = readRow<bench::Event>(row, wrong);
        if (!event) {
            return bad(wrong);
        }
        m_events.push_back(std::move(*event));
        return Done{};
    }
    if (row.kind == "photo") {
        return takePhoto(row);
    }
    const bool isWords = row.kind == "setting" || row.kind == "rules" || row.kind == "draft";
    return isWords ? takeWords(row) : bad("\"" + row.kind + "\" is not known here");
}

Outcome RowsInto::finish()
{
    if (const Outcome told = m_bulk.append(m_events); !told) {
        return told;
    }
    for (const store::NotedPhoto& photo : m_photos) {
        const std::string& hash = photo.use.photo;
        if (!m_held.contains(hash)) {
            const auto bytes = m_picture(hash, false);
            if (!bytes) {
                m_missing.push_back(hash);
                continue;
            }
            if (const Outcome kept = m_bulk.putPhoto(hash, *bytes, m_picture(hash, true).value_or("")); !kept) {
                return kept;
            }
            m_held.insert(hash);
        }
        if (const Outcome used = m_bulk.use(photo); !used) {
            return used;
        }
    }
    return Done{};
}

} // namespace mend::service
