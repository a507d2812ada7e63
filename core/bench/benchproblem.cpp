#include "core/bench/benchproblem.h"

#include "core/bench/plandraft.h"
#include "core/bench/planhours.h"

#include <algorithm>

namespace mend::bench {

namespace {

using plan::Minute;

/// Turns the work of one piece into steps of the problem.
class PieceInPlan {
public:
    PieceInPlan(const PieceState& piece, PlanDraft& draft, const PlanFacts& facts, Instant now,
                std::optional<Span> shortestPause)
        : m_piece(piece), m_draft(draft), m_facts(facts), m_now(now),
          m_work(pieceAhead(piece, draft.bench(), draft.book(), now, shortestPause))
    {
    }

    void add()
    {
        if (m_work.steps.empty()) {
            return;
        }
        reckonSoonest();
        admit();
        if (std::ranges::none_of(m_in, [](bool in) { return in; })) {
            return;
        }
        m_draft.beginPiece(m_piece.piece.id, promised());
        m_at.assign(m_work.steps.size(), -1);
        for (std::size_t i = 0; i < m_work.steps.size(); ++i) {
            if (m_in[i]) {
                m_at[i] = addStep(m_work.steps[i]);
            }
        }
        for (const AheadLag& lag : m_work.lags) {
            if (m_in[lag.from] && m_in[lag.to]) {
                m_draft.tie(m_at[lag.from], m_at[lag.to], lag.least, lag.most);
            }
        }
        addPauses();
        for (std::size_t i = 0; i < m_work.steps.size(); ++i) {
            if (m_in[i]) {
                addStay(i);
                addWhatItLeaves(i);
            }
        }
        for (const StageInstance& at : m_work.tooTight) {
            m_draft.result().tooTight.push_back({m_piece.piece.id, at});
        }
        if (m_work.moreRuns > 0) {
            m_draft.result().moreRuns[m_piece.piece.id] = m_work.moreRuns;
        }
    }

    bool isOf(PieceId piece) const { return piece.isSet() && m_piece.piece.id == piece; }

    /// The first step still to do whose stage ends that state; below 0: none.
    int enderOf(const std::string& state) const
    {
        for (std::size_t i = 0; i < m_at.size(); ++i) {
            if (m_at[i] >= 0 &&
                std::ranges::find(m_work.steps[i].stage->ends, state) != m_work.steps[i].stage->ends.end()) {
                return m_at[i];
            }
        }
        return -1;
    }

private:
    const BenchProblem& problem() const { return m_draft.result(); }

    /// When each step could begin if there were hands for all, and whether a wait without progress stands before it.
    void reckonSoonest()
    {
        const Minute now = problem().problem.now;
        m_soonest.assign(m_work.steps.size(), now);
        m_stalled.assign(m_work.steps.size(), false);
        for (std::size_t i = 0; i < m_work.steps.size(); ++i) {
            const Window& window = m_work.steps[i].window;
            m_stalled[i] = window.stalled;
            m_soonest[i] = std::max(now, earliestOf(window));
        }
        for (std::size_t turn = 0; turn < m_work.steps.size(); ++turn) {
            for (const AheadLag& lag : m_work.lags) {
                m_stalled[lag.to] = m_stalled[lag.to] || m_stalled[lag.from] || lag.stalled;
                if (lag.least > -plan::farthest) {
                    m_soonest[lag.to] =
                        std::max(m_soonest[lag.to], m_soonest[lag.from] + m_work.steps[lag.from].hands + lag.least);
                }
            }
        }
    }

    /// What is open already may begin at once; else the slow end of the forecast counts.
    Minute earliestOf(const Window& window) const
    {
        Minute earliest = problem().problem.now;
        if (window.opens && *window.opens > m_now) {
            earliest = problem().minuteUp(window.opensAtLatest.value_or(*window.opens));
        }
        if (window.askAgain) {
            earliest = std::max(earliest, problem().minuteUp(*window.askAgain));
        }
        return earliest;
    }

    /// Steps within reach, and those that must follow them on the hour.
    void admit()
    {
        const Minute reach = problem().minuteDown(m_now + m_facts.reach);
        m_in.assign(m_work.steps.size(), false);
        for (std::size_t i = 0; i < m_work.steps.size(); ++i) {
            const Window& window = m_work.steps[i].window;
            const bool runs = window.begunAt || (window.closes && *window.closes > m_now);
            m_in[i] = m_piece.onHold ? runs : !m_stalled[i] && m_soonest[i] < reach;
        }
        for (bool more = !m_piece.onHold; more;) {
            more = false;
            for (const AheadLag& lag : m_work.lags) {
                if (m_in[lag.from] && lag.most && !m_in[lag.to] && !m_stalled[lag.to]) {
                    more = m_in[lag.to] = true;
                }
                if (m_in[lag.to] && lag.least > -plan::farthest && !m_in[lag.from] && !m_stalled[lag.from]) {
                    more = m_in[lag.from] = true;
                }
            }
        }
        for (std::size_t i = 0; i < m_work.steps.size(); ++i) {
            if (!m_in[i] && !m_piece.onHold) {
                auto& list = m_stalled[i] ? m_draft.result().stalled : m_draft.result().later;
                list.push_back({m_piece.piece.id, m_work.steps[i].at});
            }
        }
    }

    /// The promise less what has to be waited for beyond the steps of this plan; empty: nothing was promised.
    std::optional<Minute> promised() const
    {
        const auto promise = m_facts.promised.find(m_piece.piece.id);
        if (promise == m_facts.promised.end()) {
            return std::nullopt;
        }
        Minute lastInPlan = problem().problem.now;
        Minute ready = lastInPlan;
        for (std::size_t i = 0; i < m_work.steps.size(); ++i) {
            const Minute ends = m_soonest[i] + m_work.steps[i].hands;
            lastInPlan = m_in[i] ? std::max(lastInPlan, ends) : lastInPlan;
            ready = std::max(ready, ends);
            for (const std::string& key : m_work.steps[i].stage->uses) {
                ready = std::max(ready, ends + waitBeforeHandOver(key));
            }
        }
        for (const EarlierMaterial& in : materialsPutIn(m_piece, m_draft.book())) {
            ready = std::max(ready, problem().minuteUp(in.at) + waitBeforeHandOver(in.material));
        }
        return problem().minuteDown(promise->second) - (ready - lastInPlan);
    }

    Minute waitBeforeHandOver(const std::string& key) const
    {
        const rules::Material* material = m_draft.book().material(key);
        return material && material->handOverWait ? minutesUp(material->handOverWait->value) : 0;
    }

    int addStep(const AheadStep& step)
    {
        const Window& window = step.window;
        if (window.begunAt) {
            return m_draft.addRunning(step.at, *step.stage, *window.begunAt, step.hands);
        }
        const int index = m_draft.addTodo(step.at, *step.stage, step.hands, earliestOf(window));
        if (window.closes && !window.soft && *window.closes > m_now) {
            closes(index, step);
        }
        return index;
    }

    /// An open window hangs on the step that opened it, so that the planner can name it.
    void closes(int index, const AheadStep& step)
    {
        const Minute end = problem().minuteDown(*step.window.closes);
        if (earliestOf(step.window) + step.hands > end) {
            m_draft.result().lost.push_back({m_piece.piece.id, step.at});
            return;
        }
        const auto why = std::ranges::find_if(
            step.window.why, [&](const Reckoning& each) { return each.closing && each.result == step.window.closes; });
        const StageRecord* origin = why == step.window.why.end() ? nullptr : toldBy(why->event);
        const int from = origin ? m_draft.addDone(m_piece, *origin) : -1;
        if (from < 0) {
            m_draft.endBy(index, end);
            return;
        }
        const plan::Step& before = m_draft.step(from);
        m_draft.tie(from, index, -plan::farthest, end - step.hands - (*before.started + before.duration));
    }

    const StageRecord* toldBy(EventId event) const
    {
        const auto found = std::ranges::find_if(m_piece.stages, [&](const StageRecord& told) {
            const auto mix = m_draft.bench().mixes.find(told.mix);
            return told.isDone() && (told.firstBy == event || told.lastBy == event ||
                                     (mix != m_draft.bench().mixes.end() && mix->second.mixedBy == event));
        });
        return found == m_piece.stages.end() ? nullptr : &*found;
    }

    void addPauses()
    {
        for (const AheadPause& pause : m_work.pauses) {
            if (!m_in[pause.from]) {
                continue;
            }
            const std::string tag = pause.stage + " settles " + std::to_string(m_piece.piece.id.value());
            const std::string hands = pause.stage + " " + std::to_string(m_piece.piece.id.value());
            m_draft.tag(m_draft.addAfter(m_at[pause.from], pause.minutes), tag);
            for (std::size_t i = 0; i < m_work.steps.size(); ++i) {
                if (m_in[i] && m_work.steps[i].at.stage == pause.stage) {
                    m_draft.tag(m_at[i], hands);
                }
            }
            m_draft.keepApart(tag, hands);
        }
    }

    /// What directly follows a step: the first of those that hang on it.
    std::optional<std::size_t> nextAfter(std::size_t step) const
    {
        std::optional<std::size_t> next;
        for (const AheadLag& lag : m_work.lags) {
            if (lag.from == step && m_in[lag.to] && (!next || lag.to < *next)) {
                next = lag.to;
            }
        }
        return next;
    }

    static std::optional<record::PlaceKind> kindOf(const AheadStep& step)
    {
        const std::vector<std::string>& places = step.stage->places;
        return places.empty() ? std::nullopt : record::placeKindFromKey(places.front());
    }

    /// Until the next hands the piece stays in the cabinet or the humid box: a slot of it is taken, and nothing that is
    /// done elsewhere takes the piece out before.
    void addStay(std::size_t i)
    {
        const auto next = nextAfter(i);
        const auto kind = kindOf(m_work.steps[i]);
        if (!next || !kind) {
            return;
        }
        m_draft.holdPlace(m_at[i], m_at[*next], *kind);
        if (*kind != record::PlaceKind::Cabinet && *kind != record::PlaceKind::HumidBox) {
            return;
        }
        for (const AheadLag& lag : m_work.lags) {
            if (lag.from == i && lag.to != *next && m_in[lag.to] && kindOf(m_work.steps[lag.to]) != kind) {
                m_draft.tie(m_at[*next], m_at[lag.to], 0, std::nullopt);
            }
        }
    }

    void addWhatItLeaves(std::size_t i)
    {
        const rules::Stage& stage = *m_work.steps[i].stage;
        for (const rules::Leaves& leaves : stage.leaves) {
            const int ender = enderOf(leaves.state);
            const rules::BenchState* state = m_draft.book().state(leaves.state);
            const auto lasts = leaves.lasts ? leaves.lasts : state ? state->lasts : std::nullopt;
            const bool bySomebody = ender > m_at[i] && (!lasts || m_draft.isTied(m_at[i], ender));
            if (bySomebody) {
                m_draft.holdState(m_at[i], ender, leaves.state, m_piece.piece.id);
            } else if (lasts) {
                m_draft.leaveState(m_at[i], minutesUp(lasts->value), leaves.state, m_piece.piece.id);
            }
        }
    }

    const PieceState& m_piece;
    PlanDraft& m_draft;
    const PlanFacts& m_facts;
    Instant m_now;
    PieceAhead m_work;
    std::vector<Minute> m_soonest;
    std::vector<bool> m_stalled;
    std::vector<bool> m_in;
    std::vector<int> m_at;
};

} // namespace

BenchProblem benchProblem(const BenchFold& bench, const rules::RuleBook& book, const PlanFacts& facts, Instant now)
{
    PlanDraft draft(bench, book, now, now + facts.horizon());
    const Staffing staffing = staffingOf(bench.roster, facts, {now, now + facts.horizon()});
    draft.setStaff(staffing);
    std::vector<PieceInPlan> pieces;
    pieces.reserve(bench.pieces.size());
    for (const auto& [id, piece] : bench.pieces) {
        if (!piece.waitingForOwner) {
            pieces.emplace_back(piece, draft, facts, now, staffing.shortestPause);
            pieces.back().add();
        }
    }
    draft.beginRoom(staffing);
    for (const StateInForce& state : statesInForce(bench, book, now)) {
        const auto piece =
            std::ranges::find_if(pieces, [&](const PieceInPlan& each) { return each.isOf(state.piece); });
        draft.addInForce(state, piece == pieces.end() ? -1 : piece->enderOf(state.state));
    }
    return draft.finish();
}

} // namespace mend::bench
