#include "core/plan/repair.h"

#include "core/plan/check.h"
#include "core/plan/decoder.h"
#include "core/plan/exact.h"

#include <algorithm>

namespace mend::plan {
namespace {

constexpr Minute hourOfShift = 60;
constexpr int retriesOfOrder = 10;

class PlanRepair {
public:
    PlanRepair(const Problem& problem, const std::vector<std::optional<Minute>>& before, const Effort& effort)
        : m_problem(problem), m_before(before), m_effort(effort), m_model(modelOf(problem))
    {
    }

    Repaired take()
    {
        const auto blocks = blocksOf(m_model);
        if (m_model.contradictory || !blocks) {
            m_result.noPlan = true;
            return std::move(m_result);
        }
        const std::vector<Minute> alone = earliestAlone(m_model);
        for (std::size_t i = 0; i < m_model.tasks.size(); ++i) {
            m_start.push_back(m_before[slot(m_model.tasks[i].step)].value_or(alone[i]));
        }
        Decoder decoder(m_model, *blocks);
        if (!keptInPlace(decoder, *blocks) && !keptInOrder(decoder, *blocks)) {
            solvedAnew();
        }
        return std::move(m_result);
    }

private:
    bool accept(std::span<const Minute> start)
    {
        std::vector<Minute> all = stepStarts(m_problem, m_model, start);
        auto table = staffed(m_problem, all);
        if (!table || !violations(m_problem, *table).empty()) {
            return false;
        }
        m_result.table = std::move(table);
        m_result.score = scoreOf(m_problem, all);
        m_result.change = changeBetween(m_problem, m_before, all);
        return true;
    }

    /// Everything where it stood, or later where it must; what is new goes where there is room.
    bool keptInPlace(Decoder& decoder, const std::vector<Block>& blocks)
    {
        std::vector<Minute> floors;
        Genes genes = genesOf(blocks, m_start);
        for (const Task& task : m_model.tasks) {
            floors.push_back(m_before[slot(task.step)].value_or(0));
        }
        for (std::size_t b = 0; b < blocks.size(); ++b) {
            const bool isNew = std::all_of(blocks[b].tasks.begin(), blocks[b].tasks.end(),
                                           [&](int task) { return !m_before[slot(m_model.tasks[slot(task)].step)]; });
            genes.rank[b] += isNew ? static_cast<int>(blocks.size()) : 0;
        }
        decoder.keepFrom(std::move(floors));
        const bool good = decoder.decode(genes) && accept(decoder.start());
        decoder.keepFrom({});
        return good;
    }

    bool keptInOrder(Decoder& decoder, const std::vector<Block>& blocks)
    {
        Genes genes = genesOf(blocks, m_start);
        int first = 0;
        for (int i = 0; i < retriesOfOrder; ++i) {
            if (decoder.decode(genes)) {
                return accept(decoder.start());
            }
            genes.rank[slot(decoder.stuck())] = --first;
        }
        return false;
    }

    void solvedAnew()
    {
        Exact whole(m_model, CostScale::promises());
        whole.guide(m_start);
        const Exact::Verdict verdict = whole.search(m_effort.steps, m_effort.enough);
        m_result.noPlan = verdict == Exact::Verdict::Exhausted;
        if (verdict == Exact::Verdict::Found) {
            accept(whole.start());
        }
    }

    const Problem& m_problem;
    const std::vector<std::optional<Minute>>& m_before;
    const Effort& m_effort;
    Model m_model;
    std::vector<Minute> m_start;
    Repaired m_result;
};

} // namespace

PlanChange changeBetween(const Problem& problem, const std::vector<std::optional<Minute>>& before,
                         const std::vector<Minute>& after)
{
    PlanChange change;
    std::vector<std::pair<Minute, Minute>> hands;
    std::vector<Minute> old = after;
    for (std::size_t i = 0; i < problem.steps.size(); ++i) {
        if (!before[i] || problem.steps[i].started) {
            continue;
        }
        old[i] = *before[i];
        const Minute shift = std::abs(after[i] - *before[i]);
        change.shifted += std::min(shift, hourOfShift);
        if (shift >= PlanChange::noticed) {
            change.moved.push_back(static_cast<int>(i));
        }
        if (problem.steps[i].hands) {
            hands.emplace_back(*before[i], after[i]);
        }
    }
    for (std::size_t i = 0; i < hands.size(); ++i) {
        for (std::size_t k = i + 1; k < hands.size(); ++k) {
            const bool straight = hands[i].first < hands[k].first && hands[i].second > hands[k].second;
            const bool turned = hands[i].first > hands[k].first && hands[i].second < hands[k].second;
            change.swapped += straight || turned ? 1 : 0;
        }
    }
    const std::vector<Minute> doneBefore = completions(problem, old);
    const std::vector<Minute> doneAfter = completions(problem, after);
    for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
        if (doneBefore[p] <= problem.pieces[p].promised && doneAfter[p] > problem.pieces[p].promised) {
            change.newlyLate.push_back(static_cast<int>(p));
        }
    }
    return change;
}

Repaired repair(const Problem& problem, const std::vector<std::optional<Minute>>& before, const Effort& effort)
{
    return PlanRepair(problem, before, effort).take();
}

} // namespace mend::plan
