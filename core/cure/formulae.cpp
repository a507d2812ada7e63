#include "core/cure/formulae.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace mend::cure {

double q10Factor(double q10, Temperature aged, Temperature room)
{
    assert(q10 > 0.0);
    return std::pow(q10, (aged - room) / degreesApart(10.0));
}

Span q10Time(Span roomTime, double q10, Temperature aged, Temperature room)
{
    const double milliseconds = static_cast<double>(roomTime.count()) / q10Factor(q10, aged, room);
    return Span{static_cast<Span::rep>(std::ceil(milliseconds))};
}

Warmth temperatureTimeFactor(const Climate& climate, Instant from, Instant until, Temperature datum)
{
    assert(!climate.steps.empty());
    Warmth sum;
    auto step = std::ranges::upper_bound(climate.steps, from, {}, &Air::from);
    if (step != climate.steps.begin()) {
        --step;
    }
    while (from < until) {
        const auto next = std::next(step);
        const Instant end = next == climate.steps.end() ? until : std::min(next->from, until);
        const std::int64_t above = std::max<std::int64_t>(0, (step->temperature - datum).count());
        sum += Warmth::fromCount(above * (end - from).count());
        from = end;
        step = next;
    }
    return sum;
}

Result<ActivationEnergy> energyFrom(const Observation& one, const Observation& other)
{
    const bool warmth =
        one.temperature != other.temperature && std::min(one.temperature, other.temperature).kelvin() > 0.0;
    const bool time = one.taken > Span{0} && other.taken > Span{0};
    if (!warmth || !time) {
        return Fault{FaultKind::BadInput, "two observations at different temperatures are needed, each with a time"};
    }
    const double times = static_cast<double>(one.taken.count()) / static_cast<double>(other.taken.count());
    const double joules =
        gasConstant * std::log(times) / (1.0 / one.temperature.kelvin() - 1.0 / other.temperature.kelvin());
    if (joules < 0.0) {
        return Fault{FaultKind::BadInput, "the warmer observation took longer"};
    }
    return ActivationEnergy::fromCount(std::llround(joules));
}

Result<Temperature> dewPoint(Temperature air, Humidity humidity)
{
    constexpr double a = 17.62;
    constexpr double b = 243.12;
    const double celsius = air.celsius();
    const double percent = inPercent(humidity);
    if (percent <= 0.0 || percent > 100.0 || celsius < -80.0 || celsius > 100.0) {
        return Fault{FaultKind::BadInput, "no dew point for that air"};
    }
    const double g = std::log(percent / 100.0) + a * celsius / (b + celsius);
    return Temperature::fromCelsius(b * g / (a - g));
}

Result<TemperatureStep> dewMargin(Temperature object, Temperature air, Humidity humidity)
{
    const auto dew = dewPoint(air, humidity);
    if (!dew) {
        return dew.fault();
    }
    return object - dew.value();
}

TemperatureStep leastDewMargin() { return degreesApart(3.0); }

bool staysDry(TemperatureStep margin) { return margin >= leastDewMargin(); }

} // namespace mend::cure
