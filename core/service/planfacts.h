#pragma once

#include "core/bench/benchproblem.h"
#include "core/service/studio.h"

#include <span>

namespace mend::service {

/// What a plan needs beyond the bench: the hours of people who keep their own, and the promises, each good until the
/// end of its day where the studio is.
bench::PlanFacts planFactsOf(const Studio& studio, std::span<const bench::Event> events, Instant now);

} // namespace mend::service
