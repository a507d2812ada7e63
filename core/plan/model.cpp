#include "core/plan/model.h"

#include <algorithm>
#include <map>

namespace mend::plan {
namespace {

/// Lays every step out as a task, history too; freezing the history is the next step.
class Layout {
public:
    explicit Layout(const Problem& problem) : m_problem(problem)
    {
        m_model.now = problem.now;
        m_model.horizon = problem.horizon;
    }

    Model take()
    {
        layTasks();
        layLags();
        layIntervals();
        layExclusive();
        std::vector<Minute> start;
        std::vector<bool> free;
        for (const Step& step : m_problem.steps) {
            start.push_back(step.started.value_or(0));
            free.push_back(!step.started);
        }
        return freeze(m_model, start, free).model;
    }

private:
    void layTasks()
    {
        for (const Piece& piece : m_problem.pieces) {
            m_model.pieces.push_back({piece.weight, piece.promised, std::numeric_limits<Minute>::min(), {}});
        }
        for (std::size_t i = 0; i < m_problem.steps.size(); ++i) {
            const Step& step = m_problem.steps[i];
            Task task{static_cast<int>(i), step.piece, step.duration,
                      StartRanges(m_problem.now, m_problem.horizon - step.duration)};
            if (step.hands && !step.started) {
                task.mayStart.keepInside(m_problem.open, step.duration);
            }
            if (step.earliest) {
                task.mayStart.keepFrom(*step.earliest);
            }
            if (step.latestEnd) {
                task.mayStart.keepUntil(*step.latestEnd - step.duration);
            }
            m_model.pieces[slot(step.piece)].tasks.push_back(static_cast<int>(i));
            m_model.tasks.push_back(std::move(task));
        }
    }

    void layLags()
    {
        for (const Lag& lag : m_problem.lags) {
            const Step& from = m_problem.steps[slot(lag.from)];
            if (from.started && m_problem.steps[slot(lag.to)].started) {
                continue;
            }
            m_model.differences.push_back({lag.from, lag.to, from.duration + lag.least});
            if (lag.most) {
                m_model.differences.push_back({lag.to, lag.from, -from.duration - *lag.most});
            }
        }
    }

    /// Of people only the time until they are free again counts: two running steps of one
    /// person take one pair of hands.
    void layRunningHands(Channel& hands)
    {
        for (std::size_t p = 0; p < m_problem.people.size(); ++p) {
            Minute until = m_problem.now;
            for (const Step& step : m_problem.steps) {
                if (step.started && step.person && slot(*step.person) == p) {
                    until = std::max(until, *step.started + step.duration);
                }
            }
            if (until > m_problem.now) {
                hands.demands.push_back({addInterval({Anchor::settled, m_problem.now}, {Anchor::settled, until}), 1});
            }
        }
    }

    void layIntervals()
    {
        Channel hands{static_cast<int>(m_problem.people.size()), {}};
        layRunningHands(hands);
        m_model.channels.push_back(std::move(hands));
        for (const Resource& resource : m_problem.resources) {
            m_model.channels.push_back({resource.capacity, {}});
        }
        for (std::size_t i = 0; i < m_problem.steps.size(); ++i) {
            const Step& step = m_problem.steps[i];
            const int index = static_cast<int>(i);
            const int interval = addInterval({index, 0}, {index, step.duration});
            if (step.hands && !step.started) {
                m_model.channels[0].demands.push_back({interval, 1});
            }
            hold(interval, step.uses, step.tags);
        }
        for (const Wait& wait : m_problem.waits) {
            const Minute length = m_problem.steps[slot(wait.from)].duration;
            hold(addInterval({wait.from, length}, {wait.to, 0}), wait.uses, wait.tags);
        }
    }

    int addInterval(Anchor begin, Anchor end)
    {
        m_model.intervals.push_back({begin, end});
        return static_cast<int>(m_model.intervals.size()) - 1;
    }

    void hold(int interval, const std::vector<Use>& uses, const std::vector<std::string>& tags)
    {
        for (const Use& use : uses) {
            m_model.channels[slot(use.resource) + 1].demands.push_back({interval, use.amount});
        }
        for (const std::string& tag : tags) {
            m_carriers[tag].push_back(interval);
        }
    }

    void layExclusive()
    {
        for (const auto& [one, other] : m_problem.incompatible) {
            for (const int a : m_carriers[one]) {
                for (const int b : m_carriers[other]) {
                    if (a != b) {
                        m_model.exclusive.emplace_back(std::min(a, b), std::max(a, b));
                    }
                }
            }
        }
        std::sort(m_model.exclusive.begin(), m_model.exclusive.end());
        const auto last = std::unique(m_model.exclusive.begin(), m_model.exclusive.end());
        m_model.exclusive.erase(last, m_model.exclusive.end());
    }

    const Problem& m_problem;
    Model m_model;
    std::map<std::string, std::vector<int>> m_carriers;
};

/// Takes out of each task's starts what settled intervals leave no room for.
class Obstacles {
public:
    explicit Obstacles(Model& model) : m_model(model)
    {
        m_taskOfStep.assign(model.intervals.size(), Anchor::settled);
        for (std::size_t i = 0; i < model.intervals.size(); ++i) {
            const Interval& one = model.intervals[i];
            if (one.begin.task == one.end.task && one.begin.plus == 0) {
                m_taskOfStep[i] = one.begin.task;
            }
        }
    }

    void cutAll()
    {
        for (const Channel& channel : m_model.channels) {
            cutChannel(channel);
        }
        for (const auto& [a, b] : m_model.exclusive) {
            cutPair(a, b);
            cutPair(b, a);
        }
    }

private:
    void cutPair(int settled, int other)
    {
        const Interval& wall = m_model.intervals[slot(settled)];
        if (wall.isSettled()) {
            cutOut(other, wall.begin.plus, wall.end.plus);
        }
    }

    void cutOut(int interval, Minute from, Minute to)
    {
        const int task = m_taskOfStep[slot(interval)];
        if (task != Anchor::settled && from < to) {
            m_model.tasks[slot(task)].mayStart.cut(from - m_model.tasks[slot(task)].duration + 1, to - 1);
        }
    }

    void cutChannel(const Channel& channel)
    {
        std::vector<std::pair<Minute, int>> changes;
        for (const Channel::Demand& demand : channel.demands) {
            const Interval& one = m_model.intervals[slot(demand.interval)];
            if (one.isSettled() && one.begin.plus < one.end.plus) {
                changes.emplace_back(one.begin.plus, demand.amount);
                changes.emplace_back(one.end.plus, -demand.amount);
            }
        }
        std::sort(changes.begin(), changes.end());
        int level = 0;
        for (std::size_t i = 0; i < changes.size(); ++i) {
            level += changes[i].second;
            m_model.contradictory = m_model.contradictory || level > channel.capacity;
            if (level == 0 || i + 1 == changes.size()) {
                continue;
            }
            for (const Channel::Demand& demand : channel.demands) {
                if (level + demand.amount > channel.capacity) {
                    cutOut(demand.interval, changes[i].first, changes[i + 1].first);
                }
            }
        }
    }

    Model& m_model;
    std::vector<int> m_taskOfStep; ///< the task whose own stretch an interval is
};

} // namespace

Model modelOf(const Problem& problem) { return Layout(problem).take(); }

Frozen freeze(const Model& model, std::span<const Minute> start, const std::vector<bool>& free)
{
    Frozen frozen;
    Model& next = frozen.model;
    next.now = model.now;
    next.horizon = model.horizon;
    next.contradictory = model.contradictory;
    std::vector<int> newTask(model.tasks.size(), Anchor::settled);
    for (std::size_t i = 0; i < model.tasks.size(); ++i) {
        if (free[i]) {
            newTask[i] = static_cast<int>(next.tasks.size());
            next.tasks.push_back(model.tasks[i]);
            frozen.taskOf.push_back(static_cast<int>(i));
        }
    }
    for (const Due& due : model.pieces) {
        Due kept{due.weight, due.promised, due.settledEnd, {}};
        for (const int task : due.tasks) {
            if (free[slot(task)]) {
                kept.tasks.push_back(newTask[slot(task)]);
            } else {
                kept.settledEnd = std::max(kept.settledEnd, start[slot(task)] + model.tasks[slot(task)].duration);
            }
        }
        next.pieces.push_back(std::move(kept));
    }
    for (const Difference& difference : model.differences) {
        const int from = newTask[slot(difference.from)];
        const int to = newTask[slot(difference.to)];
        if (from != Anchor::settled && to != Anchor::settled) {
            next.differences.push_back({from, to, difference.plus});
        } else if (to != Anchor::settled) {
            next.tasks[slot(to)].mayStart.keepFrom(start[slot(difference.from)] + difference.plus);
        } else if (from != Anchor::settled) {
            next.tasks[slot(from)].mayStart.keepUntil(start[slot(difference.to)] - difference.plus);
        } else if (start[slot(difference.to)] < start[slot(difference.from)] + difference.plus) {
            next.contradictory = true;
        }
    }
    const auto settle = [&](Anchor anchor) {
        if (anchor.task == Anchor::settled) {
            return anchor;
        }
        const int task = newTask[slot(anchor.task)];
        return task == Anchor::settled ? Anchor{task, start[slot(anchor.task)] + anchor.plus}
                                       : Anchor{task, anchor.plus};
    };
    std::vector<int> newInterval(model.intervals.size(), -1);
    for (std::size_t i = 0; i < model.intervals.size(); ++i) {
        Interval one{settle(model.intervals[i].begin), settle(model.intervals[i].end)};
        if (one.begin.task == Anchor::settled) {
            one.begin.plus = std::max(one.begin.plus, model.now); // what is past is not judged
        }
        if (!one.isSettled() || one.begin.plus < one.end.plus) {
            newInterval[i] = static_cast<int>(next.intervals.size());
            next.intervals.push_back(one);
        }
    }
    for (const Channel& channel : model.channels) {
        Channel kept{channel.capacity, {}};
        for (const Channel::Demand& demand : channel.demands) {
            if (newInterval[slot(demand.interval)] >= 0) {
                kept.demands.push_back({newInterval[slot(demand.interval)], demand.amount});
            }
        }
        next.channels.push_back(std::move(kept));
    }
    for (const auto& [a, b] : model.exclusive) {
        const bool both = newInterval[slot(a)] >= 0 && newInterval[slot(b)] >= 0;
        const bool open = both && !(next.intervals[slot(newInterval[slot(a)])].isSettled() &&
                                    next.intervals[slot(newInterval[slot(b)])].isSettled());
        if (open) {
            next.exclusive.emplace_back(newInterval[slot(a)], newInterval[slot(b)]);
        }
    }
    Obstacles(next).cutAll();
    for (const Task& task : next.tasks) {
        next.contradictory = next.contradictory || task.mayStart.isEmpty();
    }
    return frozen;
}

std::vector<Minute> stepStarts(const Problem& problem, const Model& model, std::span<const Minute> start)
{
    std::vector<Minute> all;
    all.reserve(problem.steps.size());
    for (const Step& step : problem.steps) {
        all.push_back(step.started.value_or(0));
    }
    for (std::size_t i = 0; i < model.tasks.size(); ++i) {
        all[slot(model.tasks[i].step)] = start[i];
    }
    return all;
}

std::vector<Minute> earliestAlone(const Model& model)
{
    std::vector<Minute> earliest;
    for (const Task& task : model.tasks) {
        if (task.mayStart.isEmpty()) {
            return {};
        }
        earliest.push_back(task.mayStart.first());
    }
    // Between two roundings to the hours a walk without a ring is done after as many rounds as there
    // are tasks, and each range rounds a task at most once.
    std::size_t rounds = 1;
    for (const Task& task : model.tasks) {
        rounds += task.mayStart.ranges().size();
    }
    rounds *= model.tasks.size() + 1;
    for (bool changed = true; changed;) {
        changed = false;
        if (rounds-- == 0) {
            return {};
        }
        for (const Difference& difference : model.differences) {
            Minute& to = earliest[slot(difference.to)];
            const Minute least = earliest[slot(difference.from)] + difference.plus;
            if (least > to) {
                to = model.tasks[slot(difference.to)].mayStart.atOrAfter(least);
                changed = true;
                if (to == StartRanges::none) {
                    return {};
                }
            }
        }
    }
    return earliest;
}

} // namespace mend::plan
