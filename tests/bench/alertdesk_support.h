#pragma once

#include "core/bench/alertdesk.h"

#include <algorithm>
#include <string>
#include <vector>

namespace mend::bench::test {

using std::chrono::hours;
using std::chrono::milliseconds;
using std::chrono::minutes;
using std::chrono::seconds;

/// A fixed afternoon.
inline const Instant noon = std::chrono::sys_days{std::chrono::year{2027} / 3 / 1} + hours(12);

/// A window that opened at `opens`, closes at `closes`, and takes `hands`.
inline Alert closing(const std::string& name, Instant opens, Instant closes, Span hands,
                     rules::Miss miss = rules::Miss::Afternoon)
{
    const auto times = alertTimes(opens, closes, hands);
    Alert alert;
    alert.key = name + "/closes";
    alert.kind = AlertKind::Closes;
    alert.urgency = isCostly(miss) ? Urgency::A : Urgency::B;
    alert.piece = PieceId(static_cast<std::int64_t>(std::hash<std::string>{}(name)&0xffffff) + 1);
    alert.stage = {"wipeBack", 1};
    alert.act = "Wipe back the filler";
    alert.spoken = "Wipe";
    alert.benchName = name;
    alert.miss = miss;
    alert.due = times.value().first;
    alert.opens = opens;
    alert.lastCall = times->lastCall;
    alert.latestStart = times->latestStart;
    alert.closes = closes;
    alert.handsOn = hands;
    return alert;
}

/// Something that may be done from `due` on; B where a minute is recommended.
inline Alert opening(const std::string& name, Instant due, Urgency urgency = Urgency::C)
{
    Alert alert;
    alert.key = name + "/opens";
    alert.kind = AlertKind::Opens;
    alert.urgency = urgency;
    alert.piece = PieceId(static_cast<std::int64_t>(std::hash<std::string>{}(name)&0xffffff) + 1);
    alert.stage = {"takeOut", 1};
    alert.act = "Take out of the cabinet";
    alert.spoken = "Take out";
    alert.benchName = name;
    alert.due = due;
    alert.opens = due;
    alert.handsOn = minutes(2);
    return alert;
}

inline Alert closed(Alert alert)
{
    alert.key += "d";
    alert.kind = AlertKind::Closed;
    alert.urgency = Urgency::C;
    alert.due = *alert.closes;
    alert.lastCall.reset();
    return alert;
}

/// Hands on it since then; the pair of alerts that a window under hands gives.
inline std::vector<Alert> underHands(Alert alert, Instant since)
{
    alert.handsSince = since;
    Alert done = alert;
    done.key += "/done";
    done.kind = AlertKind::Done;
    done.urgency = Urgency::C;
    done.due = since + alert.handsOn * 3 / 2;
    if (alert.closes) {
        done.due = std::min(done.due, *alert.closes);
    }
    done.lastCall.reset();
    return {alert, done};
}

/// Lives through time from one `next` to the next, as the one tick does, and writes down what was heard.
class DeskRun {
public:
    struct Heard {
        Instant at;
        Play play;
    };

    explicit DeskRun(Instant start) { inputs.now = start; }

    Decision look()
    {
        m_last = decide(memory, alerts, answers, inputs);
        memory = m_last.memory;
        inputs.gap.reset();
        if (m_last.play) {
            heard.push_back({inputs.now, *m_last.play});
        }
        for (const AlertFact& fact : m_last.facts) {
            answer(fact.key, Answered::Shown);
        }
        return m_last;
    }

    /// Up to `end` and on it.
    Decision until(Instant end)
    {
        look();
        while (m_last.next && *m_last.next <= end) {
            inputs.now = *m_last.next;
            look();
        }
        inputs.now = end;
        return look();
    }

    void answer(const std::string& key, Answered how, std::optional<Instant> putOff = std::nullopt)
    {
        std::erase_if(answers, [&](const AlertAnswer& held) { return held.key == key; });
        answers.push_back({key, answeredKey(how), inputs.now, putOff, PersonId(1)});
    }

    /// Killed and started again: only what was stored is left.
    void restart() { memory = {}; }

    int bursts(Signal signal) const
    {
        return static_cast<int>(std::ranges::count(heard, signal, [](const Heard& one) { return one.play.signal; }));
    }
    /// How often an alert was announced anew.
    int announced(const std::string& key) const
    {
        int times = 0;
        for (const Heard& one : heard) {
            times += static_cast<int>(std::ranges::count(one.play.keys, key));
        }
        return times;
    }

    DeskInputs inputs;
    AlertMemory memory;
    std::vector<Alert> alerts;
    std::vector<AlertAnswer> answers;
    std::vector<Heard> heard;

private:
    Decision m_last;
};

} // namespace mend::bench::test
