#include "core/bench/counter.h"

#include "core/bench/handover.h"

#include <algorithm>

namespace mend::bench {

namespace {

class Counter {
public:
    Counter(const rules::RuleBook& book, Instant now, const DayOf& dayOf)
        : m_book(book), m_now(now), m_dayOf(dayOf), m_today(dayOf(now))
    {
    }

    void look(const PieceState& piece, const VisitFacts& visit)
    {
        if (!piece.receivedAt) {
            return;
        }
        const bool isReady = progressOf(piece, m_book, m_now) == PieceProgress::Ready;
        if (isReady) {
            const CivilDay since = m_dayOf(handOverFrom(piece, m_book)->at);
            add(m_facts.mayBeCollected, piece, since);
            if (daysBetween(since, m_today) >= unclaimedAfterDays) {
                add(m_facts.unclaimed, piece, since);
            }
        }
        if (piece.waitingForOwner || !piece.agreed) {
            add(m_facts.waitsForOwner, piece, m_dayOf(*piece.receivedAt));
        }
        if (const auto promise = visit.promise(); promise && !isReady) {
            if (promise->day < m_today) {
                add(m_facts.late, piece, promise->day);
            }
            if (judgePromise(promise->day, piece, m_book, m_now, m_dayOf).daysTooEarly > 0 &&
                !knowsOf(visit, *promise)) {
                add(m_facts.toCall, piece, promise->day);
            }
        }
    }

    CounterFacts facts()
    {
        for (auto* list :
             {&m_facts.mayBeCollected, &m_facts.late, &m_facts.waitsForOwner, &m_facts.toCall, &m_facts.unclaimed}) {
            std::ranges::sort(*list, {}, [](const CounterLine& line) { return std::pair(line.day, line.piece); });
        }
        return std::move(m_facts);
    }

private:
    void add(std::vector<CounterLine>& list, const PieceState& piece, CivilDay day) const
    {
        list.push_back(
            {piece.piece.id, piece.piece.number, piece.piece.benchName, day, std::max(0, daysBetween(day, m_today))});
    }

    /// The owner was spoken to since that day was promised.
    static bool knowsOf(const VisitFacts& visit, const Promise& promise)
    {
        return std::ranges::any_of(visit.ownerWords,
                                   [&](const OwnerWord& word) { return word.at >= promise.toldAt && !word.isNotice; });
    }

    const rules::RuleBook& m_book;
    Instant m_now;
    const DayOf& m_dayOf;
    CivilDay m_today;
    CounterFacts m_facts;
};

} // namespace

CounterFacts counterOf(const BenchFold& bench, std::span<const Event> events, const rules::RuleBook& book, Instant now,
                       const DayOf& dayOf)
{
    const std::vector<Event> standing = effective(events);
    Counter counter(book, now, dayOf);
    std::map<PieceId, std::vector<Event>> told;
    for (const Event& event : standing) {
        if (event.piece.isSet()) {
            told[event.piece].push_back(event);
        }
    }
    for (const auto& [id, piece] : bench.pieces) {
        counter.look(piece, dossierOf(id, told[id], book).now());
    }
    return counter.facts();
}

CivilDay collectableDay(Instant at, const DayOf& dayOf)
{
    const CivilDay day = dayOf(at);
    return dayOf(at - Span{1}) == day ? plusDays(day, 1) : day;
}

PromiseJudgement judgePromise(CivilDay promised, const PieceState& piece, const rules::RuleBook& book, Instant now,
                              const DayOf& dayOf)
{
    PromiseJudgement judgement;
    if (const auto from = earliestHandOver(piece, book, now)) {
        judgement.earliest = collectableDay(from->at, dayOf);
        judgement.material = from->material;
        judgement.daysTooEarly = std::max(0, daysBetween(promised, *judgement.earliest));
    }
    return judgement;
}

} // namespace mend::bench
