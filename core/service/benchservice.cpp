#include "core/service/benchservice.h"

#include "core/bench/boardplan.h"

#include <algorithm>

namespace mend::service {

using bench::Event;
using bench::What;

namespace {
/// How long one tap takes an act back.
constexpr Span undoTime = std::chrono::seconds(10);
} // namespace

BenchService::BenchService(const Clock& clock, rules::RuleBook book, BenchRecord record, Keep keep, QObject* parent)
    : QObject(parent), m_clock(clock), m_book(std::move(book)), m_roster(std::move(record.roster)),
      m_events(std::move(record.events)), m_next(record.next), m_keep(std::move(keep))
{
    refold();
}

bench::Hand BenchService::hand() const { return {m_clock.now(), m_fold.atBench}; }

Event BenchService::told(What what) const { return bench::toldNow(what, hand()); }

void BenchService::refold()
{
    m_fold = bench::fold(m_roster, m_events, m_book);
    ++m_timesFolded;
    m_board = boardAt(m_clock.now().utc);
}

bench::Board BenchService::boardAt(Instant now) const
{
    bench::Board board = bench::boardOf(m_fold, m_book, now);
    if (m_plan) {
        bench::layPlan(board, *m_plan);
    }
    return board;
}

void BenchService::usePlan(std::shared_ptr<const bench::StandingPlan> plan)
{
    m_plan = std::move(plan);
    refresh(m_clock.now().utc);
}

void BenchService::refresh(Instant now)
{
    bench::Board board = boardAt(now);
    const Instant before = std::exchange(m_board.at, now);
    const bool same = board == m_board;
    m_board.at = before;
    m_board = std::move(board);
    if (!same) {
        Q_EMIT benchChanged();
    }
}

std::vector<EventId> BenchService::number(std::vector<Event>& events)
{
    std::vector<EventId> ids;
    for (Event& event : events) {
        event.id = m_next;
        m_next = EventId(m_next.value() + 1);
        if (event.what == What::MixStarted) {
            event.mix = MixId(event.id.value()); // a mix is named by the event that began it
        }
        ids.push_back(event.id);
        m_pending.insert(event.id);
        m_events.push_back(event);
    }
    return ids;
}

/// Queued before anybody hears of it, so that what follows from it is written after it.
void BenchService::keep(const std::vector<Event>& events)
{
    if (m_keep && !events.empty()) {
        m_keep(events);
    }
}

std::vector<EventId> BenchService::enter(std::vector<Event>& events)
{
    std::vector<EventId> ids = number(events);
    if (!ids.empty()) {
        refold();
        keep(events);
    }
    return ids;
}

std::vector<EventId> BenchService::tell(std::vector<Event> events)
{
    const std::vector<EventId> ids = enter(events);
    if (ids.empty()) {
        return ids;
    }
    m_undo = UndoOffer{ids, events.front().piece, m_clock.now().utc + undoTime};
    Q_EMIT benchChanged();
    if (events.front().piece.isSet()) {
        Q_EMIT acted(events.front().piece);
    }
    return ids;
}

/// An alert that was shown moves no window and no card, so the board stands as it is.
void BenchService::tellAside(std::vector<Event> events)
{
    number(events);
    if (!bench::addAnswers(m_fold, events)) {
        refold();
    }
    keep(events);
}

std::set<PieceId> BenchService::notStoredYet() const
{
    std::set<PieceId> pieces;
    for (auto event = m_events.rbegin(); event != m_events.rend() && pieces.size() < m_pending.size(); ++event) {
        if (m_pending.contains(event->id)) {
            pieces.insert(event->piece);
        }
    }
    return pieces;
}

void BenchService::stored(const std::vector<EventId>& events)
{
    for (const EventId id : events) {
        m_pending.erase(id);
    }
    Q_EMIT storedChanged();
}

std::optional<UndoOffer> BenchService::undoOffer(Instant now) const
{
    return m_undo && now < m_undo->until ? m_undo : std::nullopt;
}

std::vector<EventId> BenchService::tap(const bench::Tap& tap)
{
    return tell(bench::eventsOf(tap, m_fold, m_book, hand()));
}

MixId BenchService::startMix(const std::string& material, const std::string& batch)
{
    Event event = told(What::MixStarted);
    event.word = material;
    event.note = batch;
    if (batch.empty()) {
        const auto last = std::ranges::max_element(m_fold.mixes, {}, [&](const auto& held) {
            return held.second.material == material ? held.second.mixedAt : Instant::min();
        });
        if (last != m_fold.mixes.end() && last->second.material == material) {
            event.note = last->second.batch;
        }
    }
    return MixId(tell({event}).front().value());
}

void BenchService::endMix(MixId mix, const std::string& how)
{
    Event event = told(What::MixEnded);
    event.mix = mix;
    event.word = how;
    tell({event});
}

void BenchService::read(PlaceId place, Temperature temperature, std::optional<Humidity> humidity)
{
    Event event = told(What::ReadingTaken);
    event.place = place;
    event.temperature = temperature;
    event.humidity = humidity;
    tell({event});
}

void BenchService::answerGap(PlaceId place, Instant from, Instant to, const std::string& how)
{
    Event event = told(What::GapAnswered);
    event.place = place;
    event.from = from;
    event.happened = to;
    event.word = how;
    tell({event});
}

void BenchService::tellNight(PlaceId place, InstantRange night, Temperature lowest, Temperature highest)
{
    Event event = told(What::GapAnswered);
    event.place = place;
    event.from = night.from;
    event.happened = night.to;
    event.word = "between";
    event.temperature = lowest;
    event.amount = highest.centidegrees();
    tell({event});
}

void BenchService::lay(PieceId piece, PlaceId place)
{
    Event event = told(What::Placed);
    event.piece = piece;
    event.place = place;
    tell({event});
}

void BenchService::skip(PieceId piece, const bench::StageInstance& stage, const std::string& reason)
{
    Event event = told(What::Skipped);
    event.piece = piece;
    event.stage = stage;
    event.note = reason;
    tell({event});
}

void BenchService::sendBack(PieceId piece, const bench::StageInstance& stage, const std::string& reason)
{
    Event event = told(What::SentBack);
    event.piece = piece;
    event.stage = stage;
    event.note = reason;
    tell({event});
}

void BenchService::moreToCome(PieceId piece, const bench::StageInstance& stage)
{
    Event event = told(What::MoreToCome);
    event.piece = piece;
    event.stage = stage;
    tell({event});
}

void BenchService::hold(PieceId piece, const std::string& reason)
{
    Event event = told(What::HoldBegun);
    event.piece = piece;
    event.note = reason;
    tell({event});
}

void BenchService::note(PieceId piece, const std::string& text)
{
    Event event = told(What::Noted);
    event.piece = piece;
    event.note = text;
    tell({event});
}

void BenchService::tellState(const std::string& state, bool begins)
{
    Event event = told(begins ? What::StateBegun : What::StateEnded);
    event.word = state;
    if (const rules::BenchState* rule = m_book.state(state); begins && rule && rule->lasts) {
        event.until = event.happened + rule->lasts->value;
    }
    tell({event});
}

void BenchService::answerHazard(PieceId piece, const bench::StageInstance& stage, const rules::Hazard& hazard,
                                const rules::Answer& answer, const std::string& words)
{
    Event event = told(What::Overridden);
    event.piece = piece;
    event.stage = stage;
    event.word = hazard.key + ":" + answer.key;
    event.note = words;
    std::vector<Event> act{event};
    if (!answer.ends.empty()) {
        Event ended = told(What::StateEnded);
        ended.word = answer.ends;
        act.push_back(ended);
    }
    tell(act);
}

void BenchService::answerAlert(const std::string& word, PieceId piece, std::optional<Instant> until)
{
    Event event = told(What::AlertAnswered);
    event.piece = piece;
    event.word = word;
    event.until = until;
    tell({event});
}

void BenchService::comeToBench(PersonId person)
{
    Event event = told(What::PersonCame);
    event.person = person;
    tell({event});
}

void BenchService::goAway(bool away) { tell({told(away ? What::AwayBegun : What::AwayEnded)}); }

void BenchService::stepClock(Span amount)
{
    Event event = told(What::ClockStepped);
    event.amount = amount.count();
    tell({event});
}

std::vector<EventId> BenchService::wouldGoWith(EventId event) const { return bench::builtOn(event, m_events); }

void BenchService::undo(const std::vector<EventId>& events)
{
    std::vector<Event> voids;
    for (const EventId id : events) {
        const auto target = std::ranges::find(m_events, id, &Event::id);
        if (target == m_events.end()) {
            continue;
        }
        Event event = told(What::Voided);
        event.target = id;
        event.piece = target->piece;
        voids.push_back(event);
    }
    tell(voids);
    m_undo.reset(); // there is no redo: tapping again offers the old time first
}

void BenchService::retell(EventId event, Instant happened, PieceId piece)
{
    Event telling = told(What::Retold);
    telling.target = event;
    telling.happened = happened;
    telling.piece = piece;
    tell({telling});
}

bench::Board BenchService::ifRetold(EventId event, Instant happened, PieceId piece) const
{
    std::vector<Event> events = m_events;
    Event telling = told(What::Retold);
    telling.id = m_next;
    telling.target = event;
    telling.happened = happened;
    telling.piece = piece;
    events.push_back(telling);
    return bench::boardOf(bench::fold(m_roster, events, m_book), m_book, m_clock.now().utc);
}

EventId BenchService::reserve()
{
    const EventId id = m_next;
    m_next = EventId(m_next.value() + 1);
    return id;
}

void BenchService::changeRoster(bench::Roster roster, const std::vector<Event>& storedEvents)
{
    m_roster = std::move(roster);
    for (const Event& event : storedEvents) {
        m_events.push_back(event);
        m_next = std::max(m_next, EventId(event.id.value() + 1));
    }
    refold();
    Q_EMIT benchChanged();
}

void BenchService::useRules(rules::RuleBook book)
{
    m_book = std::move(book);
    refold();
    Q_EMIT benchChanged();
}

} // namespace mend::service
