#include "core/plan/exact.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace mend::plan {
namespace {

constexpr Minute unrelated = std::numeric_limits<Minute>::min() / 2;
constexpr std::size_t largestRelated = 120; ///< tasks; beyond, only direct lags are looked at

/// Which tasks hang together by lags.
std::vector<std::vector<int>> relatedTasks(const Model& model)
{
    std::vector<int> root(model.tasks.size());
    std::iota(root.begin(), root.end(), 0);
    const auto find = [&](int task) {
        while (root[slot(task)] != task) {
            task = root[slot(task)] = root[slot(root[slot(task)])];
        }
        return task;
    };
    for (const Difference& difference : model.differences) {
        root[slot(find(difference.from))] = find(difference.to);
    }
    std::vector<std::vector<int>> related(model.tasks.size());
    for (std::size_t i = 0; i < model.tasks.size(); ++i) {
        related[slot(find(static_cast<int>(i)))].push_back(static_cast<int>(i));
    }
    return related;
}

} // namespace

/// Longest ways by lags (Floyd and Warshall), among tasks that hang together.
void Exact::measureDistances()
{
    const std::size_t count = m_model.tasks.size();
    m_distance.assign(count, std::vector<Minute>(count, unrelated));
    for (std::size_t i = 0; i < count; ++i) {
        m_distance[i][i] = 0;
    }
    for (const Difference& difference : m_model.differences) {
        Minute& distance = m_distance[slot(difference.from)][slot(difference.to)];
        distance = std::max(distance, difference.plus);
    }
    for (const std::vector<int>& group : relatedTasks(m_model)) {
        if (group.size() > largestRelated) {
            continue;
        }
        for (const int via : group) {
            for (const int from : group) {
                const Minute first = m_distance[slot(from)][slot(via)];
                if (first == unrelated) {
                    continue;
                }
                for (const int to : group) {
                    const Minute second = m_distance[slot(via)][slot(to)];
                    if (second != unrelated && first + second > -2 * farthest) { // less says nothing
                        Minute& distance = m_distance[slot(from)][slot(to)];
                        distance = std::min(farthest, std::max(distance, first + second));
                    }
                }
            }
        }
    }
}

/// Whether lags alone let `one` always end before `other` begins.
bool Exact::isOrdered(int one, int other) const
{
    const Anchor& end = m_model.intervals[slot(one)].end;
    const Anchor& begin = m_model.intervals[slot(other)].begin;
    if (end.task == Anchor::settled || begin.task == Anchor::settled) {
        return false;
    }
    const Minute distance = m_distance[slot(end.task)][slot(begin.task)];
    return distance != unrelated && distance + begin.plus >= end.plus;
}

void Exact::layPairs()
{
    measureDistances();
    for (const Channel& channel : m_model.channels) {
        for (std::size_t i = 0; i < channel.demands.size(); ++i) {
            for (std::size_t k = i + 1; k < channel.demands.size(); ++k) {
                if (channel.demands[i].amount + channel.demands[k].amount > channel.capacity) {
                    layPair(channel.demands[i].interval, channel.demands[k].interval);
                }
            }
        }
    }
    for (const auto& [one, other] : m_model.exclusive) {
        layPair(one, other);
    }
}

void Exact::layPair(int one, int other)
{
    if (one == other || isOrdered(one, other) || isOrdered(other, one) || m_orders.count({one, other}) != 0) {
        return;
    }
    const Order straight = settledOrder(one, other);
    const Order turned = settledOrder(other, one);
    if (straight.kind == Order::Kind::Always || turned.kind == Order::Kind::Always) {
        return;
    }
    if (straight.kind == Order::Kind::Chosen && turned.kind == Order::Kind::Chosen) {
        const Interval& a = m_model.intervals[slot(one)];
        const Interval& b = m_model.intervals[slot(other)];
        const int choice = m_engine.addChoice();
        m_pairs.push_back({one, other, choice});
        m_orders[{one, other}] = isTrue(choice);
        m_orders[{other, one}] = !isTrue(choice);
        m_engine.addDifference(a.end.task, b.begin.task, a.end.plus - b.begin.plus, isTrue(choice));
        m_engine.addDifference(b.end.task, a.begin.task, b.end.plus - a.begin.plus, !isTrue(choice));
        return;
    }
    const Order first = orderOf(one, other);
    const Order second = orderOf(other, one);
    std::vector<Literal> either;
    for (const Order& order : {first, second}) {
        if (order.kind == Order::Kind::Open) {
            either.push_back(order.literal);
        }
    }
    m_tied.push_back({one, other, either});
    m_engine.addClause(std::move(either));
}

/// What is clear of an order without a choice: settled ends, or one task on both sides.
Exact::Order Exact::settledOrder(int one, int other) const
{
    const Anchor& end = m_model.intervals[slot(one)].end;
    const Anchor& begin = m_model.intervals[slot(other)].begin;
    if (end.task == begin.task) {
        return {end.plus <= begin.plus ? Order::Kind::Always : Order::Kind::Never, {}};
    }
    if (end.task == Anchor::settled) {
        return {Order::Kind::Open, atLeast(begin.task, end.plus - begin.plus)};
    }
    if (begin.task == Anchor::settled) {
        return {Order::Kind::Open, atMost(end.task, begin.plus - end.plus)};
    }
    return {Order::Kind::Chosen, {}};
}

Exact::Order Exact::orderOf(int one, int other)
{
    if (isOrdered(one, other)) {
        return {Order::Kind::Always, {}};
    }
    const Order settled = settledOrder(one, other);
    if (settled.kind != Order::Kind::Chosen) {
        return settled;
    }
    const auto known = m_orders.find({one, other});
    if (known != m_orders.end()) {
        return {Order::Kind::Open, known->second};
    }
    const Anchor& end = m_model.intervals[slot(one)].end;
    const Anchor& begin = m_model.intervals[slot(other)].begin;
    const int choice = m_engine.addChoice();
    const Literal before = isTrue(choice);
    m_orders[{one, other}] = before;
    m_engine.addDifference(end.task, begin.task, end.plus - begin.plus, before);
    m_engine.addDifference(begin.task, end.task, begin.plus - end.plus + 1, !before);
    return {Order::Kind::Open, before};
}

} // namespace mend::plan
