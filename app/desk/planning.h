#pragma once

#include "app/desk/verbs.h"

#include "core/plan/planner.h"

namespace mend::desk {

/// Looks for a plan for as long as the effort says.
plan::Planned planFor(const plan::Problem& problem, const PlanEffort& effort);

/// "optimal", "promises_optimal" (the flow may still be better) or "feasible".
std::string statusOf(const plan::Planned& planned);

/// What is said where there is no plan to show: why none exists and what would help, or that none was found.
Answer withoutPlan(const plan::Problem& problem, const plan::Planned& planned);

} // namespace mend::desk
