#include "core/store/eventrows.h"

#include "core/store/seal.h"

#include <algorithm>

namespace mend::store {

namespace {

constexpr std::size_t longestKey = 200;
constexpr std::size_t longestNote = 100'000;

/// Columns in the order in which `eventAt` reads and `EventRows::add` writes them.
const std::string selectEvent =
    "SELECT e.id, e.what, e.piece, e.stage, e.repetition, e.person, e.place, e.mix, e.rules, "
    "e.happened, e.recorded, e.boot_id, e.since_boot_ns, e.target, e.temperature_cc, "
    "e.humidity_cp, e.amount, e.from_time, e.until_time, e.word, e.link, n.text "
    "FROM event e LEFT JOIN note n ON n.event = e.id ";
constexpr int linkColumn = 20;
constexpr int noteColumn = 21;

constexpr std::string_view concerningPiece = R"(
    WITH RECURSIVE told (id) AS (
        SELECT id FROM event WHERE piece = ?1
        UNION SELECT e.target FROM told JOIN event e ON e.id = told.id WHERE e.target IS NOT NULL
        UNION SELECT e.id FROM told JOIN event e ON e.target = told.id)
)";

/// CROSS JOIN makes SQLite begin with the few pieces in hand, where it would run through all events.
constexpr std::string_view concerningBench = R"(
    WITH RECURSIVE since (at) AS (VALUES (?1)), told (id) AS (
        SELECT e.id FROM in_hand h CROSS JOIN event e ON e.piece = h.piece
        UNION SELECT m.id FROM in_hand h CROSS JOIN event e ON e.piece = h.piece AND e.mix IS NOT NULL
                                         CROSS JOIN event m ON m.mix = e.mix AND m.piece IS NULL
        UNION SELECT id FROM event WHERE piece IS NULL AND happened >= (SELECT at FROM since)
        UNION SELECT r.id FROM place p JOIN event r
              ON r.id IN (SELECT l.id FROM event l WHERE l.what = 13 AND l.place = p.id AND l.happened < (SELECT at FROM since)
                          ORDER BY l.happened DESC LIMIT 3)
        UNION SELECT id FROM (SELECT id FROM event WHERE what IN (17, 18, 25, 26, 27) AND happened < (SELECT at FROM since)
                              ORDER BY happened DESC LIMIT 100)
        UNION SELECT e.target FROM told JOIN event e ON e.id = told.id WHERE e.target IS NOT NULL
        UNION SELECT e.id FROM told JOIN event e ON e.target = told.id)
)";

Bytes sealOfNote(std::int64_t event, std::string_view text) { return Canon("note").add(event).add(text).seal(); }

template <class IdType> IdType idAt(const Statement& row, int column) { return IdType(row.integer(column)); }

/// A row whose time cannot be read is damage: only this program writes them, and always well formed.
Instant instantAt(const Statement& row, int column)
{
    const auto instant = fromRfc3339(row.text(column));
    if (!instant) {
        throw SqlError(Fault{FaultKind::Damaged, "event " + std::to_string(row.integer(0)) + ": time"});
    }
    return *instant;
}

std::optional<Instant> maybeInstantAt(const Statement& row, int column)
{
    return row.isNull(column) ? std::nullopt : std::optional(instantAt(row, column));
}

bench::Event eventAt(const Statement& row)
{
    bench::Event event;
    event.id = idAt<EventId>(row, 0);
    event.what = static_cast<bench::What>(row.integer(1));
    event.piece = idAt<PieceId>(row, 2);
    event.stage = {row.text(3), static_cast<int>(row.integer(4))};
    event.person = idAt<PersonId>(row, 5);
    event.place = idAt<PlaceId>(row, 6);
    event.mix = idAt<MixId>(row, 7);
    event.rules = row.text(8);
    event.happened = instantAt(row, 9);
    event.recorded = instantAt(row, 10);
    event.boot = {row.text(11), std::chrono::nanoseconds(row.integer(12))};
    event.target = idAt<EventId>(row, 13);
    if (const auto count = row.maybeInteger(14)) {
        event.temperature = Temperature::fromCentidegrees(*count);
    }
    if (const auto count = row.maybeInteger(15)) {
        event.humidity = Humidity::fromCount(*count);
    }
    event.amount = row.maybeInteger(16);
    event.from = maybeInstantAt(row, 17);
    event.until = maybeInstantAt(row, 18);
    event.word = row.text(19);
    event.note = row.text(noteColumn);
    return event;
}

template <class Tag> std::optional<std::int64_t> orNull(Id<Tag> id)
{
    return id.isSet() ? std::optional(id.value()) : std::nullopt;
}

std::optional<std::string> orNull(const std::optional<Instant>& instant)
{
    return instant ? std::optional(toRfc3339(*instant)) : std::nullopt;
}

std::vector<bench::Event> read(Statement& statement)
{
    std::vector<bench::Event> events;
    while (statement.step()) {
        events.push_back(eventAt(statement));
    }
    return events;
}

bool withinYears(const std::optional<Instant>& instant) { return !instant || fromRfc3339(toRfc3339(*instant)); }

} // namespace

std::optional<std::string> whyNotStorable(const bench::Event& event)
{
    if (event.id.value() <= 0 || static_cast<int>(event.what) <= 0) {
        return "an event needs a number and a kind";
    }
    if (!withinYears(event.happened) || !withinYears(event.recorded) || !withinYears(event.from) ||
        !withinYears(event.until)) {
        return "a time outside the years 1900 to 2200";
    }
    // Outside these no room, cabinet or kiln of a bench can be; a sensor that says so is broken.
    if (event.temperature && (event.temperature->celsius() < -100.0 || event.temperature->celsius() > 350.0)) {
        return "a temperature that cannot be";
    }
    if (event.humidity && (event.humidity->count() < 0 || event.humidity->count() > 10'000)) {
        return "a humidity that cannot be";
    }
    if (event.stage.stage.size() > longestKey || event.word.size() > longestKey || event.rules.size() > longestKey ||
        event.boot.bootId.size() > longestKey || event.note.size() > longestNote) {
        return "a text that is too long";
    }
    return std::nullopt;
}

ChainEnd EventRows::end() const
{
    Statement statement = m_database->prepare("SELECT events, last, link FROM chain");
    if (!statement.step()) {
        throw SqlError(Fault{FaultKind::Damaged, "the end of the chain is missing"});
    }
    return {statement.integer(0), EventId(statement.integer(1)), statement.text(2)};
}

void EventRows::add(const bench::Event& event, ChainEnd& end)
{
    const Bytes link = linkOf(end.link, event);
    const std::optional<std::string> rules = event.rules.empty() ? std::nullopt : std::optional(event.rules);
    const auto temperature = event.temperature ? std::optional(event.temperature->centidegrees()) : std::nullopt;
    const auto humidity = event.humidity ? std::optional(event.humidity->count()) : std::nullopt;
    m_database
        ->prepare("INSERT INTO event VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, "
                  "?17, ?18, ?19, ?20, ?21)")
        .with(event.id.value(), static_cast<int>(event.what), orNull(event.piece), event.stage.stage,
              event.stage.repetition, orNull(event.person), orNull(event.place), orNull(event.mix), rules,
              toRfc3339(event.happened), toRfc3339(event.recorded), event.boot.bootId,
              std::int64_t{event.boot.sinceBoot.count()}, orNull(event.target), temperature, humidity, event.amount,
              orNull(event.from), orNull(event.until), event.word, Blob{link})
        .run();
    if (!event.note.empty()) {
        const Bytes seal = sealOfNote(event.id.value(), event.note);
        m_database->prepare("INSERT INTO note VALUES (?1, ?2, ?3)")
            .with(event.id.value(), event.note, Blob{seal})
            .run();
    }
    end = {end.events + 1, event.id, link};
    m_database->prepare("UPDATE chain SET events = ?1, last = ?2, link = ?3")
        .with(end.events, end.last.value(), Blob{end.link})
        .run();
}

std::optional<bench::Event> EventRows::find(EventId id) const
{
    Statement statement = m_database->prepare(selectEvent + "WHERE e.id = ?1");
    statement.with(id.value());
    return statement.step() ? std::optional(eventAt(statement)) : std::nullopt;
}

std::vector<bench::Event> EventRows::all() const
{
    Statement statement = m_database->prepare(selectEvent + "ORDER BY e.id");
    return read(statement);
}

std::vector<bench::Event> EventRows::concerning(PieceId piece) const { return EventsOfPieces(*m_database).of(piece); }

EventsOfPieces::EventsOfPieces(const Database& database)
    : m_statement(database.prepare(std::string(concerningPiece) + selectEvent +
                                   "WHERE e.id IN (SELECT id FROM told) ORDER BY e.id"))
{
}

std::vector<bench::Event> EventsOfPieces::of(PieceId piece)
{
    m_statement.reset();
    m_statement.with(piece.value());
    std::vector<bench::Event> events = read(m_statement);
    m_statement.reset(); // it holds no lock on the file until the next piece
    return events;
}

std::vector<bench::Event> EventRows::mixesOn(PieceId piece) const
{
    Statement statement = m_database->prepare(selectEvent + "WHERE e.mix IN (SELECT mix FROM event WHERE piece = ?1 "
                                                            "AND mix IS NOT NULL) AND e.what = 10 ORDER BY e.id");
    statement.with(piece.value());
    return read(statement);
}

std::vector<bench::Event> EventRows::forBench(Instant since) const
{
    Statement statement = m_database->prepare(std::string(concerningBench) + selectEvent +
                                              "WHERE e.id IN (SELECT id FROM told) ORDER BY e.id");
    statement.with(toRfc3339(since));
    return read(statement);
}

std::optional<Instant> EventRows::oldestInHand() const
{
    // Times are written at one width, so their order as text is that in time.
    Statement row = m_database->prepare("SELECT e.id, min(e.happened) FROM in_hand h CROSS JOIN event e "
                                        "ON e.piece = h.piece");
    return row.step() ? maybeInstantAt(row, 1) : std::nullopt;
}

std::vector<ChainedEvent> EventRows::linksAfter(EventId after, int count) const
{
    Statement statement = m_database->prepare(selectEvent + "WHERE e.id > ?1 ORDER BY e.id LIMIT ?2");
    statement.with(after.value(), count);
    std::vector<ChainedEvent> events;
    while (statement.step()) {
        events.push_back({eventAt(statement), statement.text(linkColumn)});
    }
    return events;
}

CheckedRows EventRows::checkNotes(std::int64_t after, int count) const
{
    const auto check = [](const Statement& row) {
        if (row.text(2) != sealOfNote(row.integer(0), row.text(1))) {
            throw SqlError(Fault{FaultKind::Damaged, "note of event " + std::to_string(row.integer(0))});
        }
    };
    return checkRows(m_database->prepare("SELECT event, text, seal FROM note WHERE event > ?1 ORDER BY event LIMIT ?2"),
                     after, count, check);
}

} // namespace mend::store
