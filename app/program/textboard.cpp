#include "app/program/textboard.h"

#include "app/desk/boardtext.h"

namespace mend::app {

QString boardText(const service::BenchService& bench, const service::AlertService& alerts,
                  const service::Manner& manner)
{
    return desk::boardText({{}, bench.bench(), bench.board(), alerts.alerts(), manner});
}

} // namespace mend::app
