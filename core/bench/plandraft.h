#pragma once

#include "core/bench/benchproblem.h"
#include "core/bench/hazardcheck.h"
#include "core/bench/planhours.h"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace mend::bench {

/// A problem of the planner while it is put together: steps of one piece after the other, what they hold, and last
/// the combinations that must not meet, as tags. Steps are named by their index.
class PlanDraft {
public:
    PlanDraft(const BenchFold& bench, const rules::RuleBook& book, Instant now, Instant horizon);
    PlanDraft(const PlanDraft&) = delete;
    PlanDraft& operator=(const PlanDraft&) = delete;

    const BenchFold& bench() const { return m_bench; }
    const rules::RuleBook& book() const { return m_book; }
    BenchProblem& result() { return m_result; }
    const BenchProblem& result() const { return m_result; }
    const plan::Step& step(int index) const { return m_result.problem.steps[plan::slot(index)]; }

    void setStaff(const Staffing& staffing);
    void beginPiece(PieceId piece, std::optional<plan::Minute> promised);
    /// What belongs to no piece: hands that are taken, states of the room.
    void beginRoom(const Staffing& staffing);

    int addTodo(const StageInstance& at, const rules::Stage& stage, plan::Minute hands, plan::Minute earliest);
    int addRunning(const StageInstance& at, const rules::Stage& stage, Instant begun, plan::Minute hands);
    /// A stage that is done and that a window hangs on.
    int addDone(const PieceState& piece, const StageRecord& told);
    /// Goes by itself, from the end of `before` on.
    int addAfter(int before, plan::Minute minutes);
    void endBy(int step, plan::Minute end);
    /// At most one lag a pair: the stricter bound of each side holds.
    void tie(int from, int to, plan::Minute least, std::optional<plan::Minute> most);
    /// Whether a closing ties the two.
    bool isTied(int from, int to) const;

    void tag(int step, const std::string& name);
    void keepApart(const std::string& one, const std::string& other);
    /// From one step to another a slot of that kind of place is taken, if there are only so many.
    void holdPlace(int from, int to, record::PlaceKind kind);
    /// From one step to another a state of the bench is in force.
    void holdState(int from, int to, const std::string& state, PieceId piece);
    void leaveState(int after, plan::Minute minutes, const std::string& state, PieceId piece);
    /// A state that is in force now; `ender`: the step that ends it, below 0 if time does. Until told: nothing.
    void addInForce(const StateInForce& state, int ender);

    BenchProblem finish();

private:
    /// Something that is there for a while: on a step, or on a wait.
    struct Held {
        std::vector<std::string> names; ///< by which rows of the hazard table may mean it
        PieceId piece;
        std::string stage;
        int step = -1;
        int wait = -1;
    };

    std::string named(const std::string& name);
    std::string nameOf(PieceId piece, const StageInstance& at, const std::string& act) const;
    int add(plan::Step step, const PlanStep& means);
    int addStage(const StageInstance& at, const rules::Stage& stage, plan::Minute hands);
    int resourceOf(const std::string& id, int capacity);
    plan::Wait& waitBetween(int from, int to);
    void addHazards();
    void addHazard(const rules::Hazard& hazard);
    std::string groupOf(const rules::Hazard& hazard, PieceId piece) const;
    void tag(const Held& held, const std::string& name);

    const BenchFold& m_bench;
    const rules::RuleBook& m_book;
    BenchProblem m_result;
    std::map<std::pair<int, int>, std::size_t> m_lags;
    std::map<std::pair<int, int>, std::size_t> m_waits;
    std::map<PlanStep, int> m_done;
    std::vector<Held> m_held;
    std::map<std::string, int> m_names;
};

} // namespace mend::bench
