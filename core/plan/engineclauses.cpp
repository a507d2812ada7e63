#include "core/plan/engine.h"

#include <algorithm>

namespace mend::plan {

std::uint32_t Engine::store(std::span<const Literal> literals, bool learned)
{
    Clause clause;
    clause.begin = static_cast<std::uint32_t>(m_literals.size());
    clause.size = static_cast<std::uint32_t>(literals.size());
    clause.learned = learned;
    clause.activity = learned ? m_clauseBump : 0.0F;
    m_literals.insert(m_literals.end(), literals.begin(), literals.end());
    m_clauses.push_back(clause);
    m_learned += learned ? 1 : 0;
    const auto number = static_cast<std::uint32_t>(m_clauses.size() - 1);
    watch(number, 0);
    watch(number, 1);
    return number;
}

/// A literal can only fail when its opposite bound grows, so that is where it is watched.
void Engine::watch(std::uint32_t number, std::uint32_t position)
{
    const Clause& clause = m_clauses[number];
    const Literal literal = m_literals[clause.begin + position];
    const Literal other = m_literals[clause.begin + 1 - position];
    insert(literal.bound ^ 1U, {1 - literal.least, number, other});
}

void Engine::insert(BoundId bound, const Watch& watch)
{
    std::vector<Watch>& watches = m_watches[bound];
    const auto place = std::partition_point(watches.begin(), watches.end(),
                                            [&](const Watch& one) { return one.least <= watch.least; });
    watches.insert(place, watch);
}

bool Engine::addClause(std::vector<Literal> literals, Told told)
{
    // Two statements on one bound are as good as the weaker of them.
    std::sort(literals.begin(), literals.end(),
              [](Literal a, Literal b) { return std::pair(a.bound, a.least) < std::pair(b.bound, b.least); });
    literals.erase(
        std::unique(literals.begin(), literals.end(), [](Literal a, Literal b) { return a.bound == b.bound; }),
        literals.end());
    // The two that fail last, or not at all, are watched.
    const auto lastness = [this](Literal literal) {
        return fails(literal) ? std::max(0, eventOf(!literal)) : static_cast<int>(m_trail.size()) + 1;
    };
    std::stable_sort(literals.begin(), literals.end(), [&](Literal a, Literal b) { return lastness(a) > lastness(b); });
    if (literals.empty()) {
        m_hopeless = true;
        return false;
    }
    const bool all = fails(literals.front());
    const bool unit = !all && !holds(literals.front()) && (literals.size() == 1 || fails(literals[1]));
    Reason reason{Because::Decision, 0};
    if (literals.size() > 1) {
        reason = {Because::Clause, store(literals, false)};
        m_clauses.back().again = told == Told::Again;
    } else if (depth() > 0) {
        backTo(0);
        return addClause(std::move(literals));
    }
    if (all) {
        m_conflict.clear();
        for (const Literal literal : literals) {
            m_conflict.push_back(!literal);
        }
        m_hopeless = m_hopeless || depth() == 0;
        return false;
    }
    return !unit || raise(literals.front().bound, literals.front().least, reason);
}

bool Engine::followClauses(const Event& event)
{
    std::vector<Watch>& watches = m_watches[event.bound];
    // Only what fails by this event: what failed before was dealt with then.
    const auto first = std::partition_point(watches.begin(), watches.end(),
                                            [&](const Watch& one) { return one.least <= event.before; });
    std::size_t kept = static_cast<std::size_t>(first - watches.begin());
    std::size_t i = kept;
    bool good = true;
    for (; good && i < watches.size() && watches[i].least <= event.value; ++i) {
        const Watch seen = watches[i];
        ++m_work;
        if (holds(seen.blocker)) {
            watches[kept++] = seen;
            continue;
        }
        const Clause& clause = m_clauses[seen.clause];
        Literal* literals = &m_literals[clause.begin];
        const Literal failed{event.bound ^ 1U, 1 - seen.least};
        if (literals[0] == failed) {
            std::swap(literals[0], literals[1]);
        }
        if (holds(literals[0])) {
            watches[kept++] = {seen.least, seen.clause, literals[0]};
            continue;
        }
        std::uint32_t next = 2;
        while (next < clause.size && fails(literals[next])) {
            ++next;
        }
        if (next < clause.size) {
            std::swap(literals[1], literals[next]);
            // Never the list being walked: that would be this bound, whose literals here have failed.
            insert(literals[1].bound ^ 1U, {1 - literals[1].least, seen.clause, literals[0]});
            continue;
        }
        watches[kept++] = seen;
        if (fails(literals[0])) {
            m_conflict.clear();
            for (std::uint32_t k = 0; k < clause.size; ++k) {
                m_conflict.push_back(!literals[k]);
            }
            bumpClause(seen.clause);
            good = false;
        } else {
            good = raise(literals[0].bound, literals[0].least, {Because::Clause, seen.clause});
        }
    }
    watches.erase(watches.begin() + static_cast<std::ptrdiff_t>(kept),
                  watches.begin() + static_cast<std::ptrdiff_t>(i));
    return good;
}

void Engine::forget()
{
    if (depth() > 0) {
        return;
    }
    std::vector<float> activities;
    for (const Clause& clause : m_clauses) {
        if (clause.learned && clause.distinctLevels > 2) {
            activities.push_back(clause.activity);
        }
    }
    float limit = 0.0F;
    if (!activities.empty()) {
        const auto middle = activities.begin() + static_cast<std::ptrdiff_t>(activities.size() / 2);
        std::nth_element(activities.begin(), middle, activities.end());
        limit = *middle;
    }
    dropClauses([limit](const Clause& clause) {
        return clause.learned && clause.distinctLevels > 2 && clause.activity < limit;
    });
}

void Engine::forgetWhatCanBeTold()
{
    if (depth() == 0) {
        dropClauses([](const Clause& clause) { return clause.again; });
    }
}

template <class Drop> void Engine::dropClauses(const Drop& drop)
{
    std::vector<Literal> literals;
    std::vector<Clause> clauses;
    m_learned = 0;
    for (const Clause& clause : m_clauses) {
        const auto begin = m_literals.begin() + clause.begin;
        const bool settled = std::any_of(begin, begin + clause.size, [&](Literal one) { return holds(one); });
        if (settled || drop(clause)) {
            continue;
        }
        Clause moved = clause;
        moved.begin = static_cast<std::uint32_t>(literals.size());
        literals.insert(literals.end(), begin, begin + clause.size);
        // What has failed at the root never comes back; the watched two stay in front.
        const auto first = literals.begin() + moved.begin;
        const auto end = std::remove_if(first + 2, literals.end(), [&](Literal one) { return fails(one); });
        literals.erase(end, literals.end());
        moved.size = static_cast<std::uint32_t>(literals.size()) - moved.begin;
        m_learned += clause.learned ? 1 : 0;
        clauses.push_back(moved);
    }
    m_literals = std::move(literals);
    m_clauses = std::move(clauses);
    rebuildWatches();
}

void Engine::rebuildWatches()
{
    for (std::vector<Watch>& watches : m_watches) {
        watches.clear();
    }
    for (std::uint32_t number = 0; number < m_clauses.size(); ++number) {
        watch(number, 0);
        watch(number, 1);
    }
}

} // namespace mend::plan
