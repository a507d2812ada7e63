#include "core/cure/progress.h"

#include "tests/cure/samples.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace mend;
using namespace mend::cure;
using namespace mend::cure::samples;

// Everything reckoned a second time by the plainest means: walk the clock in short strides, look the
// air up at the middle of each, add. Air changes on whole strides, so the walk has no error of its own.
namespace {

constexpr Span stride{10'000};
constexpr Span horizon{10 * 3'600'000};

struct Sample {
    double celsius = 0.0;
    double percent = -1.0; // below 0: not known
};

Sample airAt(const Climate& climate, Instant at)
{
    Sample sample;
    for (std::size_t i = 0; i < climate.steps.size(); ++i) {
        if (i == 0 || climate.steps[i].from <= at) {
            sample.celsius = climate.steps[i].temperature.celsius();
            sample.percent = climate.steps[i].humidity ? inPercent(*climate.steps[i].humidity) : -1.0;
        }
    }
    return sample;
}

/// The coolest air of the last while, looked up at every change in it.
double feltAt(const Climate& climate, Instant at, Span warmThrough)
{
    double coolest = std::min(airAt(climate, at).celsius, airAt(climate, at - warmThrough).celsius);
    for (const Air& air : climate.steps) {
        if (air.from > at - warmThrough && air.from <= at) {
            coolest = std::min(coolest, air.temperature.celsius());
        }
    }
    return coolest;
}

double factor(const Arrhenius& law, double energy, double energyAbove, double celsius, double reference)
{
    const auto speed = [](double joules, double from, double to) {
        return std::exp(joules / 8.31446261815324 * (1.0 / (from + 273.15) - 1.0 / (to + 273.15)));
    };
    if (!law.bend) {
        return speed(energy, reference, celsius);
    }
    const double bend = law.bend->celsius();
    const auto fromBend = [&](double to) { return speed(to > bend ? energyAbove : energy, bend, to); };
    return fromBend(celsius) / fromBend(reference);
}

double waitSpeed(const Law& law, double celsius, double percent, double reference)
{
    if (std::holds_alternative<ClockOnly>(law)) {
        return 1.0;
    }
    if (const auto* humid = std::get_if<HumidBand>(&law)) {
        const bool inside = celsius >= humid->coldest.celsius() && celsius <= humid->warmest.celsius() &&
                            percent >= inPercent(humid->driest) && percent <= inPercent(humid->dampest);
        return inside ? 1.0 : 0.0;
    }
    const auto& epoxy = std::get<Arrhenius>(law);
    if (celsius < epoxy.noCreditBelow.celsius()) {
        return 0.0;
    }
    return factor(epoxy, inJoulesPerMole(epoxy.energy.typical), inJoulesPerMole(epoxy.aboveBend.typical),
                  std::min(celsius, epoxy.noExtraAbove.celsius()), reference);
}

double closeSpeed(const Law& law, double celsius, double reference)
{
    const auto* epoxy = std::get_if<Arrhenius>(&law);
    if (epoxy == nullptr) {
        return 1.0;
    }
    return std::max(1.0, factor(*epoxy, inJoulesPerMole(epoxy->energy.high), inJoulesPerMole(epoxy->aboveBend.high),
                                celsius, reference));
}

constexpr double second = 1000.0;

} // namespace

TEST(Quadrature, AgreesToTheSecondOnAThousandClimates)
{
    Random random(20'260'301);
    int waits = 0;
    int closings = 0;
    for (int run = 0; run < 1'000; ++run) {
        const Climate climate = anyClimate(random, stride);
        const Law law = anyLaw(random);
        const Temperature reference = anyTemperature(random, 15, 30);
        const Span warmThrough = oneIn(random, 2) ? Span{0} : stride * between(random, 0, Span{45min} / stride);
        const Instant from = evening + stride * between(random, 0, 12h / stride);
        const Span needed{between(random, 1, hours(8).count())};

        double served = 0.0;
        double used = 0.0;
        double waitEnds = -1.0;
        double closes = -1.0;
        for (Span gone{0}; gone < horizon; gone += stride) {
            const Instant middle = from + gone + stride / 2;
            const double felt = feltAt(climate, middle, warmThrough);
            const Sample air = airAt(climate, middle);
            const double wait = waitSpeed(law, felt, air.percent, reference.celsius());
            const double close = closeSpeed(law, air.celsius, reference.celsius());
            const auto goal = static_cast<double>(needed.count());
            const auto step = static_cast<double>(stride.count());
            if (waitEnds < 0.0 && served + wait * step >= goal) {
                waitEnds = static_cast<double>(gone.count()) + (goal - served) / wait;
            }
            if (closes < 0.0 && used + close * step >= goal) {
                closes = static_cast<double>(gone.count()) + (goal - used) / close;
            }
            served += wait * step;
            used += close * step;
        }

        const Progress reckoned =
            progress(law, EnergyEnd::Typical, reference, climate, from, from + horizon, warmThrough);
        ASSERT_NEAR(static_cast<double>(reckoned.served.count()), served, second) << "run " << run;
        ASSERT_GE(closes, 0.0) << "8 h by the clock are over in 10";
        const Instant close = forecastClose(needed, law, reference, climate, from);
        ASSERT_NEAR(static_cast<double>((close - from).count()), closes, second) << "run " << run;
        closings += closes < static_cast<double>(needed.count()) - second ? 1 : 0;
        if (waitEnds >= 0.0) {
            const auto forecast = forecastWait(needed, law, reference, climate, from, warmThrough);
            if (forecast) { // empty where another end of the band stalls first
                ++waits;
                ASSERT_NEAR(static_cast<double>((forecast->typical - from).count()), waitEnds, second) << "run " << run;
            }
        }
    }
    EXPECT_GT(waits, 400);
    EXPECT_GT(closings, 300);
}
