#include "core/plan/firstplan.h"

#include "core/plan/exact.h"

#include <algorithm>
#include <functional>
#include <numeric>

namespace mend::plan {
namespace {

using Less = std::function<bool(const Block&, const Block&)>;

Genes genesFor(const std::vector<Block>& blocks, const Less& less)
{
    std::vector<int> order(blocks.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        return less(blocks[static_cast<std::size_t>(a)], blocks[static_cast<std::size_t>(b)]);
    });
    Genes genes{std::vector<int>(blocks.size()), std::vector<Minute>(blocks.size(), 0)};
    for (std::size_t i = 0; i < order.size(); ++i) {
        genes.rank[static_cast<std::size_t>(order[i])] = static_cast<int>(i);
    }
    return genes;
}

/// Puts a block that found no place before all others; every call a little further.
void sooner(Genes& genes, int block)
{
    const int first = *std::min_element(genes.rank.begin(), genes.rank.end());
    genes.rank[static_cast<std::size_t>(block)] = first - 1;
}

} // namespace

std::vector<Genes> plainOrders(const Model& model, const std::vector<Block>& blocks)
{
    const auto due = [&](const Block& block) { return model.pieces[static_cast<std::size_t>(block.piece)]; };
    const auto closes = [&](const Block& block) {
        Minute last = StartRanges::none;
        for (const int task : block.tasks) {
            last = std::min(last, model.tasks[static_cast<std::size_t>(task)].mayStart.last());
        }
        return last;
    };
    const auto urgency = [&](const Due& one) {
        return (one.promised - model.now) / static_cast<double>(one.weight + 1);
    };
    const auto tuple = [](auto... values) { return std::tuple(values...); };
    std::vector<Genes> orders;
    // As time goes on; piece by piece as promised; by weight; what closes first.
    orders.push_back(genesFor(blocks, [&](const Block& a, const Block& b) { return a.earliest < b.earliest; }));
    orders.push_back(genesFor(blocks, [&](const Block& a, const Block& b) {
        return tuple(due(a).promised, a.piece, a.earliest) < tuple(due(b).promised, b.piece, b.earliest);
    }));
    orders.push_back(genesFor(blocks, [&](const Block& a, const Block& b) {
        return tuple(-due(a).weight, due(a).promised, a.piece, a.earliest) <
               tuple(-due(b).weight, due(b).promised, b.piece, b.earliest);
    }));
    orders.push_back(genesFor(blocks, [&](const Block& a, const Block& b) {
        return tuple(urgency(due(a)), a.piece, a.earliest) < tuple(urgency(due(b)), b.piece, b.earliest);
    }));
    orders.push_back(genesFor(blocks, [&](const Block& a, const Block& b) { return closes(a) < closes(b); }));
    return orders;
}

std::optional<FirstPlan> firstPlan(const Model& model, const std::vector<Block>& blocks, Decoder& decoder, int tries,
                                   std::mt19937_64& random)
{
    const CostScale scale = CostScale::of(model);
    std::optional<FirstPlan> best;
    std::int64_t bestCost = 0;
    const std::vector<Genes> orders = plainOrders(model, blocks);
    std::vector<Genes> under = orders;
    for (int i = 0; i < tries; ++i) {
        const auto which = static_cast<std::size_t>(i) % under.size();
        if (best && static_cast<std::size_t>(i) >= under.size()) {
            break;
        }
        Genes& genes = under[which];
        if (decoder.decode(genes)) {
            const std::int64_t cost = costOf(model, scale, decoder.start());
            if (!best || cost < bestCost) {
                best = {genes, {decoder.start().begin(), decoder.start().end()}};
                bestCost = cost;
            }
        } else {
            sooner(genes, decoder.stuck());
            if (i > tries / 2) {
                std::swap(genes.rank[random() % blocks.size()], genes.rank[random() % blocks.size()]);
            }
        }
    }
    return best;
}

} // namespace mend::plan
