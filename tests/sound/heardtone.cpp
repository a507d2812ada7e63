#include "tests/sound/heardtone.h"

#include "tests/sound/listen.h"

#include <cmath>

namespace mend::ear {

bool holds(const sound::Pcm& recording, sound::Tone tone)
{
    const sound::Signal& signal = sound::signalFor(sound::shippedSignals(), tone);
    const auto starts = sound::pulseStarts(signal);
    const auto pulses = findPulses(recording);
    for (std::size_t first = 0; first + starts.size() <= pulses.size(); ++first) {
        bool fits = true;
        for (std::size_t i = 0; i < starts.size() && fits; ++i) {
            const Pulse& pulse = pulses[first + i];
            const double after = (pulse.from - pulses[first].from) * 1000.0;
            fits = std::abs(after - static_cast<double>(starts[i].count())) < 15.0;
            if (fits) {
                const auto heard = spectrumOf(cut(recording, pulse.from, pulse.to));
                fits = std::abs(heard.strongest(100, 4000) - signal.pitchHz) < 0.01 * signal.pitchHz;
            }
        }
        if (fits) {
            return true;
        }
    }
    return false;
}

} // namespace mend::ear
