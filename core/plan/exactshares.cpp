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
            Share& share = m_shares.emplace_back();
            share.channel = static_cast<int>(c);
            for (const Channel::Demand& demand : channel.demands) {
                share.users.push_back({demand, 0});
            }
        }
    }
}

/// In the plan of earliest starts, the first time that too many use a channel: who they are. The
/// order of begins changes little from one time to the next, so it is kept and put right.
std::vector<int> Exact::crowd(Share& share)
{
    const Channel& channel = m_model.channels[slot(share.channel)];
    for (std::size_t i = 0; i < share.users.size(); ++i) {
        User user = share.users[i];
        user.begin = begin(user.demand.interval);
        std::size_t place = i;
        for (; place > 0 && share.users[place - 1].begin > user.begin; --place) {
            share.users[place] = share.users[place - 1];
        }
        share.users[place] = user;
    }
    m_active.clear();
    int level = 0;
    for (const User& user : share.users) {
        const Minute until = end(user.demand.interval);
        if (until <= user.begin) {
            continue;
        }
        std::size_t kept = 0;
        for (const auto& [still, other] : m_active) {
            if (other > user.begin) {
                m_active[kept++] = {still, other};
            } else {
                level -= still.amount;
            }
        }
        m_active.resize(kept);
        m_active.emplace_back(user.demand, until);
        level += user.demand.amount;
        if (level > channel.capacity) {
            return smallestCrowd(channel.capacity);
        }
    }
    return {};
}

/// As few as are too many, those with the most room to move first.
std::vector<int> Exact::smallestCrowd(int capacity)
{
    const auto room = [this](const Channel::Demand& one) {
        const Anchor& anchor = m_model.intervals[slot(one.interval)].begin;
        return anchor.task == Anchor::settled ? 0 : m_engine.highest(anchor.task) - m_engine.lowest(anchor.task);
    };
    std::stable_sort(m_active.begin(), m_active.end(), [&](const auto& a, const auto& b) {
        return a.first.amount != b.first.amount ? a.first.amount > b.first.amount : room(a.first) > room(b.first);
    });
    std::vector<int> chosen;
    int sum = 0;
    for (const auto& [one, until] : m_active) {
        chosen.push_back(one.interval);
        sum += one.amount;
        if (sum > capacity) {
            break;
        }
    }
    std::sort(chosen.begin(), chosen.end());
    return chosen;
}

std::optional<Literal> Exact::decideShare(bool& contradiction)
{
    for (Share& share : m_shares) {
        const std::vector<int> found = crowd(share);
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
    if (m_toldCrowds.insert(crowd).second && !m_engine.addClause(std::move(any), Engine::Told::Again)) {
        contradiction = true;
    }
    return best;
}

} // namespace mend::plan
