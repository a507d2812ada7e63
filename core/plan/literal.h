#pragma once

#include "core/plan/problem.h"

#include <cstdint>

namespace mend::plan {

/// One end of what is known of a variable: 2 v is its lower bound, 2 v + 1 its upper one with
/// the sign turned, so that every bound only ever grows while a search goes deeper.
using BoundId = std::uint32_t;

/// "This bound has reached at least so much": the only kind of statement the exact search knows.
/// An order between two intervals is such a statement on a variable of 0 or 1.
struct Literal {
    BoundId bound = 0;
    Minute least = 0;
    bool operator==(const Literal&) const = default;
    constexpr Literal operator!() const { return {bound ^ 1U, 1 - least}; }
};

constexpr BoundId lower(int variable) { return static_cast<BoundId>(2 * variable); }
constexpr BoundId upper(int variable) { return static_cast<BoundId>(2 * variable + 1); }
constexpr Literal atLeast(int variable, Minute value) { return {lower(variable), value}; }
constexpr Literal atMost(int variable, Minute value) { return {upper(variable), -value}; }
constexpr Literal isTrue(int variable) { return atLeast(variable, 1); }

} // namespace mend::plan
