#include "tests/sound/listen.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace mend::ear {
namespace {

using Complex = std::complex<double>;

/// Radix-2 transform in place; the size is a power of two.
void transform(std::vector<Complex>& values)
{
    const std::size_t n = values.size();
    for (std::size_t i = 1, j = 0; i < n; ++i) {
        std::size_t bit = n >> 1U;
        for (; (j & bit) != 0; bit >>= 1U) {
            j ^= bit;
        }
        j ^= bit;
        if (i < j) {
            std::swap(values[i], values[j]);
        }
    }
    for (std::size_t length = 2; length <= n; length <<= 1U) {
        const double angle = -2.0 * std::numbers::pi / static_cast<double>(length);
        const Complex step(std::cos(angle), std::sin(angle));
        for (std::size_t start = 0; start < n; start += length) {
            Complex turn(1.0, 0.0);
            for (std::size_t k = 0; k < length / 2; ++k) {
                const Complex even = values[start + k];
                const Complex odd = values[start + k + length / 2] * turn;
                values[start + k] = even + odd;
                values[start + k + length / 2] = even - odd;
                turn *= step;
            }
        }
    }
}

double toDbfs(double share) { return 20.0 * std::log10(share); }

} // namespace

std::vector<Pulse> findPulses(const sound::Pcm& pcm, double threshold)
{
    const double rate = pcm.sampleRate;
    const double limit = threshold * 32768.0;
    std::vector<Pulse> pulses;
    for (std::size_t i = 0; i < pcm.samples.size(); ++i) {
        if (std::abs(pcm.samples[i]) < limit) {
            continue;
        }
        const double at = static_cast<double>(i) / rate;
        if (pulses.empty() || at - pulses.back().to > 0.015) {
            pulses.push_back({at, at});
        }
        pulses.back().to = at;
    }
    return pulses;
}

sound::Pcm cut(const sound::Pcm& pcm, double from, double to)
{
    const auto last = static_cast<std::ptrdiff_t>(pcm.samples.size());
    const auto index = [&](double seconds) {
        return std::clamp<std::ptrdiff_t>(std::lround(seconds * pcm.sampleRate), 0, last);
    };
    return {pcm.sampleRate, {pcm.samples.begin() + index(from), pcm.samples.begin() + index(to)}};
}

double Spectrum::between(double fromHz, double toHz) const
{
    double sum = 0;
    for (std::size_t i = 0; i < power.size(); ++i) {
        const double hertz = static_cast<double>(i) * binHz;
        sum += hertz >= fromHz && hertz <= toHz ? power[i] : 0.0;
    }
    return sum;
}

double Spectrum::strongest(double fromHz, double toHz) const
{
    std::size_t best = 1;
    double most = -1;
    for (std::size_t i = 1; i + 1 < power.size(); ++i) {
        const double hertz = static_cast<double>(i) * binHz;
        if (hertz >= fromHz && hertz <= toHz && power[i] > most) {
            most = power[i];
            best = i;
        }
    }
    const double left = std::log(power[best - 1] + 1e-12);
    const double middle = std::log(power[best] + 1e-12);
    const double right = std::log(power[best + 1] + 1e-12);
    const double shift = 0.5 * (left - right) / (left - 2.0 * middle + right);
    return (static_cast<double>(best) + (std::isfinite(shift) ? shift : 0.0)) * binHz;
}

Spectrum spectrumOf(const sound::Pcm& pcm)
{
    const std::size_t count = pcm.samples.size();
    std::size_t size = 1;
    while (size < count * 2) {
        size <<= 1U;
    }
    std::vector<Complex> values(size);
    for (std::size_t i = 0; i < count; ++i) {
        const double hann =
            0.5 - 0.5 * std::cos(2.0 * std::numbers::pi * static_cast<double>(i) / static_cast<double>(count));
        values[i] = hann * pcm.samples[i];
    }
    transform(values);
    Spectrum spectrum{static_cast<double>(pcm.sampleRate) / static_cast<double>(size), {}};
    for (std::size_t i = 0; i <= size / 2; ++i) {
        spectrum.power.push_back(std::norm(values[i]));
    }
    return spectrum;
}

double powerAt(const sound::Pcm& pcm, double hertz)
{
    const double factor = 2.0 * std::cos(2.0 * std::numbers::pi * hertz / pcm.sampleRate);
    double before = 0;
    double last = 0;
    for (const std::int16_t sample : pcm.samples) {
        const double value = sample + factor * last - before;
        before = last;
        last = value;
    }
    return last * last + before * before - factor * last * before;
}

double rmsDbfs(const sound::Pcm& pcm)
{
    double sum = 0;
    for (const std::int16_t sample : pcm.samples) {
        sum += static_cast<double>(sample) * sample;
    }
    return toDbfs(std::sqrt(sum / static_cast<double>(pcm.samples.size())) / 32768.0);
}

double peakDbfs(const sound::Pcm& pcm)
{
    int most = 0;
    for (const std::int16_t sample : pcm.samples) {
        most = std::max(most, std::abs(static_cast<int>(sample)));
    }
    return toDbfs(most / 32768.0);
}

} // namespace mend::ear
