#pragma once

#include "core/plan/problem.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::test {

/// A published job shop as a bench: jobs are pieces, machines are resources of which there is one,
/// nobody's hands are needed. FT06 and FT10: H. Fisher and G. L. Thompson, 1963; LA01 to LA05:
/// S. Lawrence, 1984. With `longestGap` an operation must follow the one before within
/// floor(longestGap x its duration); 0 is the no-wait job shop.
plan::Problem jobShop(const std::string& name, plan::Minute horizon, std::optional<double> longestGap = std::nullopt);

/// The shortest time in which all jobs can be done.
struct ShopOptimum {
    std::string name;
    std::optional<double> longestGap;
    plan::Minute makespan = 0;
};
/// Without gaps limited: published optima of the classical instances. No-wait: FT06 73 and LA01,
/// LA03, LA04 agree with the best values published for it (Mascis and Pacciarelli, EJOR 143, 2002,
/// define it), LA02 and LA05 are better. No-wait and limited gaps: optima proven with an
/// independent constraint solver.
const std::vector<ShopOptimum>& shopOptima();

} // namespace mend::test
