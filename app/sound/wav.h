#pragma once

#include "app/sound/signal.h"

#include <span>

namespace mend::sound {

/// Reads what a speech engine wrote: RIFF WAVE, one channel, 16 bit, little endian, any
/// rate from 8000 to 192000 Hz. A data chunk whose length is unknown (an engine writing
/// into a pipe cannot go back to fill it in) reaches to the end.
Result<Pcm> pcmFromWav(std::span<const std::uint8_t> bytes);

} // namespace mend::sound
