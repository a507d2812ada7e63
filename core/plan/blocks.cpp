#include "core/plan/blocks.h"

#include <algorithm>
#include <set>

namespace mend::plan {
namespace {

/// Rings of arrows become one (Tarjan's strongly connected components).
class Rings {
public:
    explicit Rings(const std::vector<std::vector<int>>& next)
        : ring(next.size(), -1), m_next(next), m_seen(next.size(), -1), m_low(next.size(), 0)
    {
        for (std::size_t i = 0; i < next.size(); ++i) {
            if (m_seen[i] < 0) {
                visit(static_cast<int>(i));
            }
        }
    }

    std::vector<int> ring;
    int count = 0;

private:
    void visit(int node)
    {
        const auto at = static_cast<std::size_t>(node);
        m_seen[at] = m_low[at] = m_time++;
        m_stack.push_back(node);
        for (const int to : m_next[at]) {
            const auto next = static_cast<std::size_t>(to);
            if (m_seen[next] < 0) {
                visit(to);
                m_low[at] = std::min(m_low[at], m_low[next]);
            } else if (ring[next] < 0) {
                m_low[at] = std::min(m_low[at], m_seen[next]);
            }
        }
        if (m_low[at] != m_seen[at]) {
            return;
        }
        for (int member = -1; member != node;) {
            member = m_stack.back();
            m_stack.pop_back();
            ring[static_cast<std::size_t>(member)] = count;
        }
        ++count;
    }

    const std::vector<std::vector<int>>& m_next;
    std::vector<int> m_seen;
    std::vector<int> m_low;
    std::vector<int> m_stack;
    int m_time = 0;
};

} // namespace

std::optional<std::vector<Block>> blocksOf(const Model& model)
{
    const std::vector<Minute> earliest = earliestAlone(model);
    if (earliest.size() != model.tasks.size()) {
        return std::nullopt;
    }
    std::vector<std::vector<int>> next(model.tasks.size());
    for (const Difference& difference : model.differences) {
        next[static_cast<std::size_t>(difference.from)].push_back(difference.to);
    }
    for (const Interval& interval : model.intervals) {
        if (interval.begin.task != Anchor::settled && interval.end.task != Anchor::settled) {
            next[static_cast<std::size_t>(interval.end.task)].push_back(interval.begin.task);
        }
    }
    const Rings rings(next);
    std::vector<Block> blocks(static_cast<std::size_t>(rings.count));
    for (std::size_t i = 0; i < model.tasks.size(); ++i) {
        blocks[static_cast<std::size_t>(rings.ring[i])].tasks.push_back(static_cast<int>(i));
    }
    for (Block& block : blocks) {
        std::stable_sort(block.tasks.begin(), block.tasks.end(), [&](int a, int b) {
            return earliest[static_cast<std::size_t>(a)] < earliest[static_cast<std::size_t>(b)];
        });
        block.piece = model.tasks[static_cast<std::size_t>(block.tasks.front())].piece;
        block.earliest = earliest[static_cast<std::size_t>(block.tasks.front())];
    }
    std::set<std::pair<int, int>> told;
    for (const Difference& difference : model.differences) {
        const int from = rings.ring[static_cast<std::size_t>(difference.from)];
        const int to = rings.ring[static_cast<std::size_t>(difference.to)];
        if (from != to && told.emplace(from, to).second) {
            blocks[static_cast<std::size_t>(from)].after.push_back(to);
            blocks[static_cast<std::size_t>(to)].before.push_back(from);
        }
    }
    return blocks;
}

} // namespace mend::plan
