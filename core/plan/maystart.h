#pragma once

#include "core/plan/decoder.h"
#include "core/plan/timetable.h"

#include <optional>
#include <vector>

namespace mend::plan {

/// Whether a step may begin without losing a window that stands open or one that it would open.
struct StartAnswer {
    enum class May {
        Yes,    ///< `plan` is a plan of the whole bench in which it does
        No,     ///< proven: there is none
        Unsure, ///< none was found in the moment there was
    };
    May may = May::Unsure;
    std::optional<Timetable> plan;
    /// Where it is not yes: the open window (a lag) that stands in the way, for without it there is
    /// a plan; and the last minute at which its step may start.
    std::optional<int> window;
    Minute windowCloses = 0;
    /// Where the step may not begin at this minute at all (shut, too early, hands or place taken):
    /// from when it might.
    std::optional<Minute> notBefore;
};

/// How long a person may turn away, and what ends it.
struct FreeTime {
    Minute until = 0;          ///< `now` where there is no time at all
    std::optional<int> window; ///< the open window (a lag) that ends it
};

/// Answers "may this start?" before the tap, for every card at once: asked by pinning the step to
/// its minute and laying the rest of the bench out anew in the order of the current plan, those
/// whose windows close first going first. Where that fails, it may be proven that there is no
/// plan: at once, where somebody's hours and hands leave a window no minute; in the worker by a
/// short exact search. Every yes has passed the gate. A question takes about 100 microseconds.
class MayStart {
public:
    enum class Depth {
        Quick,    ///< for all cards at once, before a tap
        Thorough, ///< in the worker: turns more of what is unsure into no
    };

    /// `problem` must outlive it. `current` is a plan for it, or one from a little earlier.
    MayStart(const Problem& problem, const Timetable& current);
    MayStart(const MayStart&) = delete;
    MayStart& operator=(const MayStart&) = delete;

    /// The steps that could be next: still to do, with nothing before them still to do.
    std::vector<int> nextSteps() const;
    StartAnswer ask(int step, Depth depth = Depth::Quick) { return ask(step, m_problem.now, depth); }
    StartAnswer ask(int step, Minute at, Depth depth);
    /// The latest minute at which the answer is still yes; empty where it is not yes now.
    std::optional<Minute> latestYes(int step);

private:
    bool layOut(int block, int tries);
    bool proveNone(int task, Minute at, Depth depth) const;
    std::optional<Timetable> gated() const;
    void tellWindow(int block, StartAnswer& answer);
    int taskOf(int step) const { return m_taskOfStep[slot(step)]; }

    const Problem& m_problem;
    Model m_model;
    std::vector<Block> m_blocks;
    std::vector<int> m_taskOfStep;
    std::vector<int> m_blockOfTask;
    std::vector<Genes> m_orders; ///< that of the current plan, then what closes first
    std::optional<Decoder> m_decoder;
};

/// The same bench with hands that take a quarter longer, rounded up: what is asked second, for
/// nobody knows a duration to the minute.
Problem slowHands(const Problem& problem);

/// How long `person` may be away from now on without a window being lost; at most until `latest`.
FreeTime freeTime(const Problem& problem, const Timetable& current, int person, Minute latest);

} // namespace mend::plan
