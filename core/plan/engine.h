#pragma once

#include "core/plan/literal.h"
#include "core/plan/startranges.h"

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace mend::plan {

/// What one piece adds to the cost of a plan by the minute it is done: `each` a minute, and
/// `late` more for each minute past `due`.
struct CostTerm {
    int variable = 0;
    std::int64_t each = 0;
    std::int64_t late = 0;
    Minute due = 0;
    std::int64_t at(Minute done) const { return each * done + (done > due ? late * (std::int64_t{done} - due) : 0); }
};

/// The exact part of the planner: bounds on starts and orders that grow by propagation, each
/// with the reason it can be asked for later, and conflicts that become learned clauses. This is
/// lazy clause generation (Ohrimenko, Stuckey and Codish, "Propagation via lazy clause
/// generation", Constraints 14, 2009; for minimum and maximum lags Schutt, Feydy, Stuckey and
/// Wallace, Journal of Scheduling 16, 2013) with one simplification: a literal is a bound of a
/// variable itself, found on the trail when it is needed, so none has to be made.
///
/// Three kinds of constraints: differences (`start + plus <= start`, with or without a condition),
/// start ranges (bench hours), clauses; and one bound on the cost of all pieces.
class Engine {
public:
    /// A variable from `first` to `last`. `ranges`, if any, must outlive the engine.
    int addVariable(Minute first, Minute last, const StartRanges* ranges = nullptr);
    /// A variable that is 0 or 1.
    int addChoice() { return addVariable(0, 1); }
    /// to >= from + plus, always or only where `condition` (a literal on a choice) holds.
    void addDifference(int from, int to, Minute plus, std::optional<Literal> condition = std::nullopt);
    void addCostTerm(const CostTerm& term) { m_cost.push_back(term); }
    /// No plan of more than this cost is wanted any more. Only ever lowered. At the root only.
    void limitCost(std::int64_t most);
    /// At least one holds. May be added at any depth; false where it contradicts at once, which
    /// `learn` then takes up like any conflict. What can be told again may be dropped in between.
    enum class Told { Once, Again };
    bool addClause(std::vector<Literal> literals, Told told = Told::Once);

    bool holds(Literal literal) const { return m_value[literal.bound] >= literal.least; }
    bool fails(Literal literal) const { return m_value[literal.bound ^ 1U] >= 1 - literal.least; }
    bool isOpen(Literal literal) const { return !holds(literal) && !fails(literal); }
    Minute lowest(int variable) const { return m_value[lower(variable)]; }
    Minute highest(int variable) const { return -m_value[upper(variable)]; }

    /// Whether everything that follows has been followed.
    bool isFollowed() const { return m_next == m_trail.size(); }
    /// Follows all that follows. False: a contradiction.
    bool propagate();
    /// Learns from the last contradiction and goes back to where its lesson says something new.
    /// False: it does not depend on any decision, so there is no plan.
    bool learn();
    void decide(Literal literal);
    void backToRoot() { backTo(0); }
    int depth() const { return static_cast<int>(m_levelStart.size()); }

    /// Drops the less useful half of what was learned; at the root only.
    void forget();
    /// Drops everything that can be told again; at the root only.
    void forgetWhatCanBeTold();
    double activity(int variable) const { return m_activity[static_cast<std::size_t>(variable)]; }
    std::int64_t conflicts() const { return m_conflicts; }
    /// Counts propagation steps: what a step budget is measured in, equal on every machine.
    std::int64_t work() const { return m_work; }
    std::size_t learnedCount() const { return m_learned; }

private:
    enum class Because : std::uint8_t { Decision, Arc, ConditionFails, Clause, Range, Cost };
    struct Reason {
        Because kind = Because::Decision;
        std::uint32_t which = 0;
    };
    struct Event {
        BoundId bound = 0;
        Minute value = 0;
        Minute before = 0;
        int previous = -1; ///< the event before it on the same bound
        int level = 0;
        Reason reason;
    };
    static constexpr BoundId always = 0xffffffffU;
    struct Arc {
        BoundId from = 0;
        BoundId to = 0;
        Minute plus = 0;
        BoundId condition = always;
    };
    struct ArcRef {
        BoundId to = 0;
        Minute plus = 0;
        BoundId condition = always;
        std::uint32_t arc = 0;
    };
    struct Clause {
        std::uint32_t begin = 0;
        std::uint32_t size = 0;
        std::uint32_t distinctLevels = 0;
        bool learned = false;
        bool again = false; ///< can be told again
        float activity = 0;
    };
    /// The lists are sorted by `least`: an event looks only at what it makes fail.
    struct Watch {
        Minute least = 0; ///< the watched literal fails once its opposite bound reaches this
        std::uint32_t clause = 0;
        Literal blocker;
    };

    static std::size_t at(std::uint32_t index) { return index; }
    static Literal conditionLiteral(BoundId bound) { return {bound, (bound & 1U) != 0 ? 0 : 1}; }

    // engine.cpp
    void addArc(BoundId from, BoundId to, Minute plus, BoundId condition);
    void awaken(std::uint32_t arc);
    bool raise(BoundId bound, Minute value, Reason reason);
    bool follow(const ArcRef& arc, Minute value);
    bool followArcs(const Event& event);
    void backTo(int level);
    // engineclauses.cpp
    bool followClauses(const Event& event);
    void watch(std::uint32_t clause, std::uint32_t position);
    void insert(BoundId bound, const Watch& watch);
    std::uint32_t store(std::span<const Literal> literals, bool learned);
    template <class Drop> void dropClauses(const Drop& drop);
    void rebuildWatches();
    // enginelearn.cpp
    int eventOf(Literal literal) const;
    Minute valueBefore(BoundId bound, int event) const;
    void explain(int event, Minute least, std::vector<Literal>& because) const;
    void mark(Literal literal);
    bool followsFromMarked(int event);
    void bumpVariable(BoundId bound);
    void bumpClause(std::uint32_t clause);
    int conflictLevel() const;
    // enginecost.cpp
    bool followCost();
    void explainCost(int event, Minute least, std::vector<Literal>& because) const;
    void weakenCost(std::int64_t slack, int skip, int event, std::vector<Literal>& because) const;

    std::vector<Minute> m_value;
    std::vector<int> m_head;
    std::vector<const StartRanges*> m_ranges;
    std::vector<Event> m_trail;
    std::vector<int> m_levelStart;
    std::size_t m_next = 0; ///< the first event that has not been followed

    std::vector<Arc> m_arcs;
    std::vector<std::vector<ArcRef>> m_arcsFrom;
    std::vector<std::vector<std::uint32_t>> m_awakenedBy; ///< per bound of a choice: its arcs
    std::vector<Literal> m_literals;
    std::vector<Clause> m_clauses;
    std::vector<std::vector<Watch>> m_watches;
    std::vector<CostTerm> m_cost;
    std::optional<std::int64_t> m_mostCost;
    bool m_costStale = true;

    std::vector<Literal> m_conflict;
    std::vector<Minute> m_need; ///< per event: how much of it the lesson needs
    std::vector<char> m_marked;
    std::vector<int> m_markedBelow;
    std::vector<int> m_cleared;
    int m_markedHere = 0;
    mutable std::vector<Literal> m_because;
    std::vector<double> m_activity;
    double m_bump = 1.0;
    float m_clauseBump = 1.0F;
    std::int64_t m_conflicts = 0;
    std::int64_t m_work = 0;
    std::size_t m_learned = 0;
    bool m_hopeless = false;
};

} // namespace mend::plan
