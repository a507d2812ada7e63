#pragma once

#include "core/base/clock.h"
#include "core/service/openbench.h"

#include <optional>
#include <string>

namespace mend::desk {

/// A bench file as it stood at one instant, whole.
struct BenchAt {
    service::OpenBench open;
    Instant now;
    bench::BenchFold fold;
};

/// Reads a bench file, also one that is in use. `at`: as it stood then, without what was told later; empty: now.
Result<BenchAt> benchAt(const std::string& file, std::optional<Instant> at, const Clock& clock);

} // namespace mend::desk
