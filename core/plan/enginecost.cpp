#include "core/plan/engine.h"

#include <algorithm>

namespace mend::plan {
namespace {

/// The last minute at which a term costs no more than `most`; `most` is at least its cost at `from`.
Minute lastWithin(const CostTerm& term, Minute from, Minute to, std::int64_t most)
{
    while (from < to) {
        const Minute middle = from + (to - from + 1) / 2;
        if (term.at(middle) <= most) {
            from = middle;
        } else {
            to = middle - 1;
        }
    }
    return from;
}

} // namespace

void Engine::limitCost(std::int64_t most)
{
    m_mostCost = m_mostCost ? std::min(*m_mostCost, most) : most;
    m_costStale = true;
}

/// Pieces cost at least what they cost at their earliest; what is left over says how late
/// each of them may still be.
bool Engine::followCost()
{
    std::int64_t least = 0;
    for (const CostTerm& term : m_cost) {
        least += term.at(lowest(term.variable));
    }
    m_work += static_cast<std::int64_t>(m_cost.size());
    if (least > *m_mostCost) {
        m_conflict.clear();
        weakenCost(least - *m_mostCost - 1, -1, static_cast<int>(m_trail.size()), m_conflict);
        return false;
    }
    for (std::size_t i = 0; i < m_cost.size(); ++i) {
        const CostTerm& term = m_cost[i];
        const Minute low = lowest(term.variable);
        const Minute high = highest(term.variable);
        const std::int64_t room = *m_mostCost - least + term.at(low);
        if (term.at(high) <= room) {
            continue;
        }
        const Minute last = lastWithin(term, low, high, room);
        if (!raise(upper(term.variable), -last, {Because::Cost, static_cast<std::uint32_t>(i)})) {
            return false;
        }
    }
    return true;
}

/// Says of each piece (but `skip`) how early it cannot be, and gives `slack` of the cost away to
/// say as little as possible: whole pieces first.
void Engine::weakenCost(std::int64_t slack, int skip, int event, std::vector<Literal>& because) const
{
    std::vector<std::pair<std::size_t, Minute>> left;
    for (std::size_t i = 0; i < m_cost.size(); ++i) {
        if (static_cast<int>(i) == skip) {
            continue;
        }
        const CostTerm& term = m_cost[i];
        const Minute now = valueBefore(lower(term.variable), event);
        int first = m_head[lower(term.variable)];
        Minute root = m_value[lower(term.variable)];
        while (first >= 0) {
            const Event& one = m_trail[static_cast<std::size_t>(first)];
            root = one.before;
            if (one.level == 0) {
                root = one.value;
                break;
            }
            first = one.previous;
        }
        const std::int64_t given = term.at(now) - term.at(std::min(root, now));
        if (given <= slack) {
            slack -= given;
        } else {
            left.emplace_back(i, std::min(root, now));
        }
    }
    for (const auto& [i, root] : left) {
        const CostTerm& term = m_cost[i];
        const Minute now = valueBefore(lower(term.variable), event);
        // The smallest minute whose cost is within slack of what it is now.
        Minute low = root;
        Minute high = now;
        while (low < high) {
            const Minute middle = low + (high - low) / 2;
            if (term.at(now) - term.at(middle) <= slack) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        slack -= term.at(now) - term.at(high);
        because.push_back({lower(term.variable), high});
    }
}

void Engine::explainCost(int number, Minute least, std::vector<Literal>& because) const
{
    const Event& event = m_trail[static_cast<std::size_t>(number)];
    const auto which = static_cast<std::size_t>(event.reason.which);
    std::int64_t sum = m_cost[which].at(-least + 1);
    for (std::size_t i = 0; i < m_cost.size(); ++i) {
        if (i != which) {
            sum += m_cost[i].at(valueBefore(lower(m_cost[i].variable), number));
        }
    }
    weakenCost(sum - *m_mostCost - 1, static_cast<int>(which), number, because);
}

} // namespace mend::plan
