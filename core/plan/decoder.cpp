#include "core/plan/decoder.h"

#include <algorithm>
#include <functional>

namespace mend::plan {
namespace {

constexpr int mostTries = 400; ///< moves of heads before a block counts as stuck

} // namespace

Genes genesOf(const std::vector<Block>& blocks, std::span<const Minute> start)
{
    std::vector<std::pair<Minute, int>> order;
    for (std::size_t b = 0; b < blocks.size(); ++b) {
        Minute first = StartRanges::none;
        for (const int task : blocks[b].tasks) {
            first = std::min(first, start[slot(task)]);
        }
        order.emplace_back(first, static_cast<int>(b));
    }
    std::sort(order.begin(), order.end());
    Genes genes{std::vector<int>(blocks.size(), 0), std::vector<Minute>(blocks.size(), 0)};
    for (std::size_t i = 0; i < order.size(); ++i) {
        genes.rank[slot(order[i].second)] = static_cast<int>(i);
    }
    return genes;
}

Decoder::Decoder(const Model& model, const std::vector<Block>& blocks)
    : m_model(model), m_blocks(blocks), m_base(model.now), m_span(std::min(longestSpan, model.horizon - model.now)),
      m_lower(model.tasks.size()), m_upper(model.tasks.size()), m_ownInterval(model.tasks.size(), -1),
      m_waits(model.tasks.size()), m_start(model.tasks.size(), 0), m_placed(model.tasks.size(), 0),
      m_least(model.tasks.size(), 0), m_pending(blocks.size(), 0)
{
    for (const Difference& difference : model.differences) {
        m_lower[slot(difference.to)].push_back({difference.from, difference.plus});
        m_upper[slot(difference.from)].push_back({difference.to, difference.plus});
    }
    layChannels();
    laySettled();
}

void Decoder::layChannels()
{
    m_asks.resize(m_model.intervals.size());
    m_adds.resize(m_model.intervals.size());
    const auto addChannel = [this] {
        m_level.emplace_back(slot(m_span), std::uint16_t{0});
        return static_cast<int>(m_level.size()) - 1;
    };
    for (const Channel& channel : m_model.channels) {
        if (channel.demands.empty()) {
            continue;
        }
        const int number = addChannel();
        for (const Channel::Demand& demand : channel.demands) {
            m_asks[slot(demand.interval)].push_back({number, demand.amount, channel.capacity - demand.amount});
            m_adds[slot(demand.interval)].push_back({number, demand.amount, 0});
        }
    }
    // Each group of intervals with the same enemies has a channel that its enemies find free or not.
    std::vector<std::vector<int>> enemies(m_model.intervals.size());
    for (const auto& [a, b] : m_model.exclusive) {
        enemies[slot(a)].push_back(b);
        enemies[slot(b)].push_back(a);
    }
    std::vector<std::pair<std::vector<int>, int>> groups;
    std::vector<int> groupOf(m_model.intervals.size(), -1);
    for (std::size_t i = 0; i < enemies.size(); ++i) {
        if (enemies[i].empty()) {
            continue;
        }
        auto group = std::find_if(groups.begin(), groups.end(), [&](const auto& g) { return g.first == enemies[i]; });
        if (group == groups.end()) {
            group = groups.insert(groups.end(), {enemies[i], addChannel()});
        }
        groupOf[i] = group->second;
        m_adds[i].push_back({group->second, 1, 0});
    }
    for (std::size_t i = 0; i < enemies.size(); ++i) {
        std::vector<int> asked;
        for (const int enemy : enemies[i]) {
            asked.push_back(groupOf[slot(enemy)]);
        }
        std::sort(asked.begin(), asked.end());
        asked.erase(std::unique(asked.begin(), asked.end()), asked.end());
        for (const int channel : asked) {
            m_asks[i].push_back({channel, 1, 0});
        }
    }
}

void Decoder::laySettled()
{
    for (std::size_t i = 0; i < m_model.intervals.size(); ++i) {
        const Interval& one = m_model.intervals[i];
        const int interval = static_cast<int>(i);
        if (one.isSettled()) {
            occupy(interval, one.begin.plus, one.end.plus, 1);
        } else if (one.begin.task == one.end.task && one.begin.plus == 0) {
            m_ownInterval[slot(one.begin.task)] = interval;
        } else {
            if (one.begin.task != Anchor::settled) {
                m_waits[slot(one.begin.task)].push_back(interval);
            }
            if (one.end.task != Anchor::settled) {
                m_waits[slot(one.end.task)].push_back(interval);
            }
        }
    }
}

void Decoder::occupy(int interval, Minute from, Minute to, int sign)
{
    const Minute first = std::max(0, from - m_base);
    const Minute last = std::min(m_span, to - m_base);
    for (const Hold& hold : m_adds[slot(interval)]) {
        std::uint16_t* level = m_level[slot(hold.channel)].data();
        const auto change = static_cast<std::uint16_t>(sign * hold.amount);
        for (Minute m = first; m < last; ++m) {
            level[m] = static_cast<std::uint16_t>(level[m] + change);
        }
    }
}

Minute Decoder::lastBlocked(int interval, Minute from, Minute to) const
{
    Minute last = -1;
    const Minute first = std::max(0, from - m_base);
    for (const Hold& hold : m_asks[slot(interval)]) {
        const std::uint16_t* level = m_level[slot(hold.channel)].data();
        for (Minute m = std::min(m_span, to - m_base) - 1; m >= first && m > last; --m) {
            if (static_cast<int>(level[m]) > hold.most) {
                last = m;
            }
        }
    }
    return last < 0 ? -1 : last + m_base;
}

Minute Decoder::firstFit(int task, Minute from) const
{
    const Task& what = m_model.tasks[slot(task)];
    Minute at = what.mayStart.atOrAfter(from);
    const int interval = m_ownInterval[slot(task)];
    while (at != StartRanges::none) {
        if (at + what.duration > m_base + m_span) {
            return StartRanges::none;
        }
        const Minute blocked = interval < 0 ? -1 : lastBlocked(interval, at, at + what.duration);
        if (blocked < 0) {
            return at;
        }
        at = what.mayStart.atOrAfter(blocked + 1);
    }
    return at;
}

void Decoder::unplace(int task)
{
    holdWaits(task, -1, m_waits[slot(task)].size());
    if (m_ownInterval[slot(task)] >= 0) {
        const Minute at = m_start[slot(task)];
        occupy(m_ownInterval[slot(task)], at, at + m_model.tasks[slot(task)].duration, -1);
    }
    m_placed[slot(task)] = 0;
}

bool Decoder::stands(Anchor anchor) const { return anchor.task == Anchor::settled || m_placed[slot(anchor.task)] != 0; }

/// Takes up (sign 1) or gives back (-1) what the first `count` waits of a task hold.
void Decoder::holdWaits(int task, int sign, std::size_t count)
{
    for (std::size_t i = 0; i < count; ++i) {
        const int wait = m_waits[slot(task)][i];
        const Interval& one = m_model.intervals[slot(wait)];
        if (stands(one.begin) && stands(one.end)) {
            occupy(wait, one.begin.at(m_start), one.end.at(m_start), sign);
        }
    }
}

/// Back to before `task` of the block was placed; it now starts at `notBefore` or later. -1: it
/// is no task of this block, so nothing can be moved.
int Decoder::backTo(const Block& block, int placed, int task, Minute notBefore)
{
    int position = placed - 1;
    while (position >= 0 && block.tasks[slot(position)] != task) {
        --position;
    }
    if (position < 0) {
        return -1;
    }
    for (int i = placed - 1; i >= position; --i) {
        unplace(block.tasks[slot(i)]);
    }
    m_least[slot(task)] = std::max(m_least[slot(task)], notBefore);
    return position;
}

/// Places one task; what came before it in the block may have to move on. Gives the position
/// to go on from, -1 if it cannot be placed.
int Decoder::placeNext(const Block& block, int position)
{
    const int task = block.tasks[slot(position)];
    Minute least = m_least[slot(task)];
    for (const Link& link : m_lower[slot(task)]) {
        if (m_placed[slot(link.task)] != 0) {
            least = std::max(least, m_start[slot(link.task)] + link.plus);
        }
    }
    const Minute at = firstFit(task, least);
    if (at == StartRanges::none) {
        return -1;
    }
    for (const Link& link : m_upper[slot(task)]) {
        if (m_placed[slot(link.task)] != 0 && m_start[slot(link.task)] < at + link.plus) {
            return backTo(block, position, link.task, at + link.plus);
        }
    }
    m_start[slot(task)] = at;
    m_placed[slot(task)] = 1;
    // Each wait is held before the next is looked at: two that end here may want the same slot.
    const std::vector<int>& waits = m_waits[slot(task)];
    for (std::size_t i = 0; i < waits.size(); ++i) {
        const Interval& one = m_model.intervals[slot(waits[i])];
        if (!stands(one.begin) || !stands(one.end)) {
            continue;
        }
        const Minute blocked = lastBlocked(waits[i], one.begin.at(m_start), one.end.at(m_start));
        if (blocked < 0) {
            occupy(waits[i], one.begin.at(m_start), one.end.at(m_start), 1);
            continue;
        }
        holdWaits(task, -1, i);
        m_placed[slot(task)] = 0;
        const Minute begin = blocked + 1 - one.begin.plus;
        if (one.begin.task == task) {
            m_least[slot(task)] = begin;
            return position;
        }
        return one.begin.task == Anchor::settled ? -1 : backTo(block, position, one.begin.task, begin);
    }
    if (m_ownInterval[slot(task)] >= 0) {
        occupy(m_ownInterval[slot(task)], at, at + m_model.tasks[slot(task)].duration, 1);
    }
    return position + 1;
}

bool Decoder::placeBlock(const Block& block, Minute notBefore)
{
    for (const int task : block.tasks) {
        m_least[slot(task)] = m_floor.empty() ? 0 : m_floor[slot(task)];
    }
    Minute& head = m_least[slot(block.tasks.front())];
    head = std::max(head, notBefore);
    int position = 0;
    for (int tries = 0; tries < mostTries; ++tries) {
        while (position >= 0 && slot(position) < block.tasks.size()) {
            const int next = placeNext(block, position);
            if (next != position + 1) {
                position = next;
                break;
            }
            position = next;
        }
        if (position < 0 || slot(position) == block.tasks.size()) {
            break;
        }
    }
    return position >= 0 && slot(position) == block.tasks.size();
}

bool Decoder::decode(const Genes& genes)
{
    std::fill(m_placed.begin(), m_placed.end(), 0);
    m_ready.clear();
    m_stuck = -1;
    const auto later = std::greater<>();
    for (std::size_t b = 0; b < m_blocks.size(); ++b) {
        m_pending[b] = static_cast<int>(m_blocks[b].before.size());
        if (m_pending[b] == 0) {
            m_ready.emplace_back(genes.rank[b], static_cast<int>(b));
        }
    }
    std::make_heap(m_ready.begin(), m_ready.end(), later);
    std::size_t done = 0;
    for (; !m_ready.empty() && m_stuck < 0; ++done) {
        std::pop_heap(m_ready.begin(), m_ready.end(), later);
        const int block = m_ready.back().second;
        m_ready.pop_back();
        if (!placeBlock(m_blocks[slot(block)], genes.notBefore[slot(block)])) {
            m_stuck = block;
            break;
        }
        for (const int next : m_blocks[slot(block)].after) {
            if (--m_pending[slot(next)] == 0) {
                m_ready.emplace_back(genes.rank[slot(next)], next);
                std::push_heap(m_ready.begin(), m_ready.end(), later);
            }
        }
    }
    for (std::size_t task = 0; task < m_placed.size(); ++task) {
        if (m_placed[task] != 0) {
            unplace(static_cast<int>(task));
        }
    }
    return done == m_blocks.size();
}

} // namespace mend::plan
