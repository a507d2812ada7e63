#include "core/plan/startranges.h"

#include <algorithm>

namespace mend::plan {

StartRanges::StartRanges(Minute first, Minute last)
{
    if (first <= last) {
        m_ranges.push_back({first, last});
    }
}

Minute StartRanges::atOrAfter(Minute minute) const
{
    const auto found =
        std::partition_point(m_ranges.begin(), m_ranges.end(), [&](const Range& range) { return range.last < minute; });
    return found == m_ranges.end() ? none : std::max(minute, found->first);
}

Minute StartRanges::atOrBefore(Minute minute) const
{
    const auto after = std::partition_point(m_ranges.begin(), m_ranges.end(),
                                            [&](const Range& range) { return range.first <= minute; });
    return after == m_ranges.begin() ? -none : std::min(minute, std::prev(after)->last);
}

void StartRanges::keepInside(const std::vector<Stretch>& open, Minute duration)
{
    std::vector<Range> kept;
    for (const Stretch& stretch : open) {
        for (const Range& range : m_ranges) {
            const Range both{std::max(range.first, stretch.from), std::min(range.last, stretch.to - duration)};
            if (both.first <= both.last) {
                kept.push_back(both);
            }
        }
    }
    m_ranges = std::move(kept);
}

void StartRanges::keepFrom(Minute first) { cut(-none, first - 1); }

void StartRanges::keepUntil(Minute last) { cut(last + 1, none); }

void StartRanges::cut(Minute first, Minute last)
{
    if (first > last || m_ranges.empty() || first > m_ranges.back().last || last < m_ranges.front().first) {
        return;
    }
    std::vector<Range> kept;
    kept.reserve(m_ranges.size() + 1);
    for (const Range& range : m_ranges) {
        if (range.last < first || range.first > last) {
            kept.push_back(range);
            continue;
        }
        if (range.first < first) {
            kept.push_back({range.first, first - 1});
        }
        if (range.last > last) {
            kept.push_back({last + 1, range.last});
        }
    }
    m_ranges = std::move(kept);
}

} // namespace mend::plan
