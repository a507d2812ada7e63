#include "core/plan/timetable.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace mend::plan {

std::vector<Minute> completions(const Problem& problem, const std::vector<Minute>& start)
{
    std::vector<Minute> done(problem.pieces.size(), std::numeric_limits<Minute>::min());
    for (std::size_t i = 0; i < problem.steps.size(); ++i) {
        const Step& step = problem.steps[i];
        Minute& last = done[static_cast<std::size_t>(step.piece)];
        last = std::max(last, start[i] + step.duration);
    }
    return done;
}

Score scoreOf(const Problem& problem, const std::vector<Minute>& start)
{
    Score score;
    const std::vector<Minute> done = completions(problem, start);
    for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
        const Piece& piece = problem.pieces[p];
        score.tardiness += piece.weight * std::max<std::int64_t>(0, std::int64_t{done[p]} - piece.promised);
        score.flow += done[p] - problem.now;
    }
    return score;
}

std::optional<Timetable> staffed(const Problem& problem, std::vector<Minute> start)
{
    Timetable table;
    table.person.resize(problem.steps.size());
    std::vector<Minute> freeFrom(problem.people.size(), std::numeric_limits<Minute>::min());
    std::vector<std::size_t> todo;
    for (std::size_t i = 0; i < problem.steps.size(); ++i) {
        const Step& step = problem.steps[i];
        if (!step.hands) {
            continue;
        }
        if (step.started) {
            table.person[i] = step.person;
            Minute& from = freeFrom[static_cast<std::size_t>(step.person.value_or(0))];
            from = std::max(from, *step.started + step.duration);
        } else {
            todo.push_back(i);
        }
    }
    std::sort(todo.begin(), todo.end(),
              [&](std::size_t a, std::size_t b) { return std::pair(start[a], a) < std::pair(start[b], b); });
    for (const std::size_t i : todo) {
        const auto person = std::find_if(freeFrom.begin(), freeFrom.end(), [&](Minute at) { return at <= start[i]; });
        if (person == freeFrom.end()) {
            return std::nullopt;
        }
        *person = start[i] + problem.steps[i].duration;
        table.person[i] = static_cast<int>(person - freeFrom.begin());
    }
    table.start = std::move(start);
    return table;
}

} // namespace mend::plan
