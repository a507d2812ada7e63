#include "core/bench/benchplan.h"

#include <algorithm>

namespace mend::bench {

namespace {
/// The last minute up to `latest` at which hands are there for the whole of a step.
plan::Minute lastWhileOpen(const plan::Problem& problem, plan::Minute latest, plan::Minute duration)
{
    plan::Minute last = latest;
    for (const plan::Stretch& open : problem.open) {
        if (open.from <= latest && open.to - open.from >= duration) {
            last = std::min(latest, open.to - duration);
        }
    }
    return last;
}
} // namespace

std::vector<PlannedHands> plannedHands(const BenchProblem& made, const plan::Timetable& table)
{
    const plan::Problem& problem = made.problem;
    std::vector<std::optional<plan::Minute>> latest(problem.steps.size());
    const auto startBy = [&](int step, plan::Minute minute) {
        auto& held = latest[plan::slot(step)];
        held = held ? std::min(*held, minute) : minute;
    };
    for (const plan::Lag& lag : problem.lags) {
        if (lag.most) {
            startBy(lag.to,
                    table.start[plan::slot(lag.from)] + problem.steps[plan::slot(lag.from)].duration + *lag.most);
        }
    }
    std::vector<PlannedHands> hands;
    for (std::size_t i = 0; i < problem.steps.size(); ++i) {
        const plan::Step& step = problem.steps[i];
        const bool isDone = step.started && *step.started + step.duration <= problem.now;
        if (made.steps[i].stage.stage.empty() || isDone) {
            continue;
        }
        if (step.latestEnd) {
            startBy(static_cast<int>(i), *step.latestEnd - step.duration);
        }
        PlannedHands each;
        each.piece = made.steps[i].piece;
        each.stage = made.steps[i].stage;
        each.from = made.at(table.start[i]);
        each.to = made.at(table.start[i] + step.duration);
        each.person = table.person[i] ? made.people[plan::slot(*table.person[i])] : PersonId{};
        each.running = step.started.has_value();
        if (latest[i] && !each.running) {
            each.startBy = made.at(lastWhileOpen(problem, *latest[i], step.duration));
        }
        hands.push_back(each);
    }
    std::ranges::stable_sort(hands, {}, &PlannedHands::from);
    return hands;
}

} // namespace mend::bench
