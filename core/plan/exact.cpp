#include "core/plan/exact.h"

#include <algorithm>

namespace mend::plan {
namespace {

constexpr std::int64_t firstRestart = 100; ///< conflicts
constexpr std::size_t mostCrowds = 50'000; ///< told at a time, so that memory stays bounded

/// 1 1 2 1 1 2 4 ...: how long to go on before starting over (Luby, Sinclair and Zuckerman,
/// "Optimal speedup of Las Vegas algorithms", Information Processing Letters 47, 1993).
std::int64_t lubyTerm(int index)
{
    int size = 1;
    int power = 0;
    while (size < index + 1) {
        size = 2 * size + 1;
        ++power;
    }
    while (size - 1 != index) {
        size = (size - 1) / 2;
        --power;
        index %= size;
    }
    return std::int64_t{1} << power;
}

} // namespace

CostScale CostScale::of(const Model& model)
{
    const auto pieces = static_cast<std::int64_t>(model.pieces.size());
    const std::int64_t flow = pieces * (std::int64_t{model.horizon} - model.now + 1) + 1;
    std::int64_t weight = 1;
    std::int64_t late = 1;
    for (const Due& due : model.pieces) {
        weight += due.weight;
        late = std::max(late, std::int64_t{model.horizon} - due.promised);
    }
    // Where both together would overflow, promises are all that counts.
    const bool fits = weight < (std::int64_t{1} << 61) / flow / late;
    return fits ? CostScale{flow, 1} : promises();
}

std::int64_t costOf(const Model& model, const CostScale& scale, std::span<const Minute> start)
{
    std::int64_t cost = 0;
    for (const Due& due : model.pieces) {
        if (due.tasks.empty()) {
            continue; // nothing to be done about it
        }
        Minute done = due.settledEnd;
        for (const int task : due.tasks) {
            done = std::max(done, start[slot(task)] + model.tasks[slot(task)].duration);
        }
        cost += CostTerm{0, scale.each, scale.late * due.weight, due.promised}.at(done);
    }
    return cost;
}

Exact::Exact(const Model& model, CostScale scale) : m_model(model), m_scale(scale)
{
    layTasks();
    layPairs();
    layShares();
    layCost();
    if (model.contradictory) {
        m_engine.addClause({});
    }
}

void Exact::layTasks()
{
    for (const Task& task : m_model.tasks) {
        const StartRanges& ranges = task.mayStart;
        const bool empty = ranges.isEmpty();
        m_engine.addVariable(empty ? 1 : ranges.first(), empty ? 0 : ranges.last(),
                             ranges.ranges().size() > 1 ? &ranges : nullptr);
    }
    for (const Difference& difference : m_model.differences) {
        m_engine.addDifference(difference.from, difference.to, difference.plus);
    }
}

void Exact::layCost()
{
    for (const Due& due : m_model.pieces) {
        if (due.tasks.empty()) {
            continue;
        }
        Minute first = std::max(due.settledEnd, m_model.now);
        const int done = m_engine.addVariable(first, std::max(first, m_model.horizon));
        for (const int task : due.tasks) {
            m_engine.addDifference(task, done, m_model.tasks[slot(task)].duration);
        }
        m_engine.addCostTerm({done, m_scale.each, m_scale.late * due.weight, due.promised});
    }
}

void Exact::limitCost(std::int64_t most)
{
    m_engine.backToRoot();
    m_engine.limitCost(most);
}

Minute Exact::begin(int interval) const
{
    const Anchor& anchor = m_model.intervals[slot(interval)].begin;
    return anchor.task == Anchor::settled ? anchor.plus : m_engine.lowest(anchor.task) + anchor.plus;
}

Minute Exact::end(int interval) const
{
    const Anchor& anchor = m_model.intervals[slot(interval)].end;
    return anchor.task == Anchor::settled ? anchor.plus : m_engine.lowest(anchor.task) + anchor.plus;
}

/// Who should go first: as in the plan to follow, else the one that must start soonest.
Minute Exact::key(int interval) const
{
    const Anchor& anchor = m_model.intervals[slot(interval)].begin;
    if (anchor.task == Anchor::settled) {
        return anchor.plus;
    }
    return (m_guide.empty() ? m_engine.highest(anchor.task) : m_guide[slot(anchor.task)]) + anchor.plus;
}

/// Of all pairs in each other's way the one that conflicts have turned on most, lately.
std::optional<Literal> Exact::decidePair()
{
    const Pair* best = nullptr;
    double bestActivity = 0.0;
    Minute bestBegin = 0;
    for (const Pair& pair : m_pairs) {
        if (!m_engine.isOpen(isTrue(pair.choice))) {
            continue;
        }
        const Minute later = std::max(begin(pair.one), begin(pair.other));
        if (later >= std::min(end(pair.one), end(pair.other))) {
            continue;
        }
        const double activity = m_engine.activity(pair.choice);
        if (best == nullptr || activity > bestActivity || (activity == bestActivity && later < bestBegin)) {
            best = &pair;
            bestActivity = activity;
            bestBegin = later;
        }
    }
    if (best == nullptr) {
        return decideTied();
    }
    const Literal first = isTrue(best->choice);
    const auto keys = std::pair(key(best->one), key(best->other));
    const bool straight = keys.first != keys.second ? keys.first < keys.second : begin(best->one) <= begin(best->other);
    return straight ? first : !first;
}

std::optional<Literal> Exact::decideTied() const
{
    for (const Tied& tied : m_tied) {
        if (!overlap(tied.one, tied.other)) {
            continue;
        }
        for (const Literal order : tied.orders) {
            if (m_engine.isOpen(order)) {
                return order;
            }
        }
    }
    return std::nullopt;
}

Exact::Verdict Exact::conclude()
{
    m_start.clear();
    for (std::size_t i = 0; i < m_model.tasks.size(); ++i) {
        m_start.push_back(m_engine.lowest(static_cast<int>(i)));
    }
    m_engine.backToRoot();
    return Verdict::Found;
}

Exact::Verdict Exact::search(std::int64_t budget, const Enough& enough)
{
    const std::int64_t until = m_engine.work() + budget;
    if (m_restartAt <= m_engine.conflicts()) {
        m_restartAt = m_engine.conflicts() + firstRestart;
    }
    int rounds = 0;
    while (true) {
        if (!m_engine.propagate()) {
            if (!m_engine.learn()) {
                return Verdict::Exhausted;
            }
            continue;
        }
        if (m_engine.work() > until || ((++rounds & 15) == 0 && enough && enough())) {
            m_engine.backToRoot();
            return Verdict::Open;
        }
        if (m_engine.conflicts() >= m_restartAt) {
            m_restartAt = m_engine.conflicts() + firstRestart * lubyTerm(++m_restarts);
            m_engine.backToRoot();
            if (m_engine.learnedCount() > m_mostLearned) {
                m_engine.forget();
                m_mostLearned += m_mostLearned / 50;
            }
            if (m_toldCrowds.size() > mostCrowds) {
                m_engine.forgetWhatCanBeTold();
                m_toldCrowds.clear();
            }
            continue;
        }
        bool contradiction = false;
        std::optional<Literal> decision = decidePair();
        if (!decision) {
            decision = decideShare(contradiction);
        }
        if (contradiction) {
            if (!m_engine.learn()) {
                return Verdict::Exhausted;
            }
        } else if (!m_engine.isFollowed()) {
            continue; // a new order or clause has settled something: first what follows from that
        } else if (decision) {
            m_engine.decide(*decision);
        } else {
            return conclude();
        }
    }
}

} // namespace mend::plan
