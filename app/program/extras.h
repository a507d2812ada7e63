#pragma once

#include "app/bench/picture.h"
#include "core/service/alertservice.h"
#include "core/service/benchservice.h"

namespace mend::app {

/// What the Bench shows beside its cards, gathered from the services.
Extras extrasOf(const service::BenchService& bench, const service::AlertService& alerts, bool soundWorks, Instant now);

/// What a told event is called in a list: "Wiped back", "Powder is on", "Put in the cabinet".
QString factWords(const bench::Event& event, const bench::BenchFold& bench, const rules::RuleBook& book);

} // namespace mend::app
