#include "core/service/demomender.h"

#include <algorithm>
#include <map>

namespace mend::service {

using bench::ActKind;
using bench::Event;
using bench::What;
using bench::Window;
using std::chrono::days;
using std::chrono::hours;
using std::chrono::minutes;

namespace {

/// No procedure takes longer from the first look to any stage that the demo stops at.
constexpr days longestWalk{80};
/// More acts than any procedure has; a rule that never ends stops here.
constexpr int mostActs = 200;

} // namespace

InstantRange demoDay(Instant now, Instant at)
{
    const Instant first = now - hours(6);
    const auto day = std::chrono::floor<days>(at - first);
    return {first + day, first + day + hours(10) + minutes(30)};
}

DemoMender::DemoMender(const rules::RuleBook& book, bench::Roster roster, std::vector<Event> air, Moment now)
    : m_book(book), m_roster(std::move(roster)), m_air(std::move(air)), m_now(now)
{
}

Event DemoMender::toldAt(What what, Instant at, PersonId person) const
{
    Event event;
    event.what = what;
    event.happened = event.recorded = at;
    event.person = person;
    event.boot = m_now.boot;
    const auto sinceBoot = m_now.boot.sinceBoot - std::chrono::nanoseconds(m_now.utc - at);
    if (sinceBoot >= std::chrono::nanoseconds{0}) {
        event.boot.sinceBoot = sinceBoot;
    } else { // before this machine was started
        event.boot = {"before", std::chrono::nanoseconds{0}};
    }
    return event;
}

/// One piece as it stands at `at`, with the air that its waits have to do with.
bench::BenchFold DemoMender::foldOf(const std::vector<Event>& told, PieceId piece, Instant at) const
{
    bench::Roster roster = m_roster;
    std::erase_if(roster.pieces, [piece](const record::Piece& each) { return each.id != piece; });
    std::vector<Event> events;
    const Instant from = told.front().happened - days(2);
    std::ranges::copy_if(m_air, std::back_inserter(events),
                         [&](const Event& read) { return read.happened >= from && read.happened <= at; });
    events.insert(events.end(), told.begin(), told.end());
    std::int64_t id = 0;
    for (Event& event : events) {
        event.id = EventId(++id);
    }
    return bench::fold(roster, events, m_book);
}

/// A part of a bench day in which these hands have nothing else to do.
Instant DemoMender::firstFree(Instant from, Span length, PersonId hands) const
{
    for (Instant at = from;;) {
        const InstantRange day = demoDay(m_now.utc, at);
        if (at + length > day.to) {
            at = day.from + days(1);
            continue;
        }
        const auto clash = std::ranges::find_if(m_busy, [&](const auto& busy) {
            return busy.first == hands && busy.second.from < at + length && at < busy.second.to;
        });
        if (clash == m_busy.end()) {
            return at;
        }
        at = clash->second.to;
    }
}

/// In the order of the work, but what would close goes first.
std::optional<Window> DemoMender::nextWindow(const Walk& walk, PieceId piece) const
{
    const bench::BenchFold bench = foldOf(walk.told, piece, walk.at);
    const auto windows = bench::windowsOf(*bench.piece(piece), bench, m_book, walk.at);
    const Window* next = nullptr;
    for (const Window& window : windows) {
        const bool sooner = next && window.closes && (!next->closes || *window.closes < *next->closes);
        if (!window.stalled && (!next || sooner)) {
            next = &window;
        }
    }
    return next ? std::optional(*next) : std::nullopt;
}

void DemoMender::endMixes(Walk& walk, const bench::BenchFold& bench, const std::string& keep, Instant at,
                          PersonId hands) const
{
    for (const auto& [id, mix] : bench.mixes) {
        if (mix.isAlive() && mix.material != keep) {
            Event ended = toldAt(What::MixEnded, at, hands);
            ended.mix = id;
            ended.word = "usedUp";
            walk.told.push_back(ended);
        }
    }
}

void DemoMender::perform(Walk& walk, PieceId piece, const bench::StageInstance& at, InstantRange when, PersonId hands,
                         bool keepsMix)
{
    bench::BenchFold bench = foldOf(walk.told, piece, when.to);
    const rules::Procedure& procedure = *bench::procedureOf(*bench.piece(piece), m_book);
    const rules::Stage& stage = *procedure.find(at.stage);
    bench::Tap tap;
    tap.piece = piece;
    tap.act.stage = at;
    if (!stage.mix.empty() && bench::mixesFor(stage, bench, m_book, when.from).empty()) {
        Event mixed = toldAt(What::MixStarted, when.from, hands);
        mixed.mix = newMix();
        mixed.word = stage.mix;
        mixed.note = "batch 7";
        walk.told.push_back(mixed);
        bench = foldOf(walk.told, piece, when.to);
    }
    for (const auto& [kind, instant] : {std::pair(ActKind::Begin, when.from), std::pair(ActKind::Finish, when.to)}) {
        tap.act.kind = kind;
        tap.happened = instant;
        const Event told = toldAt(What::Noted, instant, hands);
        for (const Event& event : bench::eventsOf(tap, bench, m_book, {{instant, told.boot}, hands})) {
            walk.told.push_back(event);
        }
        bench = foldOf(walk.told, piece, when.to);
    }
    endMixes(walk, bench, keepsMix ? stage.mix : std::string(), when.to, hands);
    for (const rules::Leaves& left : stage.leaves) {
        if (left.state == "oilyRags" || left.state == "baseMetalOut") {
            Event tidied = toldAt(What::StateEnded, when.to + minutes(2), hands);
            tidied.piece = piece;
            tidied.word = left.state;
            walk.told.push_back(tidied);
        }
    }
    walk.at = when.to;
}

std::optional<DemoMender::Walk> DemoMender::walk(PieceId piece, const std::string& stage, Instant from, PersonId hands)
{
    Walk walk{{}, from};
    Event agreed = toldAt(What::Agreed, from, hands);
    agreed.piece = piece;
    agreed.rules = m_book.procedure(m_roster.piece(piece)->procedure)->hash;
    agreed.place = m_roster.firstOfKind(record::PlaceKind::Bench)->id;
    walk.told.push_back(agreed);
    for (int act = 0; act < mostActs; ++act) {
        auto window = nextWindow(walk, piece);
        if (!window) {
            return std::nullopt;
        }
        if (window->stage.stage == stage) {
            return walk;
        }
        // Air that is read in between can move an opening: it is asked again at the time itself.
        Instant begin = firstFree(std::max(walk.at, *window->opens), window->handsOn, hands);
        for (;;) {
            Walk later = walk;
            later.at = begin;
            const auto then = nextWindow(later, piece);
            if (!then || then->stage != window->stage || !then->opens || *then->opens <= begin) {
                break;
            }
            begin = firstFree(*then->opens, window->handsOn, hands);
        }
        // A mix that several stages share lives until a stage that does not name it.
        const rules::Procedure& procedure = *m_book.procedure(m_roster.piece(piece)->procedure);
        const rules::Stage* next = procedure.find(window->stage.stage);
        perform(walk, piece, window->stage, {begin, begin + window->handsOn}, hands, !next->mix.empty());
        if (const auto after = nextWindow(walk, piece)) {
            const rules::Stage* following = procedure.find(after->stage.stage);
            endMixes(walk, foldOf(walk.told, piece, walk.at), following->mix, walk.at, hands);
        }
    }
    return std::nullopt;
}

std::optional<Instant> DemoMender::workUpTo(PieceId piece, const std::string& stage, Instant end, PersonId hands)
{
    const Instant earliest = demoDay(m_now.utc, end - longestWalk).from;
    const auto tried = walk(piece, stage, earliest, hands);
    if (!tried) {
        return std::nullopt;
    }
    for (auto later = std::chrono::floor<days>(end - tried->at); later >= days{0}; later -= days(1)) {
        const auto fits = walk(piece, stage, earliest + later, hands);
        if (!fits || fits->at > end) {
            continue;
        }
        for (std::size_t i = 0; i + 1 < fits->told.size(); ++i) {
            if (fits->told[i].what == What::Begun && fits->told[i + 1].what == What::Done) {
                m_busy.emplace_back(hands, InstantRange{fits->told[i].happened, fits->told[i + 1].happened});
            }
        }
        m_told.insert(m_told.end(), fits->told.begin(), fits->told.end());
        return fits->at;
    }
    return std::nullopt;
}

std::vector<Event> DemoMender::toldOf(PieceId piece) const
{
    std::vector<Event> own;
    std::set<MixId> mixes;
    for (const Event& event : m_told) {
        if (event.piece == piece && event.mix.isSet()) {
            mixes.insert(event.mix);
        }
    }
    std::ranges::copy_if(m_told, std::back_inserter(own), [&](const Event& event) {
        return event.piece == piece || (event.mix.isSet() && mixes.contains(event.mix));
    });
    return own;
}

void DemoMender::work(PieceId piece, const std::string& stage, InstantRange when, PersonId hands, bool keepsMix)
{
    const auto window = windowOf(piece, stage, when.from);
    if (!window) {
        return;
    }
    Walk walk{toldOf(piece), when.from};
    const std::size_t before = walk.told.size();
    perform(walk, piece, window->stage, when, hands, keepsMix);
    m_told.insert(m_told.end(), walk.told.begin() + static_cast<std::ptrdiff_t>(before), walk.told.end());
}

void DemoMender::forgetSince(PieceId piece, Instant since)
{
    std::set<MixId> mixes;
    for (const Event& event : m_told) {
        if (event.piece == piece && event.mix.isSet() && event.happened >= since) {
            mixes.insert(event.mix);
        }
    }
    std::erase_if(m_told, [&](const Event& event) {
        return event.happened >= since && (event.piece == piece || (event.mix.isSet() && mixes.contains(event.mix)));
    });
}

void DemoMender::tell(Event event) { m_told.push_back(std::move(event)); }

Span DemoMender::handsOn(PieceId piece, const std::string& stage) const
{
    const bench::BenchFold bench = foldOf(toldOf(piece), piece, m_now.utc);
    const bench::PieceState& state = *bench.piece(piece);
    return bench::handsOn(*bench::procedureOf(state, m_book)->find(stage), state, m_book);
}

std::optional<Window> DemoMender::windowOf(PieceId piece, const std::string& stage, Instant at) const
{
    const bench::BenchFold bench = foldOf(toldOf(piece), piece, at);
    for (Window& window : bench::windowsOf(*bench.piece(piece), bench, m_book, at)) {
        if (window.stage.stage == stage) {
            return std::move(window);
        }
    }
    return std::nullopt;
}

std::vector<Event> DemoMender::events() const
{
    std::vector<Event> all = m_air;
    all.insert(all.end(), m_told.begin(), m_told.end());
    std::ranges::stable_sort(all, {}, &Event::happened);
    std::map<MixId, MixId> names;
    std::int64_t id = 0;
    for (Event& event : all) {
        event.id = EventId(++id);
        if (event.what == What::MixStarted) {
            names[event.mix] = MixId(id); // a mix is named by the event that began it
        }
    }
    for (Event& event : all) {
        if (event.mix.isSet()) {
            event.mix = names.at(event.mix);
        }
    }
    return all;
}

} // namespace mend::service
