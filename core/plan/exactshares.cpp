#include "core/plan/exact.h"

#include <algorithm>

namespace mend::plan {
void Exact::layShares()
{
    for (std::size_t c = 0; c < m_model.channels.size(); ++c) {
        const Channel& channel = m_model.channels[c];
        int sum = 0;
        int least = channel.capacity;
        for (const Channel::Demand& demand : channel.demands) {
            sum += demand.amount;
            least = std::min(least, demand.amount);
        }
        if (sum > channel.capacity && 2 * least <= channel.capacity) {
            m_shares.push_back(static_cast<int>(c));
        }
    }
}

/// In the plan of earliest starts, the first time that too many use a channel: who they are.
std::vector<int> Exact::crowd(const Channel& channel)
{
    m_sweep.clear();
    for (std::size_t i = 0; i < channel.demands.size(); ++i) {
        const int interval = channel.demands[i].interval;
        const Minute from = begin(interval);
        const Minute to = end(interval);
        if (from < to) {
            m_sweep.emplace_back(from, static_cast<int>(i) + 1);
            m_sweep.emplace_back(to, -static_cast<int>(i) - 1);
        }
    }
    std::sort(m_sweep.begin(), m_sweep.end()); // at one minute, what ends comes first
    int level = 0;
    for (const auto& [minute, which] : m_sweep) {
        const Channel::Demand& demand = channel.demands[slot(std::abs(which) - 1)];
        level += which > 0 ? demand.amount : -demand.amount;
        if (level <= channel.capacity) {
            continue;
        }
        std::vector<Channel::Demand> active;
        for (const Channel::Demand& one : channel.demands) {
            if (begin(one.interval) <= minute && minute < end(one.interval)) {
                active.push_back(one);
            }
        }
        return smallestCrowd(channel, std::move(active));
    }
    return {};
}

/// As few as are too many, those with the most room to move first.
std::vector<int> Exact::smallestCrowd(const Channel& channel, std::vector<Channel::Demand> active) const
{
    const auto room = [this](const Channel::Demand& one) {
        const Anchor& anchor = m_model.intervals[slot(one.interval)].begin;
        return anchor.task == Anchor::settled ? 0 : m_engine.highest(anchor.task) - m_engine.lowest(anchor.task);
    };
    std::stable_sort(active.begin(), active.end(), [&](const Channel::Demand& a, const Channel::Demand& b) {
        return a.amount != b.amount ? a.amount > b.amount : room(a) > room(b);
    });
    std::vector<int> chosen;
    int sum = 0;
    for (const Channel::Demand& one : active) {
        chosen.push_back(one.interval);
        sum += one.amount;
        if (sum > channel.capacity) {
            break;
        }
    }
    std::sort(chosen.begin(), chosen.end());
    return chosen;
}

std::optional<Literal> Exact::decideShare(bool& contradiction)
{
    for (const int share : m_shares) {
        const std::vector<int> found = crowd(m_model.channels[slot(share)]);
        if (!found.empty()) {
            return split(found, contradiction);
        }
    }
    return std::nullopt;
}

/// Two of a crowd must come one after the other: told as a clause, once, and the likeliest
/// order of two of them decided.
std::optional<Literal> Exact::split(const std::vector<int>& crowd, bool& contradiction)
{
    std::vector<Literal> any;
    std::optional<Literal> best;
    double bestActivity = -1.0;
    Minute bestGap = 0;
    for (const int one : crowd) {
        for (const int other : crowd) {
            if (one == other) {
                continue;
            }
            const Order order = orderOf(one, other);
            if (order.kind != Order::Kind::Open) {
                continue;
            }
            any.push_back(order.literal);
            const Minute gap = key(other) - key(one);
            const double activity = gap >= 0 ? m_engine.activity(static_cast<int>(order.literal.bound / 2)) : -0.5;
            const bool better = activity > bestActivity || (activity == bestActivity && gap > bestGap);
            if (m_engine.isOpen(order.literal) && (!best || better)) {
                best = order.literal;
                bestActivity = activity;
                bestGap = gap;
            }
        }
    }
    if (m_toldCrowds.insert(crowd).second && !m_engine.addClause(std::move(any))) {
        contradiction = true;
    }
    return best;
}

} // namespace mend::plan
