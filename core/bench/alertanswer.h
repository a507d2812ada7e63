#pragma once

#include "core/bench/alert.h"
#include "core/bench/event.h"

#include <optional>
#include <string>
#include <string_view>

namespace mend::bench {

/// How an alert can be answered. Stored in `Event::word` as the alert's key, a bar, and the word below.
enum class Answered {
    Shown,     ///< "shown": the program itself: it was seen and heard for the first time
    HandsOn,   ///< "handsOn": hands on it; silent until hands-on x 1.5 or the close
    Heard,     ///< "heard": silent until the last call
    AfterStep, ///< "afterStep": after this step; never past the last call
    StartAt,   ///< "startAt": in time to start at `until`; never past the last call
};

std::string answeredKey(Answered how);
std::optional<Answered> answeredFromKey(std::string_view word);

/// The `word` of an event of kind AlertAnswered: "12/wipeBack#1/closes@1767225600000|heard".
std::string answerWord(const std::string& alertKey, Answered how);

/// A fact about an alert, ready to be recorded: what, piece, stage, word and until are filled in;
/// times, boot and place are the recorder's.
Event answerEvent(const Alert& alert, Answered how, PersonId by, std::optional<Instant> until = std::nullopt);

} // namespace mend::bench
