#include "core/bench/alert.h"

#include "core/bench/alertanswer.h"
#include "core/bench/alertcall.h"

#include <algorithm>
#include <map>

namespace mend::bench {

namespace {

using std::chrono::minutes;

/// Shorter ones are counted in seconds, not alarmed.
constexpr Span shortestAlarmed = minutes(3);

/// What people and the program said about alerts, by key.
using AnswersByKey = std::map<std::string, const AlertAnswer*, std::less<>>;

/// One run of a window, by the event that began it: the first that anything closes from, else the last that was
/// waited for. Readings, retold times, steps of the clock and what else is told meanwhile move the times of a window
/// but never that event, so they make no second alert of it.
struct Run {
    EventId by;
    Instant since;
};

Run runOf(const Window& window)
{
    const auto isEarlier = [](const Reckoning& a, const Reckoning& b) {
        if (a.closing != b.closing) {
            return a.closing;
        }
        return a.closing ? a.event < b.event : a.event > b.event;
    };
    const auto first = std::ranges::min_element(window.why, isEarlier);
    return first == window.why.end() ? Run{} : Run{first->event, first->origin};
}

/// Is there room by the figures of the rule alone, from the first thing it waits for, whatever the air and what was
/// done to the piece meanwhile have made of it?
bool hasRoomByTheRule(const Window& window)
{
    std::optional<Instant> opens;
    std::optional<Instant> closes;
    for (const Reckoning& why : window.why) {
        std::optional<Instant>& end = why.closing ? closes : opens;
        const Instant at = why.origin + why.figure;
        end = end ? std::min(*end, at) : at;
    }
    return closes && alertTimes(opens.value_or(runOf(window).since), *closes, window.handsOn);
}

/// Where nothing is left of the room: it calls as soon as it opens, or as late as a call is of use.
AlertTimes atOnce(Instant opens, Instant latestStart, Instant ownLatestStart)
{
    return {std::min(opens, latestStart - leastWarning), std::min(opens, ownLatestStart - leastWarning), latestStart};
}

std::string firstWord(const std::string& act) { return act.substr(0, act.find(' ')); }

/// Is there a wait before this window at all? What may be done at any time opens nothing.
bool endsAWait(const Window& window)
{
    return window.stalled || std::ranges::any_of(window.why, [](const Reckoning& reckoning) {
               return !reckoning.closing && reckoning.figure > Span{0};
           });
}

/// Works out the alerts of one window.
class WindowAlerts {
public:
    WindowAlerts(const Window& window, const BenchFold& bench, const rules::RuleBook& book, const AnswersByKey& answers,
                 Instant now)
        : m_window(window), m_answers(answers), m_now(now), m_run(runOf(window)), m_piece(bench.piece(window.piece)),
          m_told(m_piece ? m_piece->record(window.stage) : nullptr)
    {
        const rules::Procedure* procedure = m_piece ? procedureOf(*m_piece, book) : nullptr;
        m_stage = procedure ? procedure->find(window.stage.stage) : nullptr;
        m_handsSince = handsSince();
    }

    /// Empty where it has no close that may be alarmed.
    std::optional<Alert> closes() const
    {
        if (!m_window.closes || m_window.counted || m_now >= *m_window.closes || isTold()) {
            return std::nullopt;
        }
        Alert alert = blank(AlertKind::Closes, whatCalls("closes"));
        alert.urgency = isCostly(m_window.miss) ? Urgency::A : Urgency::B;
        alert.quiet = alert.quiet && alert.urgency != Urgency::A;
        const auto times = callTimes(m_window);
        const auto raised = raisedAt();
        if (!times && !raised) {
            return std::nullopt;
        }
        alert.due = times ? times->first : *raised;
        alert.lastCall = times ? times->lastCall : *raised;
        if (raised) {
            alert.due = std::min(alert.due, *raised);
        }
        return alert;
    }

    /// When its closing first called, if it did: no reading and no chain takes that back.
    std::optional<Instant> raisedAt() const
    {
        std::optional<Instant> raised;
        for (const CallStage stage : {CallStage::First, CallStage::PutOff, CallStage::Last}) {
            const AlertAnswer* told = answerTo(heardKey(keyOf(whatCalls("closes")), stage));
            if (told && (!raised || told->at < *raised)) {
                raised = told->at;
            }
        }
        return raised;
    }

    std::vector<Alert> others() const
    {
        std::vector<Alert> alerts;
        if (const auto alert = opens()) {
            alerts.push_back(*alert);
        }
        if (const auto alert = closed()) {
            alerts.push_back(*alert);
        }
        if (const auto alert = done()) {
            alerts.push_back(*alert);
        }
        return alerts;
    }

private:
    bool isTold() const { return m_told && (m_told->missed || m_told->doingLate); }

    const AlertAnswer* answerTo(const std::string& key) const
    {
        const auto found = m_answers.find(key);
        return found == m_answers.end() ? nullptr : found->second;
    }

    std::string whatCalls(std::string_view kind) const
    {
        return std::string(kind) + '@' + std::to_string(m_run.by.value());
    }
    /// Each "Not yet" asks anew, and so under a key of its own.
    std::string whatOpens() const
    {
        return m_window.askAgain ? whatCalls("asks") + '+' + std::to_string((*m_window.askAgain - m_run.since).count())
                                 : whatCalls("opens");
    }
    std::string keyOf(std::string_view what) const { return alertKey(m_window.piece, m_window.stage, what); }

    /// The newest "hands on it" to any alert of this run of the window, or its begin. A "Not yet" takes hands off.
    std::optional<Instant> handsSince() const
    {
        std::optional<Instant> since = m_window.begunAt;
        const std::string prefix = keyOf({});
        const Instant from = std::max(m_run.since, m_told && m_told->notYet ? *m_told->notYet : m_run.since);
        for (auto it = m_answers.lower_bound(prefix); it != m_answers.end() && it->first.starts_with(prefix); ++it) {
            const AlertAnswer& answer = *it->second;
            if (answer.how == answeredKey(Answered::HandsOn) && answer.at >= from && (!since || answer.at > *since)) {
                since = answer.at;
            }
        }
        return since;
    }

    /// When it is asked whether it is done: after half as long again as it takes, or at the close.
    Instant asksDoneAt() const
    {
        const Instant asks = *m_handsSince + m_window.handsOn * 3 / 2;
        return m_window.closes ? std::min(asks, std::max(*m_window.closes, *m_handsSince)) : asks;
    }

    Alert blank(AlertKind kind, const std::string& what) const
    {
        Alert alert;
        alert.key = keyOf(what);
        alert.kind = kind;
        alert.piece = m_window.piece;
        alert.stage = m_window.stage;
        alert.act = m_window.act;
        alert.spoken = m_stage && !m_stage->spoken.empty() ? m_stage->spoken : firstWord(m_window.act);
        alert.benchName = m_piece ? m_piece->piece.benchName : std::string();
        alert.miss = m_window.miss;
        alert.opens = m_window.opens;
        alert.latestStart = m_window.latestStart;
        alert.closes = m_window.closes;
        alert.handsOn = m_window.handsOn;
        alert.handsSince = m_handsSince;
        alert.waitsForTest = m_window.waitsForTest;
        alert.quiet = m_piece && m_piece->onHold;
        return alert;
    }

    /// C at the opening, or B at the recommended minute; after "Not yet" again when it is time to ask.
    std::optional<Alert> opens() const
    {
        if (m_handsSince || m_window.counted || isTold() || !endsAWait(m_window) ||
            (m_window.closes && m_now >= *m_window.closes)) {
            return std::nullopt;
        }
        Alert alert = blank(AlertKind::Opens, whatOpens());
        std::optional<Instant> due = m_window.opens;
        if (m_window.askAgain) {
            due = m_window.askAgain;
        } else if (m_window.recommended && m_window.opens) {
            due = std::max(*m_window.recommended, *m_window.opens);
            alert.urgency = Urgency::B;
        }
        const AlertAnswer* shown = answerTo(alert.key);
        if (shown) {
            due = due ? std::min(*due, shown->at) : shown->at;
        }
        if (!due) {
            return std::nullopt;
        }
        alert.due = *due;
        return alert;
    }

    /// At the close unanswered: said once, then a mark until somebody says what became of it.
    std::optional<Alert> closed() const
    {
        if (!m_window.closes || m_window.counted || isTold() || (m_handsSince && asksDoneAt() == *m_window.closes)) {
            return std::nullopt;
        }
        Alert alert = blank(AlertKind::Closed, whatCalls("closed"));
        alert.due = *m_window.closes;
        return alert;
    }

    std::optional<Alert> done() const
    {
        if (!m_handsSince || m_window.counted || (m_told && m_told->missed)) {
            return std::nullopt;
        }
        Alert alert = blank(AlertKind::Done, whatCalls("done"));
        alert.due = asksDoneAt();
        return alert;
    }

    const Window& m_window;
    const AnswersByKey& m_answers;
    Instant m_now;
    Run m_run;
    const PieceState* m_piece;
    const StageRecord* m_told;
    const rules::Stage* m_stage = nullptr;
    std::optional<Instant> m_handsSince;
};

std::string nameOf(const BenchFold& bench, PieceId id)
{
    const PieceState* piece = bench.piece(id);
    return piece ? piece->piece.benchName : std::string();
}

/// Lets the windows of one chain call once, by the first of them that nobody has hands on.
class Chains {
public:
    Chains(const BenchFold& bench, const std::vector<Window>& windows) : m_bench(bench)
    {
        for (const Window& window : windows) {
            m_windows[{window.piece, window.stage}] = &window;
        }
    }

    /// `raised`: when it first called, if it did.
    void add(Alert alert, std::optional<Instant> raised)
    {
        const At at{alert.piece, alert.stage};
        m_raised[at] = raised;
        m_closing.emplace(at, std::move(alert));
    }

    std::vector<Alert> joined() const
    {
        std::vector<Alert> alerts;
        for (const auto& [at, alert] : m_closing) {
            const std::vector<const Alert*> links = linksOf(*m_windows.at(at), alert);
            if (links.front() == &alert) {
                alerts.push_back(headOf(links));
            }
        }
        return alerts;
    }

private:
    using At = std::pair<PieceId, StageInstance>;

    /// The alerts of a chain that want hands, in its order; those under hands stay alone.
    std::vector<const Alert*> linksOf(const Window& window, const Alert& alert) const
    {
        std::vector<const Alert*> links;
        for (std::size_t i = 0; i < window.chain.size() && !alert.handsSince; ++i) {
            const auto link = m_closing.find({window.chainPieces[i], window.chain[i]});
            if (link != m_closing.end() && !link->second.handsSince && !link->second.quiet) {
                links.push_back(&link->second);
            }
        }
        const bool isIn = std::ranges::find(links, &alert) != links.end();
        return isIn ? links : std::vector<const Alert*>{&alert};
    }

    Alert headOf(const std::vector<const Alert*>& links) const
    {
        Alert head = *links.front();
        if (links.size() < 2) {
            return head;
        }
        for (const Alert* link : links) {
            head.chain.push_back(link->stage);
            head.chainPieces.push_back(link->piece);
            head.chainNames.push_back(nameOf(m_bench, link->piece));
            head.urgency = std::max(head.urgency, link->urgency);
            head.miss = std::max(head.miss, link->miss);
            head.due = std::min(head.due, link->due);
            head.lastCall = std::min(head.lastCall, link->lastCall);
        }
        // It waits for the first to open, but not so long that nobody could start in time.
        head.due = std::max(head.due, std::min(head.opens.value_or(head.due), *head.latestStart - leastWarning));
        head.lastCall = std::max(*head.lastCall, head.due);
        for (const Alert* link : links) {
            head.due = std::min(head.due, m_raised.at({link->piece, link->stage}).value_or(head.due));
        }
        return head;
    }

    const BenchFold& m_bench;
    std::map<At, const Window*> m_windows;
    std::map<At, Alert> m_closing;
    std::map<At, std::optional<Instant>> m_raised;
};

} // namespace

std::optional<AlertTimes> alertTimes(Instant opens, Instant closes, Span handsOn)
{
    const Span width = closes - opens;
    const Span room = width - handsOn;
    if (room < Span{0} || width < shortestAlarmed) {
        return std::nullopt;
    }
    const Span ahead = std::min(room / 2, std::clamp<Span>(width / 5, minutes(2), minutes(30)));
    const Instant latestStart = closes - handsOn;
    return AlertTimes{latestStart - ahead, latestStart - std::min<Span>(minutes(1), ahead / 2), latestStart};
}

std::optional<AlertTimes> callTimes(const Window& window)
{
    if (!window.closes || window.counted) {
        return std::nullopt;
    }
    const Instant opens = window.opens.value_or(runOf(window).since);
    const Instant latestStart = window.latestStart.value_or(*window.closes - window.handsOn);
    auto times = alertTimes(opens, *window.closes, *window.closes - latestStart);
    if (!times && (alertTimes(opens, *window.closes, window.handsOn) || hasRoomByTheRule(window))) {
        times = atOnce(opens, latestStart, *window.closes - window.handsOn);
    }
    if (times && !window.chain.empty()) {
        // A chain may have to start before this one opens; its latest start is not let go by for that.
        times->first = std::min(times->first, latestStart - leastWarning);
    }
    return times;
}

std::string alertKey(PieceId piece, const StageInstance& stage, std::string_view what)
{
    return std::to_string(piece.value()) + '/' + stage.stage + '#' + std::to_string(stage.repetition) + '/' +
           std::string(what);
}

bool isCostly(rules::Miss miss) { return miss >= rules::Miss::Afternoon; }

std::optional<Span> remaining(const Alert& alert, Instant now)
{
    if (!alert.latestStart) {
        return std::nullopt;
    }
    return *alert.latestStart - now;
}

std::vector<Alert> alertsFor(const BenchFold& bench, const std::vector<Window>& windows, const rules::RuleBook& book,
                             Instant now)
{
    AnswersByKey answers;
    for (const AlertAnswer& answer : bench.answers) {
        answers[answer.key] = &answer;
    }
    Chains chains(bench, windows);
    std::vector<Alert> alerts;
    for (const Window& window : windows) {
        const WindowAlerts of(window, bench, book, answers, now);
        if (auto alert = of.closes()) {
            chains.add(std::move(*alert), of.raisedAt());
        }
        for (Alert& alert : of.others()) {
            alerts.push_back(std::move(alert));
        }
    }
    for (Alert& alert : chains.joined()) {
        alerts.push_back(std::move(alert));
    }
    return alerts;
}

std::vector<Alert> closingWithin(const std::vector<Alert>& alerts, Instant now, Span length)
{
    std::vector<Alert> closing;
    for (const Alert& alert : alerts) {
        if (alert.kind == AlertKind::Closes && alert.urgency == Urgency::A && !alert.handsSince && alert.latestStart &&
            *alert.latestStart >= now && *alert.latestStart < now + length) {
            closing.push_back(alert);
        }
    }
    std::ranges::stable_sort(closing, {}, [](const Alert& alert) { return *alert.latestStart; });
    return closing;
}

} // namespace mend::bench
