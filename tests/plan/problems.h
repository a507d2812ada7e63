#pragma once

#include "core/plan/problem.h"

#include <cstdint>
#include <string>
#include <vector>

namespace mend::test {

/// What kind of invented bench is wanted.
struct BenchKind {
    int pieces = 4;
    int people = 1;
    int days = 6;
    bool midday = false;  ///< some steps are done or running and their windows stand open
    bool crowded = false; ///< few slots, so that they are fought for
};

/// A bench of invented pieces with the trade's procedures: glue and trim, fill and wipe, lacquer
/// and dust. The same seed gives the same bench.
plan::Problem inventBench(const BenchKind& kind, std::uint64_t seed);

/// A few steps within a few minutes, of every kind the format knows, sense or none: small enough to
/// try all plans. Often there is none.
plan::Problem inventTiny(std::uint64_t seed);

/// The problem of the project's benchmark set with this name.
plan::Problem benchmarkProblem(const std::string& name);
/// The names of a family ("small"), or of all.
std::vector<std::string> benchmarkNames(const std::string& family = {});

} // namespace mend::test
