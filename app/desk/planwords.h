#pragma once

#include "core/plan/whynot.h"

#include <QString>

namespace mend::desk {

/// Why there is no plan, in lines for a person at a terminal; minutes as "day 1 09:40".
QString whyNotWords(const plan::Problem& problem, const plan::WhyNot& why);

} // namespace mend::desk
