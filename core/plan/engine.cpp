#include "core/plan/engine.h"

#include <algorithm>
#include <cassert>

namespace mend::plan {

int Engine::addVariable(Minute first, Minute last, const StartRanges* ranges)
{
    const int variable = static_cast<int>(m_ranges.size());
    m_value.push_back(first);
    m_value.push_back(-last);
    m_head.insert(m_head.end(), 2, -1);
    m_arcsFrom.resize(m_arcsFrom.size() + 2);
    m_awakenedBy.resize(m_awakenedBy.size() + 2);
    m_watches.resize(m_watches.size() + 2);
    m_ranges.push_back(ranges);
    m_activity.push_back(0.0);
    m_hopeless = m_hopeless || first > last;
    return variable;
}

void Engine::addDifference(int from, int to, Minute plus, std::optional<Literal> condition)
{
    const BoundId when = condition ? condition->bound : always;
    addArc(lower(from), lower(to), plus, when);
    addArc(upper(to), upper(from), plus, when);
}

void Engine::addArc(BoundId from, BoundId to, Minute plus, BoundId condition)
{
    const auto arc = static_cast<std::uint32_t>(m_arcs.size());
    m_arcs.push_back({from, to, plus, condition});
    m_arcsFrom[from].push_back({to, plus, condition, arc});
    if (condition != always) {
        m_awakenedBy[condition].push_back(arc);
    }
    // What already follows is found at once: whether the condition can hold, and what it means.
    if (!m_hopeless && !follow(m_arcsFrom[from].back(), m_value[from])) {
        m_hopeless = m_hopeless || depth() == 0;
    }
}

/// Pushes `bound` up to `value` and on to the next minute that its ranges allow.
bool Engine::raise(BoundId bound, Minute value, Reason reason)
{
    const auto push = [&](Minute to, Reason why) {
        m_trail.push_back({bound, to, m_value[bound], m_head[bound], depth(), why});
        m_head[bound] = static_cast<int>(m_trail.size()) - 1;
        m_value[bound] = to;
    };
    push(value, reason);
    ++m_work;
    if (const StartRanges* ranges = m_ranges[bound / 2]) {
        const Minute rounded = (bound & 1U) == 0 ? ranges->atOrAfter(value) : -ranges->atOrBefore(-value);
        if (rounded > value) {
            push(rounded, {Because::Range, 0});
        }
    }
    if (m_value[bound] + m_value[bound ^ 1U] <= 0) {
        return true;
    }
    // Lower and upper have crossed. That the two exclude each other is no news, so it is told why
    // the one that came last got so far.
    const Minute other = m_value[bound ^ 1U];
    explain(eventOf({bound, 1 - other}), 1 - other, m_conflict);
    m_conflict.push_back({bound ^ 1U, other});
    return false;
}

bool Engine::follow(const ArcRef& arc, Minute value)
{
    const Minute reached = value + arc.plus;
    if (reached <= m_value[arc.to]) {
        return true;
    }
    if (arc.condition == always || holds(conditionLiteral(arc.condition))) {
        return raise(arc.to, reached, {Because::Arc, arc.arc});
    }
    const Literal not_ = !conditionLiteral(arc.condition);
    if (reached + m_value[arc.to ^ 1U] > 0 && !holds(not_)) {
        return raise(not_.bound, not_.least, {Because::ConditionFails, arc.arc});
    }
    return true;
}

bool Engine::followArcs(const Event& event)
{
    for (const std::uint32_t woken : m_awakenedBy[event.bound]) {
        const Arc& arc = m_arcs[woken];
        if (!follow({arc.to, arc.plus, arc.condition, woken}, m_value[arc.from])) {
            return false;
        }
    }
    if (m_value[event.bound] != event.value) {
        return true; // a later event on the same bound says more
    }
    const std::vector<ArcRef>& arcs = m_arcsFrom[event.bound];
    m_work += static_cast<std::int64_t>(arcs.size()) / 8;
    for (std::size_t i = 0; i < arcs.size(); ++i) {
        if (!follow(arcs[i], event.value)) {
            return false;
        }
    }
    return true;
}

bool Engine::propagate()
{
    if (m_hopeless) {
        m_conflict.clear();
        return false;
    }
    while (true) {
        while (m_next < m_trail.size()) {
            const Event event = m_trail[m_next++];
            m_costStale = true;
            if (!followArcs(event) || !followClauses(event)) {
                return false;
            }
        }
        if (!m_costStale || !m_mostCost) {
            return true;
        }
        m_costStale = false;
        if (!followCost()) {
            return false;
        }
    }
}

void Engine::decide(Literal literal)
{
    // What is followed later than at its own level would be lost on the way back.
    assert(isOpen(literal) && isFollowed());
    m_levelStart.push_back(static_cast<int>(m_trail.size()));
    raise(literal.bound, literal.least, {Because::Decision, 0});
}

void Engine::backTo(int level)
{
    if (depth() <= level) {
        return;
    }
    const auto keep = static_cast<std::size_t>(m_levelStart[static_cast<std::size_t>(level)]);
    while (m_trail.size() > keep) {
        const Event& event = m_trail.back();
        m_value[event.bound] = event.before;
        m_head[event.bound] = event.previous;
        m_trail.pop_back();
    }
    m_levelStart.resize(static_cast<std::size_t>(level));
    m_next = std::min(m_next, keep);
    m_costStale = true;
}

} // namespace mend::plan
