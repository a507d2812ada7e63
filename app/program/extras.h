#pragma once

#include "app/bench/picture.h"
#include "core/service/alertservice.h"
#include "core/service/benchservice.h"

namespace mend::app {

/// What the Bench shows beside its cards, gathered from the services.
Extras extrasOf(const service::BenchService& bench, const service::AlertService& alerts, const service::Manner& manner,
                bool soundWorks, Instant now);

} // namespace mend::app
