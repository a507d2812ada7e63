#include "core/plan/planner.h"

#include "core/plan/check.h"
#include "core/plan/firstplan.h"
#include "core/plan/neighbourhood.h"

#include <algorithm>

namespace mend::plan {
namespace {

constexpr int firstTries = 200;
constexpr std::int64_t firstSlice = 100'000;  ///< steps of the exact search in one turn
constexpr std::int64_t smallProblem = 40'000; ///< steps for one neighbourhood, at first
constexpr std::int64_t largestSmallProblem = 200'000;
constexpr int mostInVain = 48; ///< neighbourhoods without anything better
constexpr std::int64_t scoutSteps = 300'000;
constexpr Minute furthestShift = 1440;

class BenchPlanner {
public:
    BenchPlanner(const Problem& problem, const Effort& effort)
        : m_problem(problem), m_effort(effort), m_model(modelOf(problem)), m_scale(CostScale::of(m_model)),
          m_small(m_model, m_scale, effort.seed), m_random(effort.seed + 1)
    {
    }

    Planned plan()
    {
        decodeFirst();
        m_whole.emplace(m_model, CostScale::promises());
        for (std::int64_t slice = firstSlice; !isOver(); slice += slice / 4) {
            searchWhole(slice);
            // Flow is proven for small benches only: there the small steps matter more.
            const std::int64_t until = m_small.work() + (m_planned.promisesProven ? 3 : 1) * slice;
            while (m_found && m_small.canImprove() && m_small.work() < until && !isOver()) {
                searchAround();
            }
        }
        m_planned.steps = steps();
        m_planned.refused = m_planned.refused || m_gateRefused;
        return std::move(m_planned);
    }

private:
    std::int64_t steps() const { return m_small.work() + m_scoutWork + m_wholeWork + (m_whole ? m_whole->work() : 0); }
    bool isOver() const
    {
        return m_gateRefused || m_planned.flowProven || m_planned.verdict == Planned::Verdict::NoPlan ||
               steps() >= m_effort.steps || (m_effort.enough && m_effort.enough());
    }

    void decodeFirst()
    {
        const auto blocks = blocksOf(m_model);
        if (!blocks || m_model.contradictory) {
            return; // the exact search says so with a proof
        }
        Decoder decoder(m_model, *blocks);
        std::mt19937_64 random(m_effort.seed);
        if (auto first = firstPlan(m_model, *blocks, decoder, firstTries, random)) {
            m_start = std::move(first->start);
            publish();
            m_planned.refused = m_gateRefused;
            m_gateRefused = false; // the exact search goes on without it
        }
    }

    void publish()
    {
        std::vector<Minute> all = stepStarts(m_problem, m_model, m_start);
        const Score score = scoreOf(m_problem, all);
        auto table = staffed(m_problem, std::move(all));
        if (!table || !violations(m_problem, *table).empty()) {
            m_gateRefused = true;
            return;
        }
        m_found = true;
        m_planned.verdict = Planned::Verdict::Plan;
        m_planned.table = std::move(table);
        m_planned.score = score;
        if (m_effort.improved) {
            m_effort.improved(*m_planned.table, score);
        }
    }

    /// One small step from the plan at hand; after many in vain, somewhere else anew.
    void searchAround()
    {
        if (m_here.empty()) {
            m_here = m_start;
        }
        m_inVain = m_small.improve(m_here, m_smallProblem, m_effort.enough) ? 0 : m_inVain + 1;
        if (costOf(m_model, m_scale, m_here) < costOf(m_model, m_scale, m_start)) {
            m_start = m_here;
            publish();
        }
        if (m_inVain >= mostInVain) {
            m_inVain = 0;
            m_smallProblem = std::min(largestSmallProblem, m_smallProblem + m_smallProblem / 4);
            setOutAnew();
        }
    }

    /// Some other plan that is no later than the best, from which small steps may lead further:
    /// the exact search with an order to follow in which pieces are thrown together at random.
    void setOutAnew()
    {
        if (!m_scout) {
            m_scout.emplace(m_model, CostScale::promises());
        }
        m_scout->limitCost(costOf(m_model, CostScale::promises(), m_start));
        std::vector<Minute> order = m_start;
        std::vector<Minute> shift;
        for (std::size_t p = 0; p < m_model.pieces.size(); ++p) {
            shift.push_back(static_cast<Minute>(m_random() % (2 * furthestShift)) - furthestShift);
        }
        for (std::size_t i = 0; i < order.size(); ++i) {
            order[i] += shift[slot(m_model.tasks[i].piece)];
        }
        m_scout->guide(order);
        const std::int64_t before = m_scout->work();
        const bool found = m_scout->search(scoutSteps, m_effort.enough) == Exact::Verdict::Found;
        m_scoutWork += m_scout->work() - before;
        m_here = found ? std::vector<Minute>(m_scout->start().begin(), m_scout->start().end()) : m_start;
    }

    CostScale wholeScale() const { return m_planned.promisesProven ? m_scale : CostScale::promises(); }

    /// Some steps of the search over everything, for promises first and for all once these are proven.
    void searchWhole(std::int64_t slice)
    {
        if (m_found) {
            m_whole->guide(m_start);
            m_whole->limitCost(costOf(m_model, wholeScale(), m_start) - 1);
        }
        const std::int64_t until = m_whole->work() + slice;
        while (true) {
            const Exact::Verdict verdict = m_whole->search(until - m_whole->work(), m_effort.enough);
            if (verdict == Exact::Verdict::Open) {
                return;
            }
            if (verdict == Exact::Verdict::Exhausted) {
                exhausted();
                return;
            }
            take(m_whole->start());
        }
    }

    void take(std::span<const Minute> found)
    {
        const std::vector<Minute> start(found.begin(), found.end());
        const bool better = !m_found || costOf(m_model, m_scale, start) < costOf(m_model, m_scale, m_start);
        m_whole->limitCost(costOf(m_model, wholeScale(), start) - 1);
        m_whole->guide(start);
        if (better) {
            m_start = start;
            m_here = start;
            publish();
        }
    }

    void exhausted()
    {
        if (!m_found) {
            m_planned.verdict = Planned::Verdict::NoPlan;
        } else if (m_planned.promisesProven) {
            m_planned.flowProven = true;
        } else {
            m_planned.promisesProven = true;
            m_planned.flowProven = m_scale.each == 0;
            m_wholeWork += m_whole->work();
            m_whole.emplace(m_model, m_scale);
        }
    }

    const Problem& m_problem;
    const Effort& m_effort;
    Model m_model;
    CostScale m_scale;
    Neighbourhood m_small;
    std::optional<Exact> m_whole;
    std::int64_t m_wholeWork = 0;
    std::vector<Minute> m_start; ///< the best plan
    std::vector<Minute> m_here;  ///< the plan that is being improved, at times a worse one
    int m_inVain = 0;
    std::int64_t m_smallProblem = smallProblem;
    std::optional<Exact> m_scout;
    std::int64_t m_scoutWork = 0;
    std::mt19937_64 m_random;
    bool m_found = false;
    bool m_gateRefused = false; ///< a plan of ours does not hold: rather none than a wrong one
    Planned m_planned;
};

} // namespace

Planned planBench(const Problem& problem, const Effort& effort) { return BenchPlanner(problem, effort).plan(); }

} // namespace mend::plan
