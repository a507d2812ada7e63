#include "core/plan/maystart.h"

#include "core/plan/check.h"
#include "core/plan/exact.h"

#include <algorithm>

namespace mend::plan {
namespace {

constexpr int retries = 4;                  ///< with the block that found no place put first
constexpr std::int64_t proofSteps = 20'000; ///< of the exact search, before it is called unsure

/// A lag from what has begun to what has not, that closes: a window that stands open.
bool isOpenWindow(const Problem& problem, const Lag& lag)
{
    return lag.most && problem.steps[slot(lag.from)].started && !problem.steps[slot(lag.to)].started;
}

/// Steps that `current` does not know well enough keep their earliest start.
std::vector<Minute> taskStarts(const Model& model, const Timetable& current)
{
    std::vector<Minute> start;
    for (const Task& task : model.tasks) {
        start.push_back(current.start[slot(task.step)]);
    }
    return start;
}

Genes closingFirst(const Model& model, const std::vector<Block>& blocks, std::span<const Minute> start)
{
    std::vector<Minute> closes;
    for (std::size_t i = 0; i < model.tasks.size(); ++i) {
        // Only what closes for a reason of its own comes before the order of the plan.
        const Minute last = model.tasks[i].mayStart.last();
        closes.push_back(last < model.now + 720 ? last - farthest : start[i]);
    }
    return genesOf(blocks, closes);
}

} // namespace

MayStart::MayStart(const Problem& problem, const Timetable& current)
    : m_problem(problem), m_model(modelOf(problem)), m_taskOfStep(problem.steps.size(), -1),
      m_blockOfTask(m_model.tasks.size(), -1)
{
    auto blocks = blocksOf(m_model);
    if (!blocks || m_model.contradictory) {
        return; // no plan at all, so no yes
    }
    m_blocks = std::move(*blocks);
    for (std::size_t t = 0; t < m_model.tasks.size(); ++t) {
        m_taskOfStep[slot(m_model.tasks[t].step)] = static_cast<int>(t);
    }
    for (std::size_t b = 0; b < m_blocks.size(); ++b) {
        for (const int task : m_blocks[b].tasks) {
            m_blockOfTask[slot(task)] = static_cast<int>(b);
        }
    }
    const std::vector<Minute> start = taskStarts(m_model, current);
    m_orders = {genesOf(m_blocks, start), closingFirst(m_model, m_blocks, start)};
    m_decoder.emplace(m_model, m_blocks);
}

std::vector<int> MayStart::nextSteps() const
{
    std::vector<bool> waits(m_problem.steps.size(), false);
    for (const Lag& lag : m_problem.lags) {
        if (!m_problem.steps[slot(lag.from)].started && lag.least + m_problem.steps[slot(lag.from)].duration > 0) {
            waits[slot(lag.to)] = true;
        }
    }
    std::vector<int> next;
    for (std::size_t i = 0; i < m_problem.steps.size(); ++i) {
        if (!m_problem.steps[i].started && !waits[i]) {
            next.push_back(static_cast<int>(i));
        }
    }
    return next;
}

/// Whether the decoder finds a plan with the block first, in one of the orders.
bool MayStart::layOut(int block, int tries)
{
    for (const Genes& order : m_orders) {
        Genes genes = order;
        int first = -1;
        genes.rank[slot(block)] = first;
        for (int i = 0; i < tries; ++i) {
            if (m_decoder->decode(genes)) {
                return true;
            }
            if (m_decoder->stuck() == block && i == 0) {
                return false; // it does not fit even before all others
            }
            genes.rank[slot(m_decoder->stuck())] = --first;
        }
    }
    return false;
}

/// With the step settled at its minute: does anything have no minute left, or does a search end?
bool MayStart::proveNone(int task, Minute at, Depth depth) const
{
    std::vector<Minute> start(m_model.tasks.size(), 0);
    std::vector<bool> free(m_model.tasks.size(), true);
    start[slot(task)] = at;
    free[slot(task)] = false;
    const Model pinned = freeze(m_model, start, free).model;
    if (pinned.contradictory || earliestAlone(pinned).size() != pinned.tasks.size()) {
        return true;
    }
    if (depth == Depth::Quick) {
        return false;
    }
    Exact exact(pinned, CostScale::promises());
    return exact.search(proofSteps, {}) == Exact::Verdict::Exhausted;
}

std::optional<Timetable> MayStart::gated() const
{
    auto table = staffed(m_problem, stepStarts(m_problem, m_model, m_decoder->start()));
    return table && violations(m_problem, *table).empty() ? table : std::nullopt;
}

StartAnswer MayStart::ask(int step, Minute at, Depth depth)
{
    StartAnswer answer;
    const int task = taskOf(step);
    if (task < 0 || !m_decoder) {
        answer.may = StartAnswer::May::No;
        return answer;
    }
    StartRanges& range = m_model.tasks[slot(task)].mayStart;
    if (range.atOrAfter(at) != at) {
        answer.may = StartAnswer::May::No;
        const Minute next = range.atOrAfter(at);
        answer.notBefore = next == StartRanges::none ? std::nullopt : std::optional(next);
        return answer;
    }
    const StartRanges before = range;
    range = StartRanges(at, at);
    const int block = m_blockOfTask[slot(task)];
    const bool found = layOut(block, 1);
    if (!found && proveNone(task, at, depth)) {
        answer.may = StartAnswer::May::No;
    } else if ((found || layOut(block, retries)) && (answer.plan = gated())) {
        answer.may = StartAnswer::May::Yes;
    }
    if (answer.may != StartAnswer::May::Yes) {
        tellWindow(block, answer);
    }
    m_model.tasks[slot(task)].mayStart = before;
    return answer;
}

/// Which open window, let go by itself, would give room for a plan.
void MayStart::tellWindow(int block, StartAnswer& answer)
{
    for (std::size_t i = 0; i < m_problem.lags.size() && !answer.window; ++i) {
        const Lag& lag = m_problem.lags[i];
        const int task = taskOf(lag.to);
        if (!isOpenWindow(m_problem, lag) || task < 0 || m_blockOfTask[slot(task)] == block) {
            continue;
        }
        const Step& from = m_problem.steps[slot(lag.from)];
        StartRanges& range = m_model.tasks[slot(task)].mayStart;
        const StartRanges before = range;
        range = StartRanges(before.first(), m_problem.horizon - m_model.tasks[slot(task)].duration);
        if (m_problem.steps[slot(lag.to)].hands) {
            range.keepInside(m_problem.open, m_model.tasks[slot(task)].duration);
        }
        if (layOut(block, 1)) {
            answer.window = static_cast<int>(i);
            answer.windowCloses = *from.started + from.duration + *lag.most;
        }
        range = before;
    }
}

std::optional<Minute> MayStart::latestYes(int step)
{
    if (ask(step).may != StartAnswer::May::Yes) {
        return std::nullopt;
    }
    const StartRanges& range = m_model.tasks[slot(taskOf(step))].mayStart;
    const int block = m_blockOfTask[slot(taskOf(step))];
    const auto yes = [&](Minute at) {
        StartRanges& now = m_model.tasks[slot(taskOf(step))].mayStart;
        const StartRanges before = now;
        now = StartRanges(at, at);
        const bool found = layOut(block, 2);
        now = before;
        return found;
    };
    Minute good = m_problem.now;
    Minute bad = range.last() + 1;
    while (bad - good > 1) {
        const Minute middle = range.atOrBefore(good + (bad - good) / 2);
        if (middle <= good) {
            // Shut in between: the next opening decides.
            const Minute next = range.atOrAfter(good + 1);
            if (next >= bad || !yes(next)) {
                break;
            }
            good = next;
        } else if (yes(middle)) {
            good = middle;
        } else {
            bad = middle;
        }
    }
    return good;
}

Problem slowHands(const Problem& problem)
{
    Problem slow = problem;
    for (Step& step : slow.steps) {
        const bool over = step.started && *step.started + step.duration <= problem.now;
        if (step.hands && !over) {
            step.duration += (step.duration + 3) / 4;
        }
    }
    return slow;
}

FreeTime freeTime(const Problem& problem, const Timetable& current, int person, Minute latest)
{
    Problem away = problem;
    away.pieces.push_back({"away", 0, problem.now});
    Step absence;
    absence.id = "away";
    absence.piece = static_cast<int>(away.pieces.size()) - 1;
    absence.started = problem.now;
    absence.person = person;
    away.steps.push_back(absence);
    Timetable table = current;
    table.start.push_back(problem.now);
    table.person.push_back(person);

    const auto possible = [&](const Problem& bench) {
        const Model model = modelOf(bench);
        const auto blocks = blocksOf(model);
        if (!blocks || model.contradictory) {
            return false;
        }
        const std::vector<Minute> start = taskStarts(model, table);
        Decoder decoder(model, *blocks);
        return decoder.decode(genesOf(*blocks, start)) || decoder.decode(closingFirst(model, *blocks, start));
    };
    const auto awayUntil = [&](Minute until) {
        away.steps.back().duration = until - problem.now;
        return possible(away);
    };
    FreeTime free{problem.now, std::nullopt};
    Minute bad = latest + 1;
    while (bad - free.until > 1) {
        const Minute middle = free.until + (bad - free.until) / 2;
        (awayUntil(middle) ? free.until : bad) = middle;
    }
    if (bad <= latest) {
        away.steps.back().duration = bad - problem.now;
        for (std::size_t i = 0; i < problem.lags.size() && !free.window; ++i) {
            if (isOpenWindow(problem, problem.lags[i])) {
                const auto most = std::exchange(away.lags[i].most, std::nullopt);
                free.window = possible(away) ? std::optional(static_cast<int>(i)) : std::nullopt;
                away.lags[i].most = most;
            }
        }
    }
    return free;
}

} // namespace mend::plan
