#pragma once

#include "core/bench/pieceahead.h"

#include <map>
#include <string>
#include <vector>

namespace mend::bench {

/// Hands that are taken: a customer is expected, somebody is away.
struct Booking {
    InstantRange when;
    std::string what; ///< a label only
    bool operator==(const Booking&) const = default;
};

/// What a plan needs to know beyond the bench.
struct PlanFacts {
    std::map<PersonId, std::vector<InstantRange>>
        hours; ///< of people with hours of their own; the others keep the bench's
    std::vector<Booking> bookings;
    std::map<PieceId, Instant> promised;      ///< by when it was promised to be ready
    Span reach = std::chrono::hours(24 * 14); ///< what cannot begin within it is left to later plans
    /// Beyond what may begin within reach there is as much time again to end it.
    Span horizon() const { return 2 * reach; }
    bool operator==(const PlanFacts&) const = default;
};

/// What a step of the problem is on the bench.
struct PlanStep {
    PieceId piece;       ///< unset: of no piece: somebody is away, a state of the room
    StageInstance stage; ///< empty: what goes by itself after a stage
    auto operator<=>(const PlanStep&) const = default;
};

/// The bench as a problem of the planner, and the way back.
struct BenchProblem {
    plan::Problem problem;
    Instant zero;                    ///< minute 0: the UTC midnight before now
    std::vector<PlanStep> steps;     ///< of `problem.steps`, in the same order
    std::vector<PieceId> pieces;     ///< of `problem.pieces`; the last may be unset: the room and its people
    std::vector<PersonId> people;    ///< of `problem.people`; unset where nobody was told
    std::vector<PlanStep> lost;      ///< still open, but too late even if begun at once: their closing binds nothing
    std::vector<PlanStep> tooTight;  ///< see PieceAhead
    std::vector<PlanStep> stalled;   ///< what waits for a wait without progress, and so cannot be planned
    std::vector<PlanStep> later;     ///< cannot begin within reach
    std::map<PieceId, int> moreRuns; ///< runs to add so that each fits its window
    bool operator==(const BenchProblem&) const = default;

    Instant at(plan::Minute minute) const { return zero + std::chrono::minutes(minute); }
    plan::Minute minuteUp(Instant at) const { return minutesUp(at - zero); }
    plan::Minute minuteDown(Instant at) const { return minutesDown(at - zero); }
};

/// The work of every agreed piece in hand that is neither on hold nor waiting for its owner, from now on: hands by the
/// rule, windows as the Bench shows them, waits ahead at the present heat of each place, combinations that block as
/// tags, slots of places, and people with their hours. A piece on hold brings only windows that run already.
BenchProblem benchProblem(const BenchFold& bench, const rules::RuleBook& book, const PlanFacts& facts, Instant now);

} // namespace mend::bench
