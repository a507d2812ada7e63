#pragma once

#include "core/bench/alert.h"

#include <string>

namespace mend::bench {

/// What the voice says after the signal: the act, the piece's bench name, whole minutes until the hands have to
/// start ("Wipe. Heron bowl. 6 minutes."). Ten words at most, so that it fits five seconds; a long
/// bench name is cut. Figures are digits: the speech engine reads them in its language.
std::string spokenText(const Alert& alert, Instant now);

/// "And 4 more."
std::string spokenMore(int count);

/// How many words a voice makes of a text: what stands between blanks.
int wordCount(const std::string& text);

} // namespace mend::bench
