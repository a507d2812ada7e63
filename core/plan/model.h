#pragma once

#include "core/plan/problem.h"
#include "core/plan/startranges.h"

#include <limits>
#include <span>
#include <utility>
#include <vector>

namespace mend::plan {

/// A step that is still to be placed.
struct Task {
    int step = 0; ///< index into Problem::steps
    int piece = 0;
    Minute duration = 1;
    StartRanges mayStart;
};

/// start(to) >= start(from) + plus: what every lag comes down to (Dechter, Meiri and Pearl,
/// "Temporal constraint networks", Artificial Intelligence 49, 1991).
struct Difference {
    int from = 0;
    int to = 0;
    Minute plus = 0;
};

/// A point that moves with a task, or one that is settled.
struct Anchor {
    static constexpr int settled = -1;
    int task = settled;
    Minute plus = 0; ///< after the start of the task; the minute itself where it is settled
    Minute at(std::span<const Minute> start) const
    {
        return task == settled ? plus : start[static_cast<std::size_t>(task)] + plus;
    }
};

/// A step or a wait as a stretch that holds something.
struct Interval {
    Anchor begin;
    Anchor end;
    bool isSettled() const { return begin.task == Anchor::settled && end.task == Anchor::settled; }
};

/// What only so many may hold at once: hands, slots.
struct Channel {
    struct Demand {
        int interval = 0;
        int amount = 1;
    };
    int capacity = 1;
    std::vector<Demand> demands;
};

/// How late each minute of a piece counts.
struct Due {
    std::int64_t weight = 0;
    Minute promised = 0;
    Minute settledEnd = std::numeric_limits<Minute>::min(); ///< of the steps that are no tasks
    std::vector<int> tasks;
};

/// The problem laid out for a solver: only what is still open has a place of its own, history
/// has become limits and settled intervals. `freeze` settles more of it, which is how a small
/// part of a plan is solved anew while the rest stays.
struct Model {
    Minute now = 0;
    Minute horizon = 0;
    std::vector<Task> tasks;
    std::vector<Difference> differences;
    std::vector<Interval> intervals;
    std::vector<Channel> channels;              ///< the first is hands
    std::vector<std::pair<int, int>> exclusive; ///< intervals that never overlap: incompatible tags
    std::vector<Due> pieces;
    bool contradictory = false; ///< seen while laying it out: no plan exists
};

Model modelOf(const Problem& problem);

/// The same with the tasks that are not `free` settled at `start`. `taskOf[k]` is the task of
/// the given model that task k of the new one stands for.
struct Frozen {
    Model model;
    std::vector<int> taskOf;
};
Frozen freeze(const Model& model, std::span<const Minute> start, const std::vector<bool>& free);

/// The starts of all steps out of those of the tasks.
std::vector<Minute> stepStarts(const Problem& problem, const Model& model, std::span<const Minute> start);

/// Earliest start of each task with no one else at the bench: lags and hours alone. Empty if
/// already these contradict each other.
std::vector<Minute> earliestAlone(const Model& model);

} // namespace mend::plan
