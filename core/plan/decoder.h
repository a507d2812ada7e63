#pragma once

#include "core/plan/blocks.h"

#include <cstdint>
#include <span>
#include <vector>

namespace mend::plan {

/// What the decoder turns into a plan: who comes first, and who waits a little on purpose.
struct Genes {
    std::vector<int> rank;         ///< of each block: the lowest that may go is placed next
    std::vector<Minute> notBefore; ///< of each block's head; 0: as early as it goes
};

/// The order in which a plan takes its blocks up.
Genes genesOf(const std::vector<Block>& blocks, std::span<const Minute> start);

/// Makes a whole plan from an order of blocks, as a mender fills a day: block after block, each
/// step at the first minute where hands, places and tags allow, the head of the block moved
/// later where a window behind it would close (a serial schedule generation scheme with
/// unscheduling: Franck, Neumann and Schwindt, OR Spektrum 23, 2001, from memory). Some tens of
/// microseconds a plan. It may fail where a plan exists; it never makes a wrong one.
class Decoder {
public:
    /// `blocks` and `model` must outlive it.
    Decoder(const Model& model, const std::vector<Block>& blocks);

    /// From now on no task starts before its floor; an empty list lifts them all. This is how a plan
    /// is kept as it was: everything where it stood, or later where it must.
    void keepFrom(std::vector<Minute> floors) { m_floor = std::move(floors); }
    /// Whether a plan came out; its starts are then in `start()`.
    bool decode(const Genes& genes);
    std::span<const Minute> start() const { return m_start; }
    /// Of a failed decode: the block that found no place.
    int stuck() const { return m_stuck; }

    /// Time in minutes beyond which no plan is looked for, so that memory stays bounded.
    static constexpr Minute longestSpan = 1 << 19;

private:
    struct Hold {
        int channel = 0;
        int amount = 1;
        int most = 0; ///< how full the channel may be before
    };
    struct Link {
        int task = 0;
        Minute plus = 0;
    };

    void layChannels();
    void laySettled();
    bool placeBlock(const Block& block, Minute notBefore);
    int placeNext(const Block& block, int position);
    int backTo(const Block& block, int placed, int task, Minute notBefore);
    bool stands(Anchor anchor) const;
    void holdWaits(int task, int sign, std::size_t count);
    Minute firstFit(int task, Minute from) const;
    Minute lastBlocked(int interval, Minute from, Minute to) const;
    void occupy(int interval, Minute from, Minute to, int sign);
    void unplace(int task);

    const Model& m_model;
    const std::vector<Block>& m_blocks;
    Minute m_base = 0;
    Minute m_span = 0;
    std::vector<std::vector<std::uint16_t>> m_level; ///< of each channel at each minute
    std::vector<std::vector<Hold>> m_asks;           ///< what an interval finds free or not
    std::vector<std::vector<Hold>> m_adds;           ///< what it takes
    std::vector<std::vector<Link>> m_lower;          ///< per task: placed ones that push it later
    std::vector<std::vector<Link>> m_upper;          ///< per task: placed ones it must not push
    std::vector<int> m_ownInterval;
    std::vector<std::vector<int>> m_waits; ///< per task: the intervals between it and another anchor
    std::vector<Minute> m_start;
    std::vector<char> m_placed;
    std::vector<Minute> m_least;
    std::vector<Minute> m_floor;
    int m_stuck = -1;
    std::vector<int> m_pending;
    std::vector<std::pair<int, int>> m_ready;
};

} // namespace mend::plan
