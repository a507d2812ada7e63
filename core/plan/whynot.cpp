#include "core/plan/whynot.h"

#include "core/plan/waysout.h"

#include <algorithm>
#include <numeric>
#include <random>

namespace mend::plan {
namespace {

constexpr int mostConflicts = 3;
constexpr int orders = 6; ///< in which things are let go, while no conflict is enough by itself

/// Finds one minimal conflict of a problem that has no plan.
class ConflictFinder {
public:
    ConflictFinder(const Problem& problem, const Enough& enough) : m_problem(problem), m_enough(enough) {}

    std::vector<Strain> find(std::uint64_t order)
    {
        std::vector<Strain> candidates = strainsOf(m_problem);
        if (hasNoPlan(letGo(m_problem, candidates), m_enough)) {
            // Not even that helps: the orders themselves go round in a ring.
            for (std::size_t i = 0; i < m_problem.lags.size(); ++i) {
                candidates.push_back({Strain::Kind::Order, static_cast<int>(i)});
            }
        }
        if (order > 0) {
            std::mt19937_64 random(order);
            for (std::size_t i = candidates.size(); i > 1; --i) {
                std::swap(candidates[i - 1], candidates[random() % i]);
            }
        }
        keepOnlyNeeded(candidates, 0, candidates.size());
        return m_needed;
    }

private:
    static Problem letGo(Problem problem, const std::vector<Strain>& strains)
    {
        // Whatever has a place in a list goes from the back, so that places stay right.
        std::vector<Strain> sorted = strains;
        std::stable_sort(sorted.begin(), sorted.end(),
                         [](const Strain& a, const Strain& b) { return a.which > b.which; });
        const auto late = std::stable_partition(sorted.begin(), sorted.end(), [](const Strain& one) {
            return one.kind != Strain::Kind::Horizon; // adds an opening
        });
        static_cast<void>(late);
        for (const Strain& strain : sorted) {
            problem = relaxed(problem, strain);
        }
        return problem;
    }

    /// Lets go of candidates first..last as far as there is still no plan without them.
    void keepOnlyNeeded(const std::vector<Strain>& candidates, std::size_t first, std::size_t last)
    {
        if (first == last) {
            return;
        }
        std::vector<Strain> tried = m_gone;
        tried.insert(tried.end(), candidates.begin() + static_cast<std::ptrdiff_t>(first),
                     candidates.begin() + static_cast<std::ptrdiff_t>(last));
        if (hasNoPlan(letGo(m_problem, tried), m_enough)) {
            m_gone = std::move(tried);
        } else if (last - first == 1) {
            m_needed.push_back(candidates[first]);
        } else {
            const std::size_t middle = first + (last - first) / 2;
            keepOnlyNeeded(candidates, first, middle);
            keepOnlyNeeded(candidates, middle, last);
        }
    }

    const Problem& m_problem;
    const Enough& m_enough;
    std::vector<Strain> m_gone;
    std::vector<Strain> m_needed;
};

/// Which pieces are needed for there to be no plan.
std::vector<bool> piecesInTheWay(const Problem& problem, const Enough& enough)
{
    std::vector<bool> kept(problem.pieces.size(), true);
    for (std::size_t p = 0; p < kept.size(); ++p) {
        kept[p] = false;
        if (std::count(kept.begin(), kept.end(), true) == 0 || !hasNoPlan(onlyPieces(problem, kept), enough)) {
            kept[p] = true;
        }
    }
    return kept;
}

/// The same strain in the whole problem: lags and steps have other places there.
Strain inWhole(const Problem& problem, const Problem& part, Strain strain)
{
    const auto stepAt = [&](int index) {
        const std::string& id = part.steps[slot(index)].id;
        const auto found =
            std::find_if(problem.steps.begin(), problem.steps.end(), [&](const Step& step) { return step.id == id; });
        return static_cast<int>(found - problem.steps.begin());
    };
    switch (strain.kind) {
    case Strain::Kind::Window:
    case Strain::Kind::Minimum:
    case Strain::Kind::Order: {
        const Lag& lag = part.lags[slot(strain.which)];
        const auto found = std::find_if(problem.lags.begin(), problem.lags.end(), [&](const Lag& one) {
            return one.from == stepAt(lag.from) && one.to == stepAt(lag.to);
        });
        strain.which = static_cast<int>(found - problem.lags.begin());
        return strain;
    }
    case Strain::Kind::Earliest:
    case Strain::Kind::LatestEnd:
        strain.which = stepAt(strain.which);
        return strain;
    default:
        return strain;
    }
}

Conflict conflictOf(const Problem& problem, const Problem& part, const std::vector<bool>& pieces,
                    const std::vector<Strain>& strains, const Enough& enough)
{
    Conflict conflict;
    for (std::size_t p = 0; p < pieces.size(); ++p) {
        if (pieces[p]) {
            conflict.pieces.push_back(static_cast<int>(p));
        }
    }
    for (const Strain& strain : strains) {
        conflict.strains.push_back(inWhole(problem, part, strain));
        conflict.without.push_back(planFor(relaxed(problem, conflict.strains.back()), enough));
    }
    return conflict;
}

/// A conflict each part of which is enough to let go, if one turns up in some orders of looking.
Conflict bestConflict(const Problem& problem, const Enough& enough)
{
    const std::vector<bool> pieces = piecesInTheWay(problem, enough);
    const Problem part = onlyPieces(problem, pieces);
    Conflict best;
    std::ptrdiff_t bestHelp = -1;
    for (std::uint64_t order = 0; order < orders; ++order) {
        const Conflict found = conflictOf(problem, part, pieces, ConflictFinder(part, enough).find(order), enough);
        const auto help = std::count_if(found.without.begin(), found.without.end(),
                                        [](const auto& plan) { return plan.has_value(); });
        if (help > bestHelp) {
            best = found;
            bestHelp = help;
        }
        if (found.eachIsEnough()) {
            return found;
        }
        if ((enough && enough()) || bestHelp == 0) {
            break; // another conflict stands beside this one: no order helps
        }
    }
    return best;
}

} // namespace

bool Conflict::eachIsEnough() const
{
    return std::all_of(without.begin(), without.end(), [](const auto& plan) { return plan.has_value(); });
}

WhyNot whyNot(const Problem& problem, const Enough& enough)
{
    WhyNot why;
    Problem left = problem;
    while (why.conflicts.size() < mostConflicts && !(enough && enough()) && hasNoPlan(left, enough)) {
        Conflict conflict = bestConflict(left, enough);
        const bool all = conflict.eachIsEnough();
        for (const Strain& strain : conflict.strains) {
            const bool listed = strain.kind == Strain::Kind::Apart || strain.kind == Strain::Kind::Hours;
            if (!listed && !all) {
                left = relaxed(left, strain);
            }
        }
        why.conflicts.push_back(std::move(conflict));
        if (all) {
            break;
        }
    }
    why.waysOut = waysOut(problem, why.conflicts, enough);
    return why;
}

} // namespace mend::plan
