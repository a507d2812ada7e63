#pragma once

#include "app/sound/signal.h"

#include <vector>

/// An ear for the tests: finds pulses, pitch and energy in samples, knowing nothing of
/// how they were made.
namespace mend::ear {

/// A stretch that is not silent, in seconds from the first sample.
struct Pulse {
    double from = 0;
    double to = 0;
};

/// Pulses louder than `threshold` (share of full scale), looked at in steps of 1 ms;
/// silences shorter than 15 ms do not part two pulses.
std::vector<Pulse> findPulses(const sound::Pcm& pcm, double threshold = 0.004);

/// The samples between two times.
sound::Pcm cut(const sound::Pcm& pcm, double from, double to);

/// Power at each frequency bin of a Hann-windowed transform of the whole, zero-padded to a
/// power of two.
struct Spectrum {
    double binHz = 0;
    std::vector<double> power;
    double between(double fromHz, double toHz) const;
    double strongest(double fromHz, double toHz) const; ///< in hertz, interpolated
};
Spectrum spectrumOf(const sound::Pcm& pcm);

/// Power of one frequency by Goertzel's recurrence, on any scale of its own.
double powerAt(const sound::Pcm& pcm, double hertz);

double rmsDbfs(const sound::Pcm& pcm);
double peakDbfs(const sound::Pcm& pcm);

} // namespace mend::ear
