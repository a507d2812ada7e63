#pragma once

#include "app/sound/signal.h"

namespace mend::ear {

/// Whether the whole rhythm and pitch of this shipped tone is in the recording, wherever it begins.
bool holds(const sound::Pcm& recording, sound::Tone tone);

} // namespace mend::ear
