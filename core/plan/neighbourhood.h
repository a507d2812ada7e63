#pragma once

#include "core/plan/exact.h"

#include <cstdint>
#include <random>
#include <span>
#include <vector>

namespace mend::plan {

/// Improves a plan by taking a few pieces, or some hours, out of it and putting them back as
/// well as can be while all the rest stays, to the minute or only in its order (large neighbourhood search: Shaw 1998,
/// from memory; each small problem is solved exactly). How much is taken out follows from how hard the last ones were.
/// The same random numbers give the same plans.
class Neighbourhood {
public:
    /// `model` must outlive it.
    Neighbourhood(const Model& model, CostScale scale, std::uint64_t seed);

    /// Whether there is anything left to be moved.
    bool canImprove() const { return !m_pieces.empty(); }
    /// Whether a better plan was found; it is then in `start`. Takes about `budget` steps at most.
    bool improve(std::vector<Minute>& start, std::int64_t budget, const Enough& enough);
    /// Steps used so far, as the engine counts them.
    std::int64_t work() const { return m_work; }

private:
    enum class Shape { Pieces, Neighbours, Hours, Late };
    static constexpr int shapes = 4;

    std::vector<bool> choose(Shape shape, std::size_t size, std::span<const Minute> start);
    Exact::Verdict solve(const Model& part, std::vector<Minute>& now, std::int64_t budget, const Enough& enough);
    void freePieces(std::vector<bool>& free, const std::vector<int>& pieces) const;
    std::vector<int> somePieces(std::size_t count);
    std::vector<int> neighboursOf(int piece, std::size_t count, std::span<const Minute> start) const;
    int latePiece(std::span<const Minute> start);
    std::size_t pick(std::size_t below) { return static_cast<std::size_t>(m_random() % below); }

    const Model& m_model;
    CostScale m_scale;
    std::mt19937_64 m_random;
    std::vector<int> m_pieces;                                ///< those that have something to be done
    double m_size[2][shapes] = {{3, 3, 12, 3}, {2, 2, 8, 2}}; ///< pieces, or tasks in the hours
    int m_round = 0;
    std::int64_t m_work = 0;
};

} // namespace mend::plan
