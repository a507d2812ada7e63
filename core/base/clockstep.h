#pragma once

#include "core/base/time.h"

#include <optional>

namespace mend {

/// How far the wall clock was moved between two moments of one boot: the difference between
/// what the wall says went by and what really did. Empty where that is 2 s or less, which is
/// what slewing and reading both clocks one after the other may cost, or where the boots differ.
std::optional<Span> clockStep(const Moment& before, const Moment& now);

/// What really went by between two moments, sleep included: by the machine's own clock within
/// one boot, by the wall clock over a reboot, and never less than nothing.
Span elapsed(const Moment& before, const Moment& now);

} // namespace mend
