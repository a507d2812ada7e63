#pragma once

#include "core/plan/engine.h"
#include "core/plan/model.h"

#include <algorithm>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <vector>

namespace mend::plan {

/// How plans are compared as one number: a minute of flow counts 1 (or nothing, where only
/// promises matter), a weighted minute late as much as all flow there could ever be.
struct CostScale {
    std::int64_t late = 1;
    std::int64_t each = 1;
    static CostScale of(const Model& model);       ///< promises first, then flow
    static CostScale promises() { return {1, 0}; } ///< promises alone
};
std::int64_t costOf(const Model& model, const CostScale& scale, std::span<const Minute> start);

/// Asked every few hundred steps whether to give up.
using Enough = std::function<bool()>;

/// Looks for a plan by deciding who goes before whom, only where two are in each other's way in
/// the plan of earliest starts (precedence constraint posting), and learns from each dead end.
/// Once nobody is in anybody's way the earliest starts are a plan, and for these orders the best
/// one, because differences and bench hours only ever push later. Where more than two may share
/// something, the smallest set that is one too many (Bartusch, Moehring and Radermacher's
/// forbidden sets, from memory) becomes a clause when it first turns up.
class Exact {
public:
    /// `model` must outlive it.
    Exact(const Model& model, CostScale scale);

    enum class Verdict { Found, Exhausted, Open };
    /// Found: a plan within the limit, in `start()`. Exhausted: proven that there is none.
    /// Open: the budget (in the engine's steps) was used up or it was enough.
    Verdict search(std::int64_t budget, const Enough& enough);
    std::span<const Minute> start() const { return m_start; }

    void limitCost(std::int64_t most);
    /// Orders to try first: those of this plan.
    void guide(std::span<const Minute> start) { m_guide.assign(start.begin(), start.end()); }
    std::int64_t work() const { return m_engine.work(); }
    std::int64_t conflicts() const { return m_engine.conflicts(); }

private:
    /// "One ends before the other begins" as a literal, or settled.
    struct Order {
        enum class Kind { Always, Never, Open, Chosen } kind = Kind::Never; ///< Chosen: open, by a choice
        Literal literal;
    };
    struct Pair {
        int one = 0;
        int other = 0;
        int choice = 0; ///< 1: one before other, 0: other before one
    };
    /// A pair of which some end is settled: a clause of its open orders stands for the choice.
    struct Tied {
        int one = 0;
        int other = 0;
        std::vector<Literal> orders;
    };
    /// A channel that more than one may use, and its users in the order they begin.
    struct User {
        Channel::Demand demand;
        Minute begin = 0;
    };
    struct Share {
        int channel = 0;
        std::vector<User> users;
    };

    // exact.cpp
    void layTasks();
    void layCost();
    Verdict conclude();
    std::optional<Literal> nextDecision();
    std::optional<Literal> decidePair();
    std::optional<Literal> decideTied() const;
    bool overlap(int one, int other) const
    {
        return std::max(begin(one), begin(other)) < std::min(end(one), end(other));
    }
    Minute begin(int interval) const;
    Minute end(int interval) const;
    Minute key(int interval) const;
    // exactorders.cpp
    void layPairs();
    void layPair(int one, int other);
    bool isOrdered(int one, int other) const;
    void measureDistances();
    Order orderOf(int one, int other);
    Order settledOrder(int one, int other) const;
    // exactshares.cpp
    void layShares();
    std::optional<Literal> decideShare(bool& contradiction);
    std::vector<int> crowd(Share& share);
    std::vector<int> smallestCrowd(int capacity);
    std::optional<Literal> split(const std::vector<int>& crowd, bool& contradiction);

    const Model& m_model;
    CostScale m_scale;
    Engine m_engine;
    std::vector<std::vector<Minute>> m_distance; ///< start(to) - start(from) at least; by lags alone
    std::vector<Pair> m_pairs;
    std::vector<Tied> m_tied;
    std::map<std::pair<int, int>, Literal> m_orders;
    std::vector<Share> m_shares;
    std::set<std::vector<int>> m_toldCrowds;
    std::vector<std::pair<Channel::Demand, Minute>> m_active; ///< who holds a channel, and until when
    std::vector<Minute> m_start;
    std::vector<Minute> m_guide;
    std::int64_t m_restartAt = 0;
    int m_restarts = 0;
    std::size_t m_mostLearned = 4000;
};

} // namespace mend::plan
