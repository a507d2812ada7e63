#pragma once

#include "core/base/result.h"
#include "core/base/time.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mend::sound {

/// What the bench can say without words: three urgencies, the mark of a counted
/// window, and the two answers of the foot pedal.
enum class Tone { A, B, C, Tick, PedalTaken, PedalDone };
inline constexpr int toneCount = 6;

/// The name that signals.json and the sound process use.
std::string_view nameOf(Tone tone);
std::optional<Tone> toneNamed(std::string_view name);

/// Loudness against a full-scale sample, in decibels: 0 is full, less is softer.
struct Decibels {
    double value = 0;
    auto operator<=>(const Decibels&) const = default;
};
/// The factor on the amplitude.
double asFactor(Decibels level);

/// How long to stay silent after a burst before it sounds again.
struct Repeat {
    Span gap{0};
    std::optional<Span> during; ///< counted from the first burst; empty for ever
    bool operator==(const Repeat&) const = default;
};

/// One sound as numbers: equal pulses in groups, one pitch with its harmonics.
struct Signal {
    Tone tone = Tone::A;
    bool isAlert = false;            ///< a new alert cuts the one that sounds; feedback sounds beside it
    std::vector<int> groups;         ///< pulses in each group, 1 to 10
    Span pulse{0};                   ///< 20 ms to 2 s
    Span spacing{0};                 ///< silence between the pulses of a group
    Span groupGap{0};                ///< silence between groups
    double pitchHz = 0;              ///< 150 to 1000 Hz
    std::vector<Decibels> harmonics; ///< second, third ... against the fundamental
    double rise = 0;                 ///< share of the pulse, 0 to 0.5
    double fall = 0;                 ///< share of the pulse, 0 to 0.5
    Decibels peak;                   ///< of the whole signal, at or below -1 dBFS
    std::vector<Repeat> repeats;     ///< empty: it sounds once
};

/// One channel of samples.
struct Pcm {
    int sampleRate = 0; ///< in hertz
    std::vector<std::int16_t> samples;
    Span length() const;
};

/// The set of signals in a file; exactly one for each tone. BadInput names every fault found.
Result<std::vector<Signal>> parseSignals(std::string_view json);

/// The signals of this build (resources/sounds/signals.json).
const std::vector<Signal>& shippedSignals();
const Signal& signalFor(const std::vector<Signal>& signals, Tone tone);

/// Where each pulse begins, counted from the start of the burst.
std::vector<Span> pulseStarts(const Signal& signal);
Span lengthOf(const Signal& signal);

/// The silence that follows a burst, or nothing where the signal is not repeated.
std::optional<Span> gapAfter(const Signal& signal, Span sinceFirstBurst);

/// The samples of one burst. `gain` is at or below 0 dB: the signals are drawn at their
/// full level, so raising an alert means having played it softer before.
/// `sampleRate` is in hertz, 8000 to 192000; harmonics above half of it are left out.
Pcm render(const Signal& signal, int sampleRate, Decibels gain = {});

} // namespace mend::sound
