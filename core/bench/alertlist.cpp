#include "core/bench/alertlist.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace mend::bench {

namespace {

/// Sorts one bench's alerts at one instant.
class Sorting {
public:
    Sorting(const AlertMemory& memory, std::span<const Alert> alerts, std::span<const AlertAnswer> answers,
            const DeskInputs& inputs)
        : m_memory(memory), m_alerts(alerts), m_inputs(inputs), m_now(inputs.now), m_list{{}, {}, {}, Soonest(m_now)}
    {
        for (const AlertAnswer& answer : answers) {
            m_answers[answer.key] = &answer;
        }
    }

    CallList sorted()
    {
        m_list.busy = busyOf(m_alerts, m_now);
        const auto superseded = closing();
        for (const Alert& alert : m_alerts) {
            if (alert.kind != AlertKind::Opens || !superseded.contains({alert.piece, alert.stage})) {
                add(alert);
            }
        }
        std::ranges::sort(m_list.calling, isMoreUrgent);
        return std::move(m_list);
    }

private:
    /// Windows whose closing calls: their opening has nothing more to say.
    std::set<std::pair<PieceId, StageInstance>> closing() const
    {
        std::set<std::pair<PieceId, StageInstance>> closing;
        for (const Alert& alert : m_alerts) {
            if (alert.kind != AlertKind::Closes || alert.due > m_now) {
                continue;
            }
            closing.emplace(alert.piece, alert.stage);
            for (std::size_t i = 0; i < alert.chain.size(); ++i) {
                closing.emplace(alert.chainPieces[i], alert.chain[i]);
            }
        }
        return closing;
    }

    void add(const Alert& alert)
    {
        const AlertAnswer* answer = answerTo(alert.key);
        const Call call = callOf(alert, answer, m_list.busy, m_now);
        m_list.next.consider(call.until);
        if (call.state == CallState::Shelved) {
            m_list.shelved.push_back({alert.key, call.until});
        } else if (call.state == CallState::Calling) {
            m_list.calling.push_back({&alert, call, heardSoFar(alert, call, answer), mustWait(alert, call)});
        }
    }

    const AlertAnswer* answerTo(const std::string& key) const
    {
        const auto found = m_answers.find(key);
        return found == m_answers.end() ? nullptr : found->second;
    }

    HeardAlert heardSoFar(const Alert& alert, const Call& call, const AlertAnswer* answer) const
    {
        HeardAlert heard;
        const auto known = m_memory.heard.find(alert.key);
        if (known != m_memory.heard.end()) {
            heard = known->second;
        } else if (answer && answer->how == answeredKey(Answered::Shown)) {
            heard.firstSounded = answer->at;
        }
        const Instant from = countsFrom(alert, call, answer);
        if (heard.call.empty() || heard.stage < call.stage || (heard.sounded && *heard.sounded < from)) {
            heard.call = heardKey(alert.key, call.stage);
            heard.stage = call.stage;
            heard.shown = false;
            heard.sounded.reset();
        }
        const auto told = toldAt(alert, call.stage, from);
        if (told && !heard.shown) {
            heard.shown = true;
            heard.sounded = told;
            heard.firstSounded = heard.firstSounded.value_or(*told);
        }
        return heard;
    }

    /// What was heard of it earlier counts no more: it was answered since, or it is a call that was put off.
    static Instant countsFrom(const Alert& alert, const Call& call, const AlertAnswer* answer)
    {
        if (call.stage == CallStage::PutOff) {
            return call.since;
        }
        return answer && answer->how != answeredKey(Answered::Shown) ? answer->at : alert.due;
    }

    /// When this call, or a later one of the same alert, is kept as heard. A window that moves on after its last call
    /// has no other last call.
    std::optional<Instant> toldAt(const Alert& alert, CallStage from, Instant since) const
    {
        for (const CallStage stage : {CallStage::First, CallStage::PutOff, CallStage::Last}) {
            const AlertAnswer* told = stage < from ? nullptr : answerTo(heardKey(alert.key, stage));
            if (told && told->at >= since) {
                return told->at;
            }
        }
        return std::nullopt;
    }

    bool mustWait(const Alert& alert, const Call& call)
    {
        if (alert.quiet) {
            return true;
        }
        if (!m_inputs.benchOpen) {
            m_list.next.consider(m_inputs.hoursChange);
            if (alert.urgency != Urgency::A || !isSavable(alert, m_now)) {
                return true;
            }
            m_list.next.consider(alert.latestStart);
        }
        if (call.stage == CallStage::Last) {
            return false;
        }
        if (m_inputs.counting && m_now < m_inputs.counting->until) {
            m_list.next.consider(m_inputs.counting->until);
            return true;
        }
        const auto until = waitsForHands(alert, call, m_list.busy, m_now);
        m_list.next.consider(until);
        return until.has_value();
    }

    const AlertMemory& m_memory;
    std::span<const Alert> m_alerts;
    const DeskInputs& m_inputs;
    Instant m_now;
    std::map<std::string, const AlertAnswer*, std::less<>> m_answers;
    CallList m_list;
};

} // namespace

bool isMoreUrgent(const Calling& a, const Calling& b)
{
    const auto rank = [](const Calling& calling) {
        return std::tuple(-static_cast<int>(calling.alert->urgency),
                          calling.alert->latestStart.value_or(Instant::max()), calling.call.since);
    };
    const auto one = rank(a);
    const auto other = rank(b);
    return one != other ? one < other : a.alert->key < b.alert->key;
}

CallList callList(const AlertMemory& memory, std::span<const Alert> alerts, std::span<const AlertAnswer> answers,
                  const DeskInputs& inputs)
{
    return Sorting(memory, alerts, answers, inputs).sorted();
}

} // namespace mend::bench
