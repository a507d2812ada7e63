#pragma once

#include "core/plan/decoder.h"

#include <cstdint>
#include <optional>
#include <random>

namespace mend::plan {

/// Orders of blocks as a mender would try them, each as genes for the decoder.
std::vector<Genes> plainOrders(const Model& model, const std::vector<Block>& blocks);

/// The best of some quick tries: plain orders, and where a block found no place that block
/// sooner (squeaky wheel). Empty where none of `tries` decodes gave a plan, which proves nothing.
struct FirstPlan {
    Genes genes;
    std::vector<Minute> start;
};
std::optional<FirstPlan> firstPlan(const Model& model, const std::vector<Block>& blocks, Decoder& decoder, int tries,
                                   std::mt19937_64& random);

} // namespace mend::plan
