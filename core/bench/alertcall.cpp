#include "core/bench/alertcall.h"

#include "core/bench/alertanswer.h"

#include <algorithm>

namespace mend::bench {

namespace {

Call silent(std::optional<Instant> until) { return {CallState::Silent, CallStage::First, {}, until}; }

/// Hands were put on it: silent until half as long again as it takes, then one question (an alert of its own). From
/// the last call on it calls again, unless the hands came so late that only its close is left.
std::optional<Call> underHands(const Alert& alert, Instant now)
{
    if (!alert.handsSince || alert.kind != AlertKind::Closes) {
        return std::nullopt;
    }
    const Instant asks = std::min(*alert.handsSince + alert.handsOn * 3 / 2, *alert.closes);
    const Instant until = asks < *alert.lastCall ? *alert.lastCall : *alert.closes;
    if (now < until) {
        return silent(until);
    }
    return std::nullopt;
}

/// Told "heard", or put off. `first` is when the alert calls if nothing stands against it.
std::optional<Call> putOff(const Alert& alert, const AlertAnswer* answer, const std::optional<Busy>& busy, Instant now)
{
    const auto how = answer ? answeredFromKey(answer->how) : std::nullopt;
    if (!how || (alert.lastCall && (answer->at >= *alert.lastCall || now >= *alert.lastCall))) {
        return std::nullopt;
    }
    const auto notPast = [&](Instant until) { return alert.lastCall ? std::min(until, *alert.lastCall) : until; };
    if (*how == Answered::Heard) {
        return silent(alert.lastCall);
    }
    if (*how == Answered::AfterStep && busy && busy->since <= answer->at) {
        return Call{CallState::Shelved, CallStage::First, {}, notPast(busy->until)};
    }
    if (*how == Answered::StartAt && answer->until && now < notPast(*answer->until)) {
        return Call{CallState::Shelved, CallStage::First, {}, notPast(*answer->until)};
    }
    return std::nullopt;
}

Call calling(const Alert& alert, const AlertAnswer* answer)
{
    const auto how = answer ? answeredFromKey(answer->how) : std::nullopt;
    Call call{CallState::Calling, CallStage::First, alert.due, alert.lastCall};
    if (how == Answered::AfterStep || how == Answered::StartAt) {
        call.stage = CallStage::PutOff;
        call.since = std::max(alert.due, answer->until.value_or(answer->at));
    }
    return call;
}

} // namespace

std::string heardKey(const std::string& alertKey, CallStage stage)
{
    switch (stage) {
    case CallStage::First:
        return alertKey;
    case CallStage::PutOff:
        return alertKey + "/again";
    case CallStage::Last:
        return alertKey + "/last";
    }
    return alertKey;
}

std::optional<Busy> busyOf(std::span<const Alert> alerts, Instant now)
{
    std::optional<Busy> busy;
    for (const Alert& alert : alerts) {
        if (alert.kind != AlertKind::Done || !alert.handsSince || now < *alert.handsSince) {
            continue;
        }
        const Busy one{*alert.handsSince, *alert.handsSince + alert.handsOn, *alert.handsSince + alert.handsOn * 3 / 2};
        if (now >= one.until) {
            continue;
        }
        if (!busy) {
            busy = one;
            continue;
        }
        busy = Busy{std::min(busy->since, one.since), std::max(busy->expectedEnd, one.expectedEnd),
                    std::max(busy->until, one.until)};
    }
    return busy;
}

Call callOf(const Alert& alert, const AlertAnswer* answer, const std::optional<Busy>& busy, Instant now)
{
    if (now < alert.due) {
        return {CallState::NotYet, CallStage::First, {}, alert.due};
    }
    if (alert.kind == AlertKind::Closes && now >= *alert.closes) {
        return silent(std::nullopt); // reckoned before it closed: it is Closed now
    }
    if (const auto call = underHands(alert, now)) {
        return *call;
    }
    if (const auto call = putOff(alert, answer, busy, now)) {
        return *call;
    }
    if (alert.lastCall && now >= *alert.lastCall) {
        return {CallState::Calling, CallStage::Last, *alert.lastCall, alert.closes};
    }
    return calling(alert, answer);
}

std::optional<Instant> waitsForHands(const Alert& alert, const Call& call, const std::optional<Busy>& busy, Instant now)
{
    if (!busy || call.stage == CallStage::Last || alert.kind == AlertKind::Done) {
        return std::nullopt;
    }
    if (alert.urgency != Urgency::A) {
        return busy->until;
    }
    const bool endsInTime = alert.latestStart && busy->expectedEnd <= *alert.latestStart - leastWarning;
    if (endsInTime && now < busy->expectedEnd) {
        return busy->expectedEnd;
    }
    return std::nullopt;
}

bool isSavable(const Alert& alert, Instant now)
{
    return alert.kind == AlertKind::Closes && alert.latestStart && now < *alert.latestStart;
}

} // namespace mend::bench
