#include "core/bench/standingplan.h"

#include <algorithm>
#include <map>
#include <string>

namespace mend::bench {

namespace {

/// People are known by their place in the problem; somebody it does not know is its first pair of hands.
int indexOf(const BenchProblem& made, PersonId person)
{
    const auto found = std::ranges::find(made.people, person);
    return found == made.people.end() ? 0 : static_cast<int>(found - made.people.begin());
}

/// The first minute at which the plan wants these hands; what is under them already wants them now.
std::optional<plan::Minute> firstWanted(const BenchProblem& made, const plan::Timetable& table, int person)
{
    std::optional<plan::Minute> first;
    for (std::size_t i = 0; i < made.problem.steps.size(); ++i) {
        const plan::Step& step = made.problem.steps[i];
        const bool ahead = step.hands && table.start[i] + step.duration > made.problem.now;
        if (ahead && table.person[i] == person && (!first || table.start[i] < *first)) {
            first = table.start[i];
        }
    }
    return first;
}

} // namespace

std::vector<std::optional<plan::Minute>> startsBefore(const BenchProblem& made, const StandingPlan& before)
{
    std::map<std::string, plan::Minute> starts;
    for (std::size_t i = 0; i < before.table.start.size(); ++i) {
        starts.emplace(before.made.problem.steps[i].id, before.table.start[i]);
    }
    const plan::Minute moved = made.minuteDown(before.made.zero); // another midnight, where a day has begun since
    std::vector<std::optional<plan::Minute>> old;
    old.reserve(made.problem.steps.size());
    for (const plan::Step& step : made.problem.steps) {
        const auto found = starts.find(step.id);
        old.push_back(found == starts.end() ? std::nullopt : std::optional(found->second + moved));
    }
    return old;
}

std::optional<Instant> freeUntil(const BenchProblem& made, const plan::Timetable& table, PersonId person)
{
    if (made.people.empty()) {
        return std::nullopt;
    }
    const int index = indexOf(made, person);
    const plan::Minute latest = made.problem.now + made.minuteDown(made.zero + longestAway);
    const auto wanted = firstWanted(made, table, index);
    const plan::FreeTime free = plan::freeTime(made.problem, table, index, latest);
    const plan::Minute until = wanted ? std::max(free.until, std::min(*wanted, latest)) : latest;
    return until >= latest ? std::nullopt : std::optional(made.at(until));
}

StandingPlan standingPlan(BenchProblem made, plan::Timetable table, PersonId person)
{
    StandingPlan plan;
    plan.made = std::move(made);
    plan.table = std::move(table);
    plan.person = person;
    plan.verdict = StandingPlan::Verdict::Whole;
    plan.score = plan::scoreOf(plan.made.problem, plan.table.start);
    plan.hands = plannedHands(plan.made, plan.table);
    plan.fits = fitsOf(plan.made, plan.table);
    plan.freeUntil = freeUntil(plan.made, plan.table, person);
    return plan;
}

Instant goodUntil(const StandingPlan& plan)
{
    constexpr Span minute = std::chrono::minutes(1);
    Instant until = Instant::max();
    for (const PlannedHands& hands : plan.hands) {
        until = std::min(until, hands.running ? hands.to : hands.from + minute);
    }
    for (const Fit& fit : plan.fits) {
        if (fit.until) {
            until = std::min(until, *fit.until + minute);
        }
        if (fit.notBefore) {
            until = std::min(until, *fit.notBefore);
        }
    }
    return std::max(until, plan.at() + minute);
}

} // namespace mend::bench
