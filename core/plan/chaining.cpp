#include "core/plan/chaining.h"

#include <algorithm>

namespace mend::plan {
namespace {

class Chainer {
public:
    Chainer(Model& model, std::span<const Minute> start, const std::vector<bool>& free)
        : m_model(model), m_start(start), m_free(free)
    {
    }

    void chainAll()
    {
        for (const Channel& channel : m_model.channels) {
            chainChannel(channel);
        }
        for (const auto& [one, other] : m_model.exclusive) {
            if (isHeld(one) && isHeld(other)) {
                const bool straight = begin(one) < begin(other);
                hold(straight ? one : other, straight ? other : one);
            }
        }
    }

private:
    const Interval& interval(int index) const { return m_model.intervals[slot(index)]; }
    Minute begin(int index) const { return interval(index).begin.at(m_start); }
    Minute end(int index) const { return interval(index).end.at(m_start); }
    bool isHeld(int index) const
    {
        const auto held = [this](const Anchor& anchor) {
            return anchor.task == Anchor::settled || !m_free[slot(anchor.task)];
        };
        return held(interval(index).begin) && held(interval(index).end);
    }

    /// `one` ends before `other` begins, from now on.
    void hold(int one, int other)
    {
        const Anchor& end = interval(one).end;
        const Anchor& begin = interval(other).begin;
        if (end.task != Anchor::settled && begin.task != Anchor::settled && end.task != begin.task) {
            m_model.differences.push_back({end.task, begin.task, end.plus - begin.plus});
        }
    }

    /// Each hand or slot has a row of those who held it; the next in a row waits for the one before.
    void chainChannel(const Channel& channel)
    {
        std::vector<Channel::Demand> held;
        for (const Channel::Demand& demand : channel.demands) {
            if (isHeld(demand.interval)) {
                held.push_back(demand);
            }
        }
        std::stable_sort(held.begin(), held.end(), [this](const Channel::Demand& a, const Channel::Demand& b) {
            return begin(a.interval) < begin(b.interval);
        });
        constexpr int nobody = -1;
        int rows = 0;
        for (const Channel::Demand& demand : held) {
            rows += demand.amount;
        }
        std::vector<int> last(slot(std::min(rows, channel.capacity)), nobody);
        for (const Channel::Demand& demand : held) {
            int wanted = demand.amount;
            for (int& row : last) {
                if (wanted == 0) {
                    break;
                }
                if (row == nobody || end(row) <= begin(demand.interval)) {
                    if (row != nobody) {
                        hold(row, demand.interval);
                    }
                    row = demand.interval;
                    --wanted;
                }
            }
        }
    }

    Model& m_model;
    std::span<const Minute> m_start;
    const std::vector<bool>& m_free;
};

} // namespace

Model withOrderHeld(const Model& model, std::span<const Minute> start, const std::vector<bool>& free)
{
    Model held = model;
    Chainer(held, start, free).chainAll();
    return held;
}

} // namespace mend::plan
