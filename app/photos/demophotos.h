#pragma once

#include "core/service/demobench.h"

namespace mend::photos {

/// Photos of the demo's pieces, drawn here: a pot on a cloth in soft light, its breaks where the seed puts them.
/// The same seed draws the same bytes; some twenty kilobytes each.
std::vector<service::DemoPhoto> drawDemoPhotos(const bench::Roster& roster, Instant now);

} // namespace mend::photos
