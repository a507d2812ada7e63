#include "core/service/cardwording.h"

#include <gtest/gtest.h>

namespace mend::service {
namespace {

using namespace std::chrono;

TEST(WhyWording, GivesEventFigureSourceAirAndResult)
{
    const Instant now = sys_days{2026y / November / 28} + hours{13} + minutes{42};
    bench::Reckoning reckoning;
    reckoning.event = EventId(41);
    reckoning.origin = now - minutes{13};
    reckoning.figure = minutes{20};
    reckoning.closing = true;
    reckoning.of = bench::FigureOf::Closes;
    reckoning.reference = Temperature::fromCelsius(24);
    reckoning.source = {"studio practice", rules::Mark::Practice};
    reckoning.air.steps = {{now - hours{1}, Temperature::fromCelsius(26.4), percentHumidity(41), cure::Trust::Stale}};
    reckoning.result = now + minutes{7};
    EXPECT_EQ(whyWords(reckoning, now, {}).join(QLatin1Char('|')).toStdString(),
              "Closes: counted from 13:29 (fact 41)|20 min at 24.0 °C: studio practice (common practice, no source)|It "
              "goes by the clock|"
              "From 13:29: 26.4 °C, 41 %, reading too old: 3 °C to the safe side|So: 13:49");
    reckoning.result.reset();
    EXPECT_EQ(whyWords(reckoning, now, {}).back().toStdString(), "So: stalled, no time to give");
}

} // namespace
} // namespace mend::service
