#pragma once

#include "core/bench/window.h"

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
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

/// How long before its latest start a call must be heard at the latest that waited for something: for busy hands, or
/// for the first of its chain to open. A figure of ours.
constexpr Span leastWarning = std::chrono::seconds(30);

/// Empty where the room is negative or the window is shorter than three minutes: such a
/// window is said before the mix and counted softly, never alarmed.
std::optional<AlertTimes> alertTimes(Instant opens, Instant closes, Span handsOn);

/// When the closing of a window calls, as it stands: its chain and what the air has done to it counted in. One that has
/// room by its rule, but none any more because of its chain, of a reading or of what was done to the piece meanwhile,
/// calls at once and to the last. Empty where
/// nothing closes, where it is counted, and where its rule leaves no room.
std::optional<AlertTimes> callTimes(const Window& window);

/// Names one alert for ever, over restarts: piece, stage, repetition, and what calls.
/// It holds no bar and no blank.
std::string alertKey(PieceId piece, const StageInstance& stage, std::string_view what);

/// What an alert is about.
enum class AlertKind {
    Opens,  ///< something may be done now: take out, a window opened, ask the touch test again
    Closes, ///< a window is about to close
    Closed, ///< a window closed and nobody said what became of it
    Done,   ///< hands were on it for half as long again as it takes: "Done?"
};

/// One call for a person's hands, now or to come. Worked out from the windows, never stored;
/// only what people answered is (alertanswer.h).
struct Alert {
    std::string key;
    AlertKind kind = AlertKind::Opens;
    Urgency urgency = Urgency::C;
    PieceId piece;
    StageInstance stage;
    std::string act;       ///< "Wipe back the filler"
    std::string spoken;    ///< one or two words for the voice: "Wipe"
    std::string benchName; ///< never a customer's name
    rules::Miss miss = rules::Miss::Nothing;
    Instant due; ///< it calls from here on, never earlier
    std::optional<Instant> opens;
    std::optional<Instant> lastCall; ///< Closes only: calls again, whatever was put off
    std::optional<Instant> latestStart;
    std::optional<Instant> closes;
    Span handsOn{0};
    std::optional<Instant> handsSince; ///< somebody began, or said "hands on it"
    bool waitsForTest = false;
    bool quiet = false;               ///< shown and never sounded: its piece is on hold
    std::vector<StageInstance> chain; ///< what the same hands must serve, in order, this first; empty: alone
    std::vector<PieceId> chainPieces; ///< the pieces of `chain`, same order
    std::vector<std::string> chainNames;
    bool operator==(const Alert&) const = default;
};

/// Does missing it cost an afternoon or more?
bool isCostly(rules::Miss miss);

/// How long until the hands have to start: the same figure as `remaining(window, now)`.
std::optional<Span> remaining(const Alert& alert, Instant now);

/// Every alert of the bench that calls now or will call as things stand, in no order.
/// An alert that was shown stays until an act or its close ends it, whatever a reading does to
/// its window. Windows of one chain call once. The time of every call is in it, so `now` only decides
/// whether a window has closed.
std::vector<Alert> alertsFor(const BenchFold& bench, const std::vector<Window>& windows, const rules::RuleBook& book,
                             Instant now);

/// The costly windows whose latest start falls inside the next `length`, soonest first: to be
/// listed before hands that will be busy that long begin something else.
std::vector<Alert> closingWithin(const std::vector<Alert>& alerts, Instant now, Span length);

} // namespace mend::bench
