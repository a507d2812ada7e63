#pragma once

#include "core/bench/alert.h"
#include "core/bench/state.h"

#include <optional>
#include <span>

namespace mend::bench {

/// Hands are on a stage: what can wait for the end of it waits.
struct Busy {
    Instant since;
    Instant expectedEnd; ///< by the usual minutes
    Instant until;       ///< half as long again: from here on nothing waits for it any more
    bool operator==(const Busy&) const = default;
};

/// Which call of an alert: a later one counts as a new call and is heard again.
enum class CallStage { First, PutOff, Last };

/// Under which key it is kept that a call of an alert was heard: each call has its own, so that a start in the middle
/// of one does not announce it anew.
std::string heardKey(const std::string& alertKey, CallStage stage);

/// What one alert asks for at one instant.
enum class CallState {
    NotYet,  ///< not due
    Silent,  ///< hands are on it, or it was heard
    Shelved, ///< put off on purpose
    Calling,
};

struct Call {
    CallState state = CallState::NotYet;
    CallStage stage = CallStage::First;
    Instant since;                ///< when this call arose; Calling only
    std::optional<Instant> until; ///< when the state changes by itself
    bool operator==(const Call&) const = default;
};

/// Hands that are on something now, by what was begun and what was answered.
std::optional<Busy> busyOf(std::span<const Alert> alerts, Instant now);

/// What an alert asks for, given the newest answer to its key (null: none). Answers given after the last call
/// put nothing off any more; only hands on it do.
Call callOf(const Alert& alert, const AlertAnswer* answer, const std::optional<Busy>& busy, Instant now);

/// May this call wait for the end of what the hands are on? B and C wait; the first call of an A only
/// where that end is at least 30 s before its latest start; a last call and
/// the question "Done?" never. Empty: it may not.
std::optional<Instant> waitsForHands(const Alert& alert, const Call& call, const std::optional<Busy>& busy,
                                     Instant now);

/// Can it still be saved: is there time to start before it closes?
bool isSavable(const Alert& alert, Instant now);

} // namespace mend::bench
