#pragma once

#include "core/plan/whynot.h"

#include <string>

namespace mend::exchange {

/// Why there is no plan, as JSON text: conflicts with what each is made of, and ways out. Every
/// strain and every way out carries `change`, the JSON Patch (RFC 6902) that makes it of the
/// problem as it was given, and the plan that then holds, as in bench-plan-solution/1; so anyone
/// can try it.
std::string whyNotText(const plan::Problem& problem, const plan::WhyNot& why);

} // namespace mend::exchange
