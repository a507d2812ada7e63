#include "core/store/check.h"

#include "core/store/findrows.h"
#include "core/store/inhand.h"
#include "core/store/photorows.h"
#include "core/store/recordrows.h"
#include "core/store/seal.h"
#include "core/store/visitrows.h"

namespace mend::store {

namespace {

constexpr int rowsAtOnce = 300; ///< some milliseconds of work, well under a slice
constexpr std::size_t mostFindings = 100;

} // namespace

Check::Check(const Database& database, Depth depth) : m_database(database)
{
    using Part = Finding::Part;
    if (depth == Depth::Whole) {
        add(Part::Structure, [this] { return checkStructure("PRAGMA integrity_check(20)", Part::Structure), true; });
    }
    add(Part::Chain, [this] {
        m_chain.link = firstLink(WordRows(m_database).meta("fileId").value_or(""));
        return true;
    });
    add(Part::Chain, [this] { return checkLinks(); });
    using Table = RecordRows::Table;
    for (const Table table : {Table::Pieces, Table::Customers, Table::Places, Table::People}) {
        addRows(Part::Rows,
                [this, table](std::int64_t after) { return RecordRows(m_database).check(table, after, rowsAtOnce); });
    }
    using Door = VisitRows::Table;
    for (const Door table : {Door::Visits, Door::PhotoNotes, Door::Drafts}) {
        addRows(Part::Rows,
                [this, table](std::int64_t after) { return VisitRows(m_database).check(table, after, rowsAtOnce); });
    }
    addRows(Part::Rows, [this](std::int64_t after) {
        Prepared ready(m_database);
        return FindRows(ready).check(after, rowsAtOnce);
    });
    addRows(Part::Rows, [this](std::int64_t after) { return EventRows(m_database).checkNotes(after, rowsAtOnce); });
    addRows(Part::Photos, [this](std::int64_t after) { return PhotoRows(m_database).checkUses(after, rowsAtOnce); });
    add(Part::Rows, [this] { return WordRows(m_database).checkMeta(), true; });
    add(Part::Rows, [this] { return WordRows(m_database).settings(), true; });
    add(Part::Rows, [this] { return WordRows(m_database).allRules(), true; });
    add(Part::House, [this] { return checkHouse(); });
    if (depth == Depth::Whole) {
        add(Part::Links, [this] { return checkStructure("PRAGMA foreign_key_check", Part::Links), true; });
        add(Part::Photos, [this] { return checkOnePhoto(); });
    }
}

bool Check::slice(std::chrono::steady_clock::time_point until)
{
    while (m_at < m_steps.size() && m_report.findings.size() < mostFindings) {
        auto& [part, step] = m_steps[m_at];
        bool over = true;
        try {
            over = step();
        } catch (const SqlError& error) {
            if (error.fault().kind == FaultKind::Busy) {
                return false; // another program has the file: later
            }
            find(error.fault().kind == FaultKind::Damaged ? part : Finding::Part::Structure, error.fault().detail);
        }
        m_at += over ? 1 : 0;
        if (std::chrono::steady_clock::now() >= until) {
            break;
        }
    }
    return m_at >= m_steps.size() || m_report.findings.size() >= mostFindings;
}

void Check::find(Finding::Part part, std::string detail) { m_report.findings.push_back({part, std::move(detail)}); }

void Check::addRows(Finding::Part part, std::function<CheckedRows(std::int64_t)> look)
{
    add(part, [this, part, look = std::move(look), after = std::int64_t{0}]() mutable {
        CheckedRows checked = look(after);
        after = checked.last;
        m_report.rows += checked.rows;
        for (std::string& broken : checked.broken) {
            find(part, std::move(broken));
        }
        return checked.rows == 0;
    });
}

bool Check::checkLinks()
{
    const EventRows rows(m_database);
    const auto events = rows.linksAfter(m_chain.last, rowsAtOnce);
    for (const ChainedEvent& chained : events) {
        if (chained.link != linkOf(m_chain.link, chained.event)) {
            find(Finding::Part::Chain, "event " + std::to_string(chained.event.id.value()));
        }
        m_chain = {m_chain.events + 1, chained.event.id, chained.link};
    }
    m_report.events = m_chain.events;
    if (events.empty() && rows.end() != m_chain) {
        find(Finding::Part::Chain, "its end: events were cut off");
    }
    return events.empty();
}

bool Check::checkHouse()
{
    Statement pieces = m_database.prepare("SELECT p.id, h.piece IS NOT NULL FROM piece p LEFT JOIN in_hand h "
                                          "ON h.piece = p.id WHERE p.id > ?1 ORDER BY p.id LIMIT 50");
    pieces.with(m_piece);
    if (!m_ofPieces) {
        m_ofPieces.emplace(m_database);
    }
    bool any = false;
    while (pieces.step()) {
        any = true;
        m_piece = pieces.integer(0);
        const PieceId piece(m_piece);
        if (isInHand(m_ofPieces->of(piece), piece) != (pieces.integer(1) != 0)) {
            find(Finding::Part::House, "piece " + std::to_string(m_piece));
        }
    }
    return !any;
}

bool Check::checkOnePhoto()
{
    const PhotoRows rows(m_database);
    const std::string next = rows.hashAfter(m_photo);
    if (next.empty()) {
        return true;
    }
    m_photo = next;
    ++m_report.photos;
    if (!rows.thumbnail(next) || !rows.bytes(next)) {
        find(Finding::Part::Photos, "picture " + next + " is missing");
    }
    return false;
}

void Check::checkStructure(const char* sql, Finding::Part part)
{
    Statement rows = m_database.prepare(sql);
    while (rows.step()) {
        if (rows.text(0) != "ok") {
            find(part, rows.text(0));
        }
    }
}

CheckReport checkWhole(const Store& store)
{
    Check check(store.database(), Check::Depth::Whole);
    while (!check.slice(std::chrono::steady_clock::time_point::max())) {}
    return check.report();
}

bool RecordCheck::slice(Store& store, std::chrono::steady_clock::time_point until)
{
    if (!m_check) {
        m_check.emplace(store.database(), Check::Depth::Record);
    }
    const bool over = m_check->slice(until);
    if (over && m_done) {
        m_done(m_check->report());
    }
    return over;
}

} // namespace mend::store
