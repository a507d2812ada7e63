#pragma once

#include "core/plan/problem.h"

#include <vector>

namespace mend::plan {

/// When a step may start at all: bench hours less its own length, its own limits, and what is
/// already settled around it. Ranges hold both ends, increase and do not touch. The rounding of
/// a start to the next one allowed is what turns a plain temporal network into one that knows
/// when the bench is shut.
class StartRanges {
public:
    struct Range {
        Minute first = 0;
        Minute last = 0;
    };

    StartRanges() = default;
    /// Anything from `first` to `last`.
    StartRanges(Minute first, Minute last);

    bool isEmpty() const { return m_ranges.empty(); }
    Minute first() const { return m_ranges.front().first; }
    Minute last() const { return m_ranges.back().last; }
    const std::vector<Range>& ranges() const { return m_ranges; }

    /// The first allowed minute at or after `minute`; `none` if there is no more.
    static constexpr Minute none = 2 * farthest;
    Minute atOrAfter(Minute minute) const;
    /// The last allowed minute at or before `minute`; `-none` if there is none.
    Minute atOrBefore(Minute minute) const;

    /// Keeps only starts from which `duration` fits into one of the stretches.
    void keepInside(const std::vector<Stretch>& open, Minute duration);
    void keepFrom(Minute first);
    void keepUntil(Minute last);
    /// Takes the minutes first..last out.
    void cut(Minute first, Minute last);

private:
    std::vector<Range> m_ranges;
};

} // namespace mend::plan
