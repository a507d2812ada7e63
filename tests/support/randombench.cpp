#include "tests/support/randombench.h"

#include <algorithm>
#include <array>

namespace mend::test {

using bench::Event;
using bench::What;
using namespace std::chrono_literals;

RandomBench::RandomBench(unsigned seed, const rules::RuleBook& book, int pieces)
    : m_random(seed), m_book(book), m_now(std::chrono::sys_days{std::chrono::year{2026} / 5 / 4} + 8h),
      m_boot(m_now - 1h)
{
    furnish(pieces);
    takeIn();
}

Moment RandomBench::moment() const { return {m_now, {"boot", std::chrono::nanoseconds(m_now - m_boot)}}; }

void RandomBench::furnish(int pieces)
{
    using record::PlaceKind;
    m_roster.places = {{PlaceId(1), "Bench", PlaceKind::Bench, 0},
                       {PlaceId(2), "Shelf", PlaceKind::Shelf, 0},
                       {PlaceId(3), "Cabinet", PlaceKind::Cabinet, 6},
                       {PlaceId(4), "Humid box", PlaceKind::HumidBox, 6},
                       {PlaceId(5), "Tray", PlaceKind::Tray, 1}};
    m_roster.people = {{PersonId(1), "One"}, {PersonId(2), "Other"}};
    m_roster.customers = {{CustomerId(1), "Owner", "555-0100"}};
    for (int id = 1; id <= pieces; ++id) {
        record::Piece piece;
        piece.id = PieceId(id);
        piece.number = "2600" + std::to_string(100 + id);
        piece.benchName = "Piece " + std::to_string(id);
        piece.owner = CustomerId(1);
        const rules::Procedure& procedure = anyOf(m_book.procedures);
        piece.procedure = procedure.key;
        piece.body = static_cast<record::Body>(upTo(2));
        piece.fragments = 2 + upTo(5);
        piece.seam = millimetres(20 + upTo(200));
        piece.chip = millimetres(upTo(40));
        for (const rules::Stage& stage : procedure.stages) {
            if (stage.optional && oneIn(4)) {
                piece.optionalStages.push_back(stage.key);
            }
        }
        m_roster.pieces.push_back(piece);
    }
    for (int day = 0; day < 120; ++day) {
        const Instant morning = m_now + day * 24h;
        m_roster.openHours.push_back({morning, morning + 10h});
    }
}

void RandomBench::takeIn()
{
    std::vector<Event> first;
    for (const record::Place& place : m_roster.places) {
        Event event = reading();
        event.place = place.id;
        first.push_back(event);
    }
    for (const record::Piece& piece : m_roster.pieces) {
        Event event = told(What::Agreed);
        event.piece = piece.id;
        event.place = PlaceId(1);
        event.rules = m_book.procedure(piece.procedure)->hash;
        first.push_back(event);
        if (oneIn(2)) {
            continue;
        }
        // Taken over in mid job: what came before was done elsewhere.
        const auto& stages = m_book.procedure(piece.procedure)->stages;
        const int from = upTo(static_cast<int>(stages.size()) - 1);
        for (int at = 0; at < from; ++at) {
            Event skipped = told(What::Skipped);
            skipped.piece = piece.id;
            skipped.stage.stage = stages[static_cast<std::size_t>(at)].key;
            skipped.note = "done elsewhere";
            first.push_back(skipped);
        }
    }
    number(first);
}

void RandomBench::number(std::vector<Event>& events)
{
    for (Event& event : events) {
        event.id = EventId(static_cast<std::int64_t>(m_events.size()) + 1);
        if (event.what == What::MixStarted) {
            event.mix = MixId(event.id.value());
        }
        m_events.push_back(event);
    }
}

/// Mostly minutes; now and then right on the next instant that matters, or over a night or a week.
void RandomBench::passTime(const bench::BenchFold& bench)
{
    const int kind = upTo(19);
    if (kind < 6) {
        const auto next = bench::nextChange(bench::boardOf(bench, m_book, m_now), m_now);
        if (next && *next - m_now < 10 * 24h) {
            m_now = *next + Span{upTo(1) * upTo(1000)};
            return;
        }
    }
    if (kind < 16) {
        m_now += Span{1 + upTo(15 * 60'000)};
    } else if (kind < 19) {
        m_now += Span{1 + upTo(14 * 3'600'000)};
    } else {
        m_now += 24h * upTo(8) + Span{1};
    }
}

std::vector<Event> RandomBench::step()
{
    const bench::BenchFold bench = fold();
    passTime(bench);
    std::vector<Event> events = oneIn(3) ? aside(bench) : tap(bench);
    if (events.empty()) {
        events = {reading()};
    }
    number(events);
    return events;
}

std::vector<Event> RandomBench::tap(const bench::BenchFold& bench)
{
    const bench::Board now = bench::boardOf(bench, m_book, m_now);
    std::vector<bench::Tap> offered;
    for (const bench::Card& card : now.cards) {
        for (const bench::CardAct& act : card.acts) {
            if (act.kind != bench::ActKind::HandOver || oneIn(8)) {
                bench::Tap tap;
                tap.piece = card.piece;
                tap.act = act;
                offered.push_back(tap);
            }
        }
    }
    if (offered.empty()) {
        return {};
    }
    bench::Tap chosen = anyOf(offered);
    if (oneIn(6)) {
        chosen.happened = m_now - Span{upTo(10 * 60'000)}; // "it went on a few minutes ago"
    }
    return bench::eventsOf(chosen, bench, m_book, {moment(), PersonId(1)});
}

Event RandomBench::reading()
{
    Event event = told(What::ReadingTaken);
    event.place = anyOf(m_roster.places).id;
    event.temperature = Temperature::fromCentidegrees(800 + upTo(3900));
    if (!oneIn(3)) {
        event.humidity = percentHumidity(30 + upTo(65));
    }
    return event;
}

std::vector<Event> RandomBench::mix(const bench::BenchFold& bench)
{
    std::vector<MixId> living;
    for (const auto& [id, mix] : bench.mixes) {
        if (mix.isAlive()) {
            living.push_back(id);
        }
    }
    if (!living.empty() && oneIn(3)) {
        Event ended = told(What::MixEnded);
        ended.mix = anyOf(living);
        ended.word = oneIn(2) ? "stiff" : "usedUp";
        return {ended};
    }
    std::vector<std::string> mixable;
    for (const rules::Material& material : m_book.materials) {
        if (!material.tile.empty()) {
            mixable.push_back(material.key);
        }
    }
    if (mixable.empty()) {
        return {};
    }
    Event started = told(What::MixStarted);
    started.word = anyOf(mixable);
    started.note = "batch " + std::to_string(upTo(9));
    return {started};
}

/// What was told is taken back, or told for another time.
std::vector<Event> RandomBench::takeBack()
{
    const Event target = anyOf(m_events);
    if (target.what == What::Agreed || target.what == What::Voided) {
        return {};
    }
    Event event = told(oneIn(3) ? What::Retold : What::Voided);
    event.target = target.id;
    event.piece = target.piece;
    if (event.what == What::Retold) {
        event.happened = target.happened - Span{upTo(20 * 60'000)};
    }
    return {event};
}

std::vector<Event> RandomBench::ofAPiece(const bench::BenchFold& bench)
{
    if (bench.pieces.empty()) {
        return {};
    }
    const auto held = std::next(bench.pieces.begin(), upTo(static_cast<int>(bench.pieces.size()) - 1));
    const rules::Procedure* procedure = bench::procedureOf(held->second, m_book);
    constexpr std::array kinds{What::Placed,     What::Placed,  What::HoldBegun, What::HoldEnded, What::Noted,
                               What::MoreToCome, What::Skipped, What::SentBack,  What::Lifted};
    Event event = told(kinds[static_cast<std::size_t>(upTo(static_cast<int>(kinds.size()) - 1))]);
    event.piece = held->first;
    if (event.what == What::Placed) {
        event.place = anyOf(m_roster.places).id;
    }
    const bool namesStage =
        event.what == What::Skipped || event.what == What::SentBack || event.what == What::MoreToCome;
    if (namesStage) {
        const auto windows = bench::windowsOf(held->second, bench, m_book, m_now);
        if (windows.empty()) {
            return {};
        }
        event.stage = anyOf(windows).stage;
        if (event.what == What::MoreToCome && procedure->find(event.stage.stage)->repeat == rules::Repeat::Once) {
            return {};
        }
    }
    event.note = "a note";
    return {event};
}

std::vector<Event> RandomBench::aside(const bench::BenchFold& bench)
{
    const int kind = upTo(19);
    if (kind < 6) {
        return {reading()};
    }
    if (kind < 10) {
        return mix(bench);
    }
    if (kind < 14) {
        return ofAPiece(bench);
    }
    if (kind < 16) {
        return takeBack();
    }
    if (kind == 16 && !m_book.states.empty()) {
        Event event = told(oneIn(2) ? What::StateBegun : What::StateEnded);
        event.word = anyOf(m_book.states).key;
        return {event};
    }
    if (kind == 17) {
        Event event = told(What::GapAnswered);
        event.place = anyOf(m_roster.places).id;
        event.from = m_now - Span{upTo(10 * 3'600'000)};
        event.word = oneIn(2) ? "unknown" : oneIn(2) ? "wentOff" : "stayedOn";
        return {event};
    }
    if (kind == 18) {
        Event event = told(What::ClockStepped);
        event.amount = upTo(2) * 60'000 + 3'000;
        m_now += Span{*event.amount};
        m_boot += Span{*event.amount};
        event.happened = event.recorded = m_now;
        return {event};
    }
    return {told(oneIn(2) ? What::AwayBegun : What::AwayEnded)};
}

} // namespace mend::test
