#pragma once

#include "core/bench/benchplan.h"
#include "core/bench/fits.h"
#include "core/plan/repair.h"
#include "core/plan/whynot.h"

#include <optional>
#include <vector>

namespace mend::bench {

/// How far ahead "free until" looks: longer nobody turns away in one go.
constexpr Span longestAway = std::chrono::hours(12);

/// What is known of the hours to come, from the bench as it stood at one instant.
struct StandingPlan {
    enum class Verdict {
        Whole,    ///< in `table`, past the gate
        None,     ///< proven: there is none, `why` says what cannot hold together
        NotFound, ///< none found in the time there was
    };
    BenchProblem made;
    PersonId person; ///< whose "free until" it tells
    Verdict verdict = Verdict::NotFound;
    plan::Timetable table;
    plan::Score score;
    plan::WhyNot why;
    std::vector<PlannedHands> hands;  ///< oldest first
    std::vector<Fit> fits;            ///< only where the verdict is Whole
    std::optional<Instant> freeUntil; ///< empty: nothing wants these hands for as long as anybody looks ahead

    bool isWhole() const { return verdict == Verdict::Whole; }
    Instant at() const { return made.at(made.problem.now); }
};

/// When each step of a bench was to begin in the plan of a moment ago; empty where it is new.
std::vector<std::optional<plan::Minute>> startsBefore(const BenchProblem& made, const StandingPlan& before);

/// How long this person may turn away without a window being lost, with everybody else at work as the plan has it;
/// never sooner than the plan itself wants these hands. Empty: nothing closes within `longestAway`.
std::optional<Instant> freeUntil(const BenchProblem& made, const plan::Timetable& table, PersonId person);

/// Tells a whole plan in the terms of the bench, with the quick answers.
StandingPlan standingPlan(BenchProblem made, plan::Timetable table, PersonId person);

/// From when on the answers have to be asked anew though nobody told anything: a start that was planned has passed, or
/// a yes no longer holds. Never before the minute after the one it was made in.
Instant goodUntil(const StandingPlan& plan);

} // namespace mend::bench
