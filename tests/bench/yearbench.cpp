#include "tests/bench/yearbench.h"

#include "core/bench/chain.h"

#include <algorithm>

namespace mend::bench::test {

using std::chrono::hours;

WindowRun runOfWindow(const Window& window)
{
    std::optional<EventId> closing;
    EventId opening;
    for (const Reckoning& reckoning : window.why) {
        if (reckoning.closing) {
            closing = closing ? std::min(*closing, reckoning.event) : reckoning.event;
        } else {
            opening = std::max(opening, reckoning.event);
        }
    }
    const EventId run = closing.value_or(opening);
    return {window.piece, window.stage, run};
}

YearBench::YearBench(const rules::RuleBook& book) : m_book(book)
{
    using record::PlaceKind;
    m_bench.roster.places = {
        {benchPlace, "Bench", PlaceKind::Bench, 0},  {shelf, "Shelf", PlaceKind::Shelf, 0},
        {cabinet, "Cabinet", PlaceKind::Cabinet, 0}, {humidBox, "Humid box", PlaceKind::HumidBox, 0},
        {tray, "Tray", PlaceKind::Tray, 0},          {outside, "Outside", PlaceKind::Outside, 0}};
    m_bench.roster.people = {{PersonId(1), "Mender"}};
}

PlaceId YearBench::placeOf(const rules::Stage& stage) const
{
    const auto kind = stage.places.empty() ? std::nullopt : record::placeKindFromKey(stage.places.front());
    const record::Place* place = kind ? m_bench.roster.firstOfKind(*kind) : nullptr;
    return place ? place->id : benchPlace;
}

PieceId YearBench::receive(const std::string& procedure, Instant now, YearDice& dice)
{
    record::Piece piece;
    piece.id = PieceId(++m_lastPiece);
    piece.number = std::to_string(m_lastPiece);
    piece.benchName = "Piece " + piece.number;
    piece.procedure = procedure;
    piece.body = dice.chance(0.5) ? record::Body::Porous : record::Body::Vitrified;
    piece.fragments = 2 + static_cast<int>(dice.below(8));
    piece.seam = centimetres(5 + 25 * dice.share());
    piece.chip = centimetres(6 * dice.share());
    m_bench.roster.pieces.push_back(piece);
    Event agreed;
    agreed.what = What::Agreed;
    agreed.piece = piece.id;
    agreed.place = benchPlace;
    agreed.rules = m_book.procedure(procedure)->hash;
    tell(agreed, now);
    return piece.id;
}

EventId YearBench::tell(Event event, Instant now)
{
    event.id = EventId(++m_lastEvent);
    event.person = PersonId(1);
    if (event.happened == Instant{}) {
        event.happened = now;
    }
    event.recorded = now;
    event.boot = {"boot " + std::to_string(m_boots), {}};
    if (event.what == What::AlertAnswered) {
        m_answers[event.piece].push_back(event);
        answer(event);
        m_answersChanged = true;
    } else if (event.piece.isSet()) {
        m_told[event.piece].push_back(event);
        m_changed.insert(event.piece);
    } else {
        m_shared.push_back(event);
        m_airChanged = true;
        m_stepped = m_stepped || event.what == What::ClockStepped;
    }
    return event.id;
}

/// The newest answer to each key stands, as in the fold.
void YearBench::answer(const Event& event)
{
    const auto bar = event.word.rfind('|');
    AlertAnswer answer{event.word.substr(0, bar), event.word.substr(bar + 1), event.happened, event.until,
                       event.person};
    const auto held = std::ranges::find(m_bench.answers, answer.key, &AlertAnswer::key);
    if (held == m_bench.answers.end()) {
        m_bench.answers.push_back(std::move(answer));
    } else {
        *held = std::move(answer);
    }
}

void YearBench::handOver(PieceId piece)
{
    m_told.erase(piece);
    m_answers.erase(piece);
    m_windowsOf.erase(piece);
    m_changed.erase(piece);
    m_bench.pieces.erase(piece);
    std::erase_if(m_bench.roster.pieces, [&](const record::Piece& each) { return each.id == piece; });
    const std::string prefix = std::to_string(piece.value()) + '/';
    std::erase_if(m_bench.answers, [&](const AlertAnswer& each) { return each.key.starts_with(prefix); });
    forgetOldReadings();
    m_answersChanged = true;
}

/// What was told before the oldest piece came in moves nothing any more.
void YearBench::forgetOldReadings()
{
    Instant oldest = Instant::max();
    for (const auto& [id, told] : m_told) {
        oldest = std::min(oldest, told.front().happened);
    }
    std::erase_if(m_shared, [&](const Event& event) { return event.happened < oldest - hours(48); });
    m_airChanged = true;
}

void YearBench::foldShared()
{
    Roster roster;
    roster.places = m_bench.roster.places;
    BenchFold shared = fold(roster, m_shared, m_book);
    m_bench.air = std::move(shared.air);
    m_bench.mixes = std::move(shared.mixes);
}

void YearBench::foldPiece(PieceId piece)
{
    Roster roster;
    roster.places = m_bench.roster.places;
    roster.pieces = {*m_bench.roster.piece(piece)};
    std::vector<Event> events = m_told[piece];
    std::ranges::copy_if(m_shared, std::back_inserter(events),
                         [](const Event& event) { return event.what == What::ClockStepped; });
    BenchFold folded = fold(roster, events, m_book);
    m_bench.pieces.insert_or_assign(piece, std::move(folded.pieces.at(piece)));
}

std::vector<Event> YearBench::everything() const
{
    std::vector<Event> all = m_shared;
    for (const auto* each : {&m_told, &m_answers}) {
        for (const auto& [piece, events] : *each) {
            all.insert(all.end(), events.begin(), events.end());
        }
    }
    return all;
}

bool YearBench::isSameAfterRestart()
{
    BenchFold folded = fold(m_bench.roster, everything(), m_book);
    std::ranges::sort(folded.answers, {}, &AlertAnswer::key);
    std::ranges::sort(m_bench.answers, {}, &AlertAnswer::key);
    return folded.pieces == m_bench.pieces && folded.answers == m_bench.answers && folded.air == m_bench.air;
}

void YearBench::refresh(Instant now)
{
    const bool closed = m_nextClose && now >= *m_nextClose;
    if (m_changed.empty() && !m_airChanged && !m_answersChanged && !closed) {
        return;
    }
    if (m_stepped) { // everything told is moved
        m_bench.answers = fold(m_bench.roster, everything(), m_book).answers;
        for (const auto& [piece, told] : m_told) {
            m_changed.insert(piece);
        }
    }
    if (m_airChanged) {
        foldShared();
    }
    for (const PieceId piece : m_changed) {
        foldPiece(piece);
    }
    const bool windowsChanged = m_airChanged || !m_changed.empty() || closed;
    for (const auto& [id, piece] : m_bench.pieces) {
        if (m_airChanged || m_changed.contains(id)) {
            m_windowsOf[id] = windowsOf(piece, m_bench, m_book, now);
        }
    }
    if (windowsChanged) {
        m_windows.clear();
        m_nextClose.reset();
        for (const auto& [id, windows] : m_windowsOf) {
            m_windows.insert(m_windows.end(), windows.begin(), windows.end());
        }
        chainThroughOnePairOfHands(m_windows, now);
        for (const Window& window : m_windows) {
            if (window.closes && *window.closes > now && (!m_nextClose || *window.closes < *m_nextClose)) {
                m_nextClose = window.closes;
            }
        }
    }
    m_alerts = alertsFor(m_bench, m_windows, m_book, now);
    m_changed.clear();
    m_airChanged = m_answersChanged = m_stepped = false;
}

const rules::Stage* YearBench::stageOf(const Window& window) const
{
    const PieceState* piece = m_bench.piece(window.piece);
    const rules::Procedure* procedure = piece ? procedureOf(*piece, m_book) : nullptr;
    return procedure ? procedure->find(window.stage.stage) : nullptr;
}

} // namespace mend::bench::test
