#pragma once

#include "core/plan/exact.h"
#include "core/plan/timetable.h"

#include <cstdint>
#include <functional>
#include <limits>
#include <optional>

namespace mend::plan {

/// How long and in which way to look for a plan.
struct Effort {
    std::uint64_t seed = 1;
    /// Steps of work, counted alike on every machine: the same seed and steps give the same plan.
    std::int64_t steps = std::numeric_limits<std::int64_t>::max();
    Enough enough; ///< asked at least every few milliseconds; true ends the search
    /// Told each better plan as soon as there is one, the first after some milliseconds.
    std::function<void(const Timetable&, const Score&)> improved;
};

/// What is known of a problem after some effort.
struct Planned {
    enum class Verdict {
        Plan,     ///< there is one, in `table`
        NoPlan,   ///< proven: none exists
        NotFound, ///< none found yet, which proves nothing
    };
    Verdict verdict = Verdict::NotFound;
    std::optional<Timetable> table; ///< holds before plan::violations, always
    Score score;
    bool promisesProven = false; ///< no plan is less late
    bool flowProven = false;     ///< nor, as late, done sooner
    std::int64_t steps = 0;
    bool refused = false; ///< the gate refused a plan: a fault of the planner, so nothing is claimed
};

/// Plans a bench, as well as the effort allows. First the decoder, so that there is something
/// to show at once; then in turns the exact search over everything, which ends with a proof, and
/// the exact search over small parts, which finds better plans long before there is one. Promises
/// alone come first, for that the exact search proves soonest; what pieces lie about comes then.
Planned planBench(const Problem& problem, const Effort& effort);

} // namespace mend::plan
