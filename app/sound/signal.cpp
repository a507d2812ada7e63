#include "app/sound/signal.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numbers>
#include <numeric>

namespace mend::sound {
namespace {

constexpr std::array<std::string_view, toneCount> toneNames = {"A", "B", "C", "tick", "pedal-taken", "pedal-done"};

double inSeconds(Span span) { return std::chrono::duration<double>(span).count(); }

/// The wave of one signal at unit scale: fundamental and harmonics, all starting at zero.
class Wave {
public:
    Wave(const Signal& signal, double limitHz) : m_pitch(signal.pitchHz), m_levels{1.0}
    {
        for (const Decibels level : signal.harmonics) {
            if (m_pitch * static_cast<double>(m_levels.size() + 1) < limitHz) {
                m_levels.push_back(asFactor(level));
            }
        }
    }
    double at(double seconds) const
    {
        double sum = 0;
        for (std::size_t i = 0; i < m_levels.size(); ++i) {
            const double turns = m_pitch * static_cast<double>(i + 1) * seconds;
            sum += m_levels[i] * std::sin(2.0 * std::numbers::pi * turns);
        }
        return sum;
    }
    /// The largest value over one period, so that the level does not hang on the sample rate.
    double peak() const
    {
        constexpr int steps = 4096;
        double largest = 0;
        for (int i = 0; i < steps; ++i) {
            largest = std::max(largest, std::abs(at(i / (m_pitch * steps))));
        }
        return largest;
    }

private:
    double m_pitch;
    std::vector<double> m_levels;
};

/// Rises and falls on half a cosine, which starts and ends without a click.
double envelope(double position, double rise, double fall)
{
    const auto slope = [](double share) { return 0.5 - 0.5 * std::cos(std::numbers::pi * share); };
    if (position < rise) {
        return slope(position / rise);
    }
    if (position > 1.0 - fall) {
        return slope((1.0 - position) / fall);
    }
    return 1.0;
}

} // namespace

std::string_view nameOf(Tone tone) { return toneNames.at(static_cast<std::size_t>(tone)); }

std::optional<Tone> toneNamed(std::string_view name)
{
    const auto found = std::find(toneNames.begin(), toneNames.end(), name);
    if (found == toneNames.end()) {
        return std::nullopt;
    }
    return static_cast<Tone>(found - toneNames.begin());
}

double asFactor(Decibels level) { return std::pow(10.0, level.value / 20.0); }

Span Pcm::length() const
{
    return sampleRate == 0 ? Span(0) : Span(static_cast<std::int64_t>(samples.size()) * 1000 / sampleRate);
}

const Signal& signalFor(const std::vector<Signal>& signals, Tone tone)
{
    const auto found = std::find_if(signals.begin(), signals.end(), [tone](const Signal& s) { return s.tone == tone; });
    assert(found != signals.end());
    return *found;
}

std::vector<Span> pulseStarts(const Signal& signal)
{
    std::vector<Span> starts;
    Span at{0};
    for (const int pulses : signal.groups) {
        for (int i = 0; i < pulses; ++i) {
            starts.push_back(at);
            at += signal.pulse + signal.spacing;
        }
        at += signal.groupGap - signal.spacing;
    }
    return starts;
}

Span lengthOf(const Signal& signal)
{
    const std::vector<Span> starts = pulseStarts(signal);
    return starts.empty() ? Span(0) : starts.back() + signal.pulse;
}

std::optional<Span> gapAfter(const Signal& signal, Span sinceFirstBurst)
{
    for (const Repeat& repeat : signal.repeats) {
        if (!repeat.during || sinceFirstBurst < *repeat.during) {
            return repeat.gap;
        }
    }
    return std::nullopt;
}

Pcm render(const Signal& signal, int sampleRate, Decibels gain)
{
    assert(sampleRate >= 8000 && sampleRate <= 192000 && gain <= Decibels{});
    const Wave wave(signal, sampleRate / 2.0);
    const double scale = 32767.0 * asFactor(signal.peak) * asFactor(gain) / wave.peak();
    const auto toSamples = [sampleRate](Span span) {
        return static_cast<std::size_t>(std::llround(inSeconds(span) * sampleRate));
    };

    Pcm pcm{sampleRate, std::vector<std::int16_t>(toSamples(lengthOf(signal)), 0)};
    const std::size_t pulse = toSamples(signal.pulse);
    for (const Span start : pulseStarts(signal)) {
        const std::size_t first = toSamples(start);
        for (std::size_t i = 0; i < pulse && first + i < pcm.samples.size(); ++i) {
            const double share = static_cast<double>(i) / static_cast<double>(pulse);
            const double value =
                scale * envelope(share, signal.rise, signal.fall) * wave.at(static_cast<double>(i) / sampleRate);
            pcm.samples[first + i] = static_cast<std::int16_t>(std::lround(value));
        }
    }
    return pcm;
}

} // namespace mend::sound
