#pragma once

#include "core/bench/dossier.h"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace mend::bench {

/// One piece in one of the counter's lists.
struct CounterLine {
    PieceId piece;
    std::string number;
    std::string benchName;
    std::optional<CivilDay> day; ///< the list's own day: since when, or the day that was promised
    int days = 0;                ///< from that day to today, 0 or more
    bool operator==(const CounterLine&) const = default;
};

/// What anybody at the counter asks: what may be collected, what is late, what waits for its owner. Each list
/// has its longest waiting piece first; its length is the count.
struct CounterFacts {
    std::vector<CounterLine> mayBeCollected; ///< day: since when
    std::vector<CounterLine> late;           ///< day: the promise that is over, the piece not ready
    std::vector<CounterLine> waitsForOwner;  ///< a question is open, or nothing is agreed yet; day: since when it came
    std::vector<CounterLine> toCall;         ///< promised earlier than it can be ready, and the owner does not know it;
                                             ///< day: the promise
    std::vector<CounterLine> unclaimed;      ///< may be collected since 30 days or more; day: since when
    bool operator==(const CounterFacts&) const = default;
};

/// From how many days on a ready piece is called unclaimed. Nothing is ever disposed of: what follows is local law
/// (common practice, no source).
constexpr int unclaimedAfterDays = 30;

/// Which civil day an instant falls into where the studio is.
using DayOf = std::function<CivilDay(Instant)>;

CounterFacts counterOf(const BenchFold& bench, std::span<const Event> events, const rules::RuleBook& book, Instant now,
                       const DayOf& dayOf);

/// What a promise comes to at the moment it is made.
struct PromiseJudgement {
    std::optional<CivilDay> earliest; ///< from when it may be collected at the earliest; empty: nobody knows
    std::string material;             ///< whose wait decides, where one does
    int daysTooEarly = 0;             ///< 0: it can be kept, as far as is known
    bool operator==(const PromiseJudgement&) const = default;
};
PromiseJudgement judgePromise(CivilDay promised, const PieceState& piece, const rules::RuleBook& book, Instant now,
                              const DayOf& dayOf);

/// From which day on the owner may come: the first day that lies wholly after the wait, since nobody comes at a
/// minute. The day of `at` itself where `at` is its very beginning.
CivilDay collectableDay(Instant at, const DayOf& dayOf);

} // namespace mend::bench
