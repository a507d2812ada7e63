#include "core/service/planfacts.h"

#include "core/base/civil.h"
#include "core/service/openhours.h"

namespace mend::service {

bench::PlanFacts planFactsOf(const Studio& studio, std::span<const bench::Event> events, Instant now)
{
    bench::PlanFacts facts;
    const QTimeZone zone = studio.timeZone();
    for (const auto& [person, hours] : studio.ownHours) {
        if (hours.isTold()) {
            facts.hours[person] = openHours(hours, zone, now, now + facts.horizon());
        }
    }
    for (const bench::Event& event : bench::effective(events)) {
        if (event.what == bench::What::CameBack) {
            facts.promised.erase(event.piece);
        }
        const auto day = event.what == bench::What::Promised ? dayFrom(event.word) : std::nullopt;
        if (day) {
            facts.promised[event.piece] = wallTime(plusDays(*day, 1), std::chrono::minutes(0), zone, Twice::First);
        }
    }
    return facts;
}

} // namespace mend::service
