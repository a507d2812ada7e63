#include "core/plan/engine.h"

#include <algorithm>
#include <cassert>

namespace mend::plan {

/// The event that first made a literal true; -1 where it has held from the beginning.
int Engine::eventOf(Literal literal) const
{
    int event = m_head[literal.bound];
    if (event < 0 || m_value[literal.bound] < literal.least) {
        return -1;
    }
    while (m_trail[static_cast<std::size_t>(event)].before >= literal.least) {
        event = m_trail[static_cast<std::size_t>(event)].previous;
        if (event < 0) {
            return -1;
        }
    }
    return event;
}

Minute Engine::valueBefore(BoundId bound, int event) const
{
    int head = m_head[bound];
    Minute value = m_value[bound];
    while (head >= event) {
        value = m_trail[static_cast<std::size_t>(head)].before;
        head = m_trail[static_cast<std::size_t>(head)].previous;
    }
    return value;
}

/// Why the bound of an event is at least `least`, as weak as it can be said: less is needed of
/// the reasons where less is needed of the event.
void Engine::explain(int number, Minute least, std::vector<Literal>& because) const
{
    because.clear();
    const Event& event = m_trail[static_cast<std::size_t>(number)];
    switch (event.reason.kind) {
    case Because::Decision:
        return;
    case Because::Arc: {
        const Arc& arc = m_arcs[event.reason.which];
        because.push_back({arc.from, least - arc.plus});
        if (arc.condition != always) {
            because.push_back(conditionLiteral(arc.condition));
        }
        return;
    }
    case Because::ConditionFails: {
        const Arc& arc = m_arcs[event.reason.which];
        const Minute limit = valueBefore(arc.to ^ 1U, number);
        because.push_back({arc.from, 1 - arc.plus - limit});
        because.push_back({arc.to ^ 1U, limit});
        return;
    }
    case Because::Clause: {
        const Clause& clause = m_clauses[event.reason.which];
        for (std::uint32_t i = 1; i < clause.size; ++i) {
            because.push_back(!m_literals[clause.begin + i]);
        }
        return;
    }
    case Because::Range: {
        const StartRanges* ranges = m_ranges[event.bound / 2];
        const Minute edge =
            (event.bound & 1U) == 0 ? ranges->atOrBefore(least - 1) + 1 : 1 - ranges->atOrAfter(1 - least);
        because.push_back({event.bound, std::max(edge, -StartRanges::none + 1)});
        return;
    }
    case Because::Cost:
        explainCost(number, least, because);
        return;
    }
}

void Engine::bumpVariable(BoundId bound)
{
    double& activity = m_activity[bound / 2];
    activity += m_bump;
    if (activity > 1e100) {
        for (double& one : m_activity) {
            one *= 1e-100;
        }
        m_bump *= 1e-100;
    }
}

void Engine::bumpClause(std::uint32_t number)
{
    Clause& clause = m_clauses[number];
    if (!clause.learned) {
        return;
    }
    clause.activity += m_clauseBump;
    if (clause.activity > 1e20F) {
        for (Clause& one : m_clauses) {
            one.activity *= 1e-20F;
        }
        m_clauseBump *= 1e-20F;
    }
}

/// Notes that the lesson needs this literal.
void Engine::mark(Literal literal)
{
    const int number = eventOf(literal);
    if (number < 0) {
        return;
    }
    const auto slot = static_cast<std::size_t>(number);
    const Event& event = m_trail[slot];
    if (event.level == 0) {
        return;
    }
    if (m_marked[slot] != 0) {
        m_need[slot] = std::max(m_need[slot], literal.least);
        return;
    }
    m_marked[slot] = 1;
    m_need[slot] = literal.least;
    m_cleared.push_back(number);
    bumpVariable(event.bound);
    if (event.level == depth()) {
        ++m_markedHere;
    } else {
        m_markedBelow.push_back(number);
    }
}

/// Whether what a marked event says follows from the other marked ones, so that it can be left out.
bool Engine::followsFromMarked(int number)
{
    const Event& event = m_trail[static_cast<std::size_t>(number)];
    if (event.reason.kind == Because::Decision) {
        return false;
    }
    explain(number, m_need[static_cast<std::size_t>(number)], m_because);
    return std::all_of(m_because.begin(), m_because.end(), [&](Literal literal) {
        const int cause = eventOf(literal);
        if (cause < 0 || m_trail[static_cast<std::size_t>(cause)].level == 0) {
            return true;
        }
        return m_marked[static_cast<std::size_t>(cause)] != 0 &&
               m_need[static_cast<std::size_t>(cause)] >= literal.least;
    });
}

int Engine::conflictLevel() const
{
    int level = 0;
    for (const Literal literal : m_conflict) {
        const int event = eventOf(literal);
        level = std::max(level, event < 0 ? 0 : m_trail[static_cast<std::size_t>(event)].level);
    }
    return level;
}

bool Engine::learn()
{
    ++m_conflicts;
    if (m_hopeless) {
        return false;
    }
    backTo(conflictLevel());
    if (depth() == 0) {
        m_hopeless = true;
        return false;
    }
    m_marked.resize(m_trail.size(), 0);
    m_need.resize(m_trail.size(), 0);
    m_markedBelow.clear();
    m_cleared.clear();
    m_markedHere = 0;
    for (const Literal literal : m_conflict) {
        mark(literal);
    }
    // Back along the trail until one single event of this level stands for all the others.
    int number = static_cast<int>(m_trail.size()) - 1;
    std::vector<Literal> because;
    while (true) {
        while (m_marked[static_cast<std::size_t>(number)] == 0) {
            --number;
        }
        if (m_markedHere == 1) {
            break;
        }
        const Reason reason = m_trail[static_cast<std::size_t>(number)].reason;
        if (reason.kind == Because::Clause) {
            bumpClause(reason.which);
        }
        explain(number, m_need[static_cast<std::size_t>(number)], because);
        m_marked[static_cast<std::size_t>(number)] = 0;
        --m_markedHere;
        for (const Literal literal : because) {
            mark(literal);
        }
        --number;
    }
    const Literal turning{m_trail[static_cast<std::size_t>(number)].bound, m_need[static_cast<std::size_t>(number)]};
    std::vector<Literal> lesson{!turning};
    int level = 0;
    int levelAt = 0;
    std::sort(m_markedBelow.begin(), m_markedBelow.end(), std::greater<>());
    for (const int below : m_markedBelow) {
        const Event& event = m_trail[static_cast<std::size_t>(below)];
        const Literal literal{event.bound, m_need[static_cast<std::size_t>(below)]};
        const auto saysMore = [&](Literal one) { return (!one).bound == literal.bound; };
        if (std::any_of(lesson.begin(), lesson.end(), saysMore) || followsFromMarked(below)) {
            continue;
        }
        if (event.level > level) {
            level = event.level;
            levelAt = static_cast<int>(lesson.size());
        }
        lesson.push_back(!literal);
    }
    for (const int cleared : m_cleared) {
        m_marked[static_cast<std::size_t>(cleared)] = 0;
    }
    if (lesson.size() > 1) {
        std::swap(lesson[1], lesson[static_cast<std::size_t>(levelAt)]);
    }
    std::vector<int> levels;
    for (const Literal literal : lesson) {
        const int event = eventOf(!literal);
        levels.push_back(event < 0 ? 0 : m_trail[static_cast<std::size_t>(event)].level);
    }
    std::sort(levels.begin(), levels.end());
    const auto distinct = std::unique(levels.begin(), levels.end()) - levels.begin();
    backTo(level);
    m_bump /= 0.95;
    m_clauseBump /= 0.999F;
    if (lesson.size() == 1) {
        if (!raise(lesson[0].bound, lesson[0].least, {Because::Decision, 0})) {
            m_hopeless = true;
            return false;
        }
        return true;
    }
    const std::uint32_t clause = store(lesson, true);
    m_clauses[clause].distinctLevels = static_cast<std::uint32_t>(distinct);
    return raise(lesson[0].bound, lesson[0].least, {Because::Clause, clause}) || learn();
}

} // namespace mend::plan
