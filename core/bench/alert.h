#pragma once

#include "core/bench/window.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::bench {

/// How urgent a call is. A: a costly window is about to close. B: hands are wanted.
/// C: an action that can wait. Anything that needs no action is not an alert.
enum class Urgency { C, B, A };

/// When a window calls, worked out from its opening, its close and the hands-on time.
struct AlertTimes {
    Instant first;       ///< latest start - a, a = min(room / 2, clamp(W / 5, 2 min, 30 min))
    Instant lastCall;    ///< latest start - min(1 min, a / 2)
    Instant latestStart; ///< closes - hands-on
    bool operator==(const AlertTimes&) const = default;
};

/// Empty where the room is negative or the window is shorter than three minutes: such a
/// window is said before the mix and counted softly, never alarmed.
std::optional<AlertTimes> alertTimes(Instant opens, Instant closes, Span handsOn);

/// Names one alert for ever, over restarts: piece, stage, repetition, and what calls.
std::string alertKey(PieceId piece, const StageInstance& stage, std::string_view what);

} // namespace mend::bench
