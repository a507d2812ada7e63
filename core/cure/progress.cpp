#include "core/cure/progress.h"

#include "core/cure/formulae.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <deque>
#include <vector>

namespace mend::cure {

namespace {

constexpr double slowestRate = 1e-6;

/// From that instant a cure runs at that rate, until the next pace (the last goes on for ever).
struct Pace {
    Instant from;
    double rate;
};

ActivationEnergy energyAt(const EnergyBand& band, EnergyEnd end)
{
    switch (end) {
    case EnergyEnd::Low:
        return band.low;
    case EnergyEnd::High:
        return band.high;
    case EnergyEnd::Typical:
        break;
    }
    return band.typical;
}

/// Logarithm of the rate, but for a constant that falls out of every comparison. Both branches
/// meet at the bend, so a cure never runs slower for a degree more.
double logRate(const Arrhenius& law, EnergyEnd end, Temperature temperature)
{
    const double below = inJoulesPerMole(energyAt(law.energy, end)) / gasConstant;
    if (!law.bend || temperature <= *law.bend) {
        return -below / temperature.kelvin();
    }
    const double above = inJoulesPerMole(energyAt(law.aboveBend, end)) / gasConstant;
    const double bend = law.bend->kelvin();
    return -below / bend + above * (1.0 / bend - 1.0 / temperature.kelvin());
}

double arrheniusWaitRate(const Arrhenius& law, EnergyEnd end, Temperature temperature, Temperature reference)
{
    if (temperature < law.noCreditBelow) {
        return 0.0;
    }
    const double rate = rateFactor(law, end, std::min(temperature, law.noExtraAbove), reference);
    return rate < slowestRate ? 0.0 : rate;
}

double humidWaitRate(const HumidBand& band, Temperature temperature, std::optional<Humidity> humidity)
{
    const bool warm = temperature >= band.coldest && temperature <= band.warmest;
    const bool damp = humidity && *humidity >= band.driest && *humidity <= band.dampest;
    return warm && damp ? 1.0 : 0.0;
}

/// The air that a piece with some wall to it feels: the coolest of the last `warmThrough`. Starts
/// with what is felt at `from`. One pass: `coolest` holds the steps that may still be the coolest
/// one, oldest and coolest first.
std::vector<Air> feltAir(const Climate& climate, Instant from, Span warmThrough)
{
    assert(!climate.steps.empty());
    const auto& steps = climate.steps;
    const auto first = std::ranges::upper_bound(steps, from - warmThrough, {}, &Air::from);
    auto next = first == steps.begin() ? first : std::prev(first);

    std::vector<Air> felt;
    std::deque<decltype(next)> coolest;
    const auto leaves = [&] { return std::next(coolest.front())->from + warmThrough; };
    while (next != steps.end() || coolest.size() > 1) {
        const bool enters = next != steps.end() && (coolest.size() < 2 || next->from <= leaves());
        const Instant at = enters ? next->from : leaves();
        if (enters) {
            while (!coolest.empty() && coolest.back()->temperature >= next->temperature) {
                coolest.pop_back();
            }
            coolest.push_back(next++);
        }
        while (coolest.size() > 1 && leaves() <= at) {
            coolest.pop_front();
        }
        const Air& now = *coolest.back();
        const Air air{std::max(at, from), coolest.front()->temperature, now.humidity, now.trust};
        if (!felt.empty() && felt.back().from == air.from) {
            felt.back() = air;
        } else {
            felt.push_back(air);
        }
    }
    felt.front().from = from;
    return felt;
}

/// Neighbours of equal rate become one, so that a reading which changes nothing changes nothing.
template <class RateOf> std::vector<Pace> pacesOf(const std::vector<Air>& airs, RateOf rateOf)
{
    std::vector<Pace> paces;
    for (const Air& air : airs) {
        const double rate = rateOf(air);
        if (paces.empty() || paces.back().rate != rate) {
            paces.push_back({air.from, rate});
        }
    }
    return paces;
}

std::vector<Pace> waitPaces(const Law& law, EnergyEnd end, Temperature reference, const std::vector<Air>& felt)
{
    return pacesOf(felt, [&](const Air& air) { return waitRate(law, end, air.temperature, air.humidity, reference); });
}

/// Milliseconds of credit after `run` more at that rate. The one expression that every sum here is
/// made of, so that a forecast and the progress that proves it agree to the last bit.
double creditAfter(double credit, Span run, double rate) { return credit + static_cast<double>(run.count()) * rate; }

/// The first millisecond at which the credit reaches `needed`.
std::optional<Instant> whenReached(const std::vector<Pace>& paces, Span needed)
{
    const double goal = static_cast<double>(needed.count());
    double credit = 0.0;
    std::size_t i = 0;
    for (; i + 1 < paces.size(); ++i) {
        const double after = creditAfter(credit, paces[i + 1].from - paces[i].from, paces[i].rate);
        if (after >= goal) {
            break;
        }
        credit = after;
    }
    const double rate = paces[i].rate;
    if (credit >= goal) {
        return paces[i].from;
    }
    if (rate <= 0.0) {
        return std::nullopt;
    }
    constexpr Span tick{1};
    Span run{static_cast<Span::rep>(std::ceil((goal - credit) / rate))};
    while (run > Span{0} && creditAfter(credit, run - tick, rate) >= goal) {
        run -= tick;
    }
    while (creditAfter(credit, run, rate) < goal) {
        run += tick;
    }
    return paces[i].from + run;
}

/// The last millisecond at which no more than `limit` has been used up; rates are at least 1.
Instant whenUsedUp(const std::vector<Pace>& paces, Span limit)
{
    const double goal = static_cast<double>(limit.count());
    double used = 0.0;
    std::size_t i = 0;
    for (; i + 1 < paces.size(); ++i) {
        const double after = creditAfter(used, paces[i + 1].from - paces[i].from, paces[i].rate);
        if (after > goal) {
            break;
        }
        used = after;
    }
    const double rate = paces[i].rate;
    constexpr Span tick{1};
    Span run{static_cast<Span::rep>(std::floor((goal - used) / rate))};
    while (creditAfter(used, run + tick, rate) <= goal) {
        run += tick;
    }
    while (run > Span{0} && creditAfter(used, run, rate) > goal) {
        run -= tick;
    }
    return paces[i].from + run;
}

} // namespace

double rateFactor(const Arrhenius& law, EnergyEnd end, Temperature temperature, Temperature reference)
{
    assert(reference.kelvin() > 0.0);
    if (temperature.kelvin() <= 0.0) {
        return 0.0;
    }
    return std::exp(logRate(law, end, temperature) - logRate(law, end, reference));
}

double waitRate(const Law& law, EnergyEnd end, Temperature temperature, std::optional<Humidity> humidity,
                Temperature reference)
{
    if (const auto* arrhenius = std::get_if<Arrhenius>(&law)) {
        return arrheniusWaitRate(*arrhenius, end, temperature, reference);
    }
    if (const auto* band = std::get_if<HumidBand>(&law)) {
        return humidWaitRate(*band, temperature, humidity);
    }
    return 1.0;
}

double closingRate(const Law& law, Temperature temperature, Temperature reference)
{
    const auto* arrhenius = std::get_if<Arrhenius>(&law);
    return arrhenius == nullptr ? 1.0 : std::max(1.0, rateFactor(*arrhenius, EnergyEnd::High, temperature, reference));
}

Progress progress(const Law& law, EnergyEnd end, Temperature reference, const Climate& climate, Instant from,
                  Instant until, Span warmThrough)
{
    const auto paces = waitPaces(law, end, reference, feltAir(climate, from, warmThrough));
    double credit = 0.0;
    std::size_t i = 0;
    for (; i + 1 < paces.size() && paces[i + 1].from <= until; ++i) {
        credit = creditAfter(credit, paces[i + 1].from - paces[i].from, paces[i].rate);
    }
    if (paces[i].from < until) {
        credit = creditAfter(credit, until - paces[i].from, paces[i].rate);
    }
    return {Span{static_cast<Span::rep>(std::floor(credit))}, paces[i].rate <= 0.0};
}

std::optional<WaitForecast> forecastWait(Span needed, const Law& law, Temperature reference, const Climate& climate,
                                         Instant from, Span warmThrough)
{
    const auto felt = feltAir(climate, from, warmThrough);
    const auto at = [&](EnergyEnd end) { return whenReached(waitPaces(law, end, reference, felt), needed); };
    const auto typical = at(EnergyEnd::Typical);
    if (!std::holds_alternative<Arrhenius>(law)) {
        return typical ? std::optional(WaitForecast{*typical, *typical, *typical}) : std::nullopt;
    }
    const auto low = at(EnergyEnd::Low);
    const auto high = at(EnergyEnd::High);
    if (!low || !typical || !high) {
        return std::nullopt;
    }
    // Which end is the fast one changes at the reference temperature, so all three are asked.
    const auto [early, late] = std::minmax({*low, *typical, *high});
    const EnergyEnd slow = late == *typical ? EnergyEnd::Typical : late == *low ? EnergyEnd::Low : EnergyEnd::High;
    return WaitForecast{early, *typical, late, slow};
}

Instant forecastClose(Span limit, const Law& law, Temperature reference, const Climate& climate, Instant from)
{
    const auto paces = pacesOf(feltAir(climate, from, Span{0}),
                               [&](const Air& air) { return closingRate(law, air.temperature, reference); });
    return whenUsedUp(paces, std::max(limit, Span{0}));
}

} // namespace mend::cure
