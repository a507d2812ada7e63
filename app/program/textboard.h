#pragma once

#include "core/service/alertservice.h"
#include "core/service/wording.h"

#include <QString>

namespace mend::app {

/// The Bench in plain text: every card, its window and its alerts, as the console prints it.
QString boardText(const service::BenchService& bench, const service::AlertService& alerts,
                  const service::Manner& manner);

} // namespace mend::app
