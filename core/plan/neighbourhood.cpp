#include "core/plan/neighbourhood.h"

#include "core/plan/chaining.h"

#include <algorithm>
#include <cassert>
#include <numeric>

namespace mend::plan {
namespace {

constexpr std::int64_t overhead = 2000; ///< steps that laying out one small problem counts for

} // namespace

Neighbourhood::Neighbourhood(const Model& model, CostScale scale, std::uint64_t seed)
    : m_model(model), m_scale(scale), m_random(seed)
{
    for (std::size_t p = 0; p < model.pieces.size(); ++p) {
        if (!model.pieces[p].tasks.empty()) {
            m_pieces.push_back(static_cast<int>(p));
        }
    }
}

void Neighbourhood::freePieces(std::vector<bool>& free, const std::vector<int>& pieces) const
{
    for (const int piece : pieces) {
        for (const int task : m_model.pieces[slot(piece)].tasks) {
            free[slot(task)] = true;
        }
    }
}

std::vector<int> Neighbourhood::somePieces(std::size_t count)
{
    std::vector<int> pieces = m_pieces;
    for (std::size_t i = 0; i < std::min(count, pieces.size()); ++i) {
        std::swap(pieces[i], pieces[i + pick(pieces.size() - i)]);
    }
    pieces.resize(std::min(count, pieces.size()));
    return pieces;
}

/// Those whose steps lie closest to the steps of `piece`.
std::vector<int> Neighbourhood::neighboursOf(int piece, std::size_t count, std::span<const Minute> start) const
{
    constexpr Minute near = 90;
    std::vector<std::pair<int, int>> closeness;
    for (const int other : m_pieces) {
        int close = other == piece ? 1'000'000 : 0;
        for (const int a : m_model.pieces[slot(piece)].tasks) {
            for (const int b : m_model.pieces[slot(other)].tasks) {
                close += std::abs(start[slot(a)] - start[slot(b)]) < near ? 1 : 0;
            }
        }
        closeness.emplace_back(-close, other);
    }
    std::sort(closeness.begin(), closeness.end());
    std::vector<int> pieces;
    for (std::size_t i = 0; i < std::min(count, closeness.size()); ++i) {
        pieces.push_back(closeness[i].second);
    }
    return pieces;
}

/// A piece, the likelier the more it costs.
int Neighbourhood::latePiece(std::span<const Minute> start)
{
    std::vector<std::int64_t> cost;
    for (const int piece : m_pieces) {
        Minute done = m_model.pieces[slot(piece)].settledEnd;
        for (const int task : m_model.pieces[slot(piece)].tasks) {
            done = std::max(done, start[slot(task)] + m_model.tasks[slot(task)].duration);
        }
        const Due& due = m_model.pieces[slot(piece)];
        const std::int64_t late = std::max<std::int64_t>(0, std::int64_t{done} - due.promised);
        cost.push_back(due.weight * late + (done - m_model.now) + 1);
    }
    std::uint64_t at =
        m_random() % static_cast<std::uint64_t>(std::accumulate(cost.begin(), cost.end(), std::int64_t{0}));
    for (std::size_t i = 0; i < cost.size(); ++i) {
        if (at < static_cast<std::uint64_t>(cost[i])) {
            return m_pieces[i];
        }
        at -= static_cast<std::uint64_t>(cost[i]);
    }
    return m_pieces.back();
}

std::vector<bool> Neighbourhood::choose(Shape shape, std::size_t size, std::span<const Minute> start)
{
    std::vector<bool> free(m_model.tasks.size(), false);
    switch (shape) {
    case Shape::Pieces:
        freePieces(free, somePieces(size));
        break;
    case Shape::Neighbours:
        freePieces(free, neighboursOf(m_pieces[pick(m_pieces.size())], size, start));
        break;
    case Shape::Late: {
        std::vector<int> pieces = somePieces(size - 1);
        pieces.push_back(latePiece(start));
        freePieces(free, pieces);
        break;
    }
    case Shape::Hours: {
        // So many tasks from some point in time on.
        std::vector<int> tasks(m_model.tasks.size());
        std::iota(tasks.begin(), tasks.end(), 0);
        std::sort(tasks.begin(), tasks.end(),
                  [&](int a, int b) { return std::pair(start[slot(a)], a) < std::pair(start[slot(b)], b); });
        const std::size_t count = std::min(size, tasks.size());
        const std::size_t first = pick(tasks.size() - count + 1);
        for (std::size_t i = first; i < first + count; ++i) {
            free[slot(tasks[i])] = true;
        }
        break;
    }
    }
    return free;
}

/// Puts a part of the plan in place of the old one as long as it gets better. Gives the last
/// word of the exact search: whether nothing better is left in there.
Exact::Verdict Neighbourhood::solve(const Model& part, std::vector<Minute>& now, std::int64_t budget,
                                    const Enough& enough)
{
    Exact exact(part, m_scale);
    exact.guide(now);
    Exact::Verdict verdict = Exact::Verdict::Found;
    while (verdict == Exact::Verdict::Found) {
        exact.limitCost(costOf(part, m_scale, now) - 1);
        verdict = exact.search(budget - exact.work(), enough);
        if (verdict == Exact::Verdict::Found) {
            now.assign(exact.start().begin(), exact.start().end());
            exact.guide(now);
        }
    }
    m_work += exact.work() + overhead;
    return verdict;
}

bool Neighbourhood::improve(std::vector<Minute>& start, std::int64_t budget, const Enough& enough)
{
    assert(canImprove());
    const auto shape = static_cast<Shape>(m_round % shapes);
    const bool inOrder = m_round / shapes % 2 == 1; // the rest may give way, but keeps its order
    ++m_round;
    double& size = m_size[inOrder ? 1 : 0][static_cast<int>(shape)];
    const std::vector<bool> free = choose(shape, static_cast<std::size_t>(size), start);
    const std::vector<Minute> before = start;
    Exact::Verdict verdict = Exact::Verdict::Open;
    if (inOrder) {
        verdict = solve(withOrderHeld(m_model, start, free), start, budget, enough);
    } else {
        const Frozen frozen = freeze(m_model, start, free);
        std::vector<Minute> now;
        for (const int task : frozen.taskOf) {
            now.push_back(start[slot(task)]);
        }
        verdict = solve(frozen.model, now, budget, enough);
        for (std::size_t i = 0; i < now.size(); ++i) {
            start[slot(frozen.taskOf[i])] = now[i];
        }
    }
    const double most =
        shape == Shape::Hours ? static_cast<double>(m_model.tasks.size()) : static_cast<double>(m_pieces.size());
    size = verdict == Exact::Verdict::Exhausted ? std::min(most, size * 1.03) : std::max(2.0, size * 0.97);
    return start != before;
}

} // namespace mend::plan
