#include "tests/bench/yearmender.h"

#include <algorithm>
#include <cmath>

namespace mend::bench::test {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

YearMender::Plan& YearMender::planOf(const Window& window, Instant now)
{
    const auto [at, isNew] = m_plans.try_emplace(runOfWindow(window));
    Plan& plan = at->second;
    if (isNew) {
        // Nineteen in twenty in the first half; of the others half not before an alert is heard.
        plan.share = m_dice.chance(0.95) ? 0.5 * m_dice.share() : 0.5 + m_dice.share();
        plan.reckless = m_dice.chance(0.03);
        plan.notYetFirst = m_dice.chance(0.25);
        plan.waits = -60.0 * std::log(1.0 - 0.99 * m_dice.share());
        plan.seen = now;
    }
    return plan;
}

std::optional<Instant> YearMender::startOf(const Window& window, const Day& day, Instant now)
{
    Plan& plan = planOf(window, now);
    if (plan.called) {
        return plan.called;
    }
    if (window.stalled || !window.opens) {
        return plan.seen + hours(24); // tries by touch next day
    }
    const Instant opens = window.waitsForTest && window.askAgain ? *window.askAgain : *window.opens;
    if (!window.latestStart) {
        return opens + Span(static_cast<std::int64_t>(plan.waits * 60'000.0));
    }
    const Span room = std::max(Span{0}, *window.latestStart - opens);
    Instant start = opens + Span(static_cast<std::int64_t>(static_cast<double>(room.count()) * plan.share));
    if (plan.share <= 0.5 && *window.latestStart < day.ends + hours(14)) {
        start = std::min(start, std::max(opens, day.ends - window.handsOn - minutes(10)));
    }
    return plan.share > 1.0 ? std::nullopt : std::optional(start);
}

/// How soon after this stage another one closes.
Span YearMender::closesAfter(const Window& window) const
{
    const rules::Procedure* procedure = procedureOf(*m_bench.bench().piece(window.piece), m_bench.book());
    Span soonest = hours(1000);
    for (const rules::Stage& stage : procedure->stages) {
        for (const rules::Lag& lag : stage.closes) {
            if (lag.from.stage == window.stage.stage && stage.key != window.stage.stage) {
                soonest = std::min(soonest, lag.span.value);
            }
        }
    }
    return soonest;
}

/// Nothing is begun that would close when nobody is there, or that would run into a close of another piece.
bool YearMender::mayBegin(const Window& window, const Plan& plan, const Day& day, Instant now) const
{
    if (window.latestStart && *window.latestStart < day.ends + hours(14)) {
        return true;
    }
    if (plan.reckless) {
        return true;
    }
    const Span after = closesAfter(window);
    const bool closesUnattended = after < hours(14) && now + window.handsOn + after + minutes(15) > day.ends;
    return !closesUnattended && now + window.handsOn < day.ends + minutes(30);
}

const Window* YearMender::choose(const Day& day, Instant now)
{
    const Window* chosen = nullptr;
    const auto latest = [](const Window* window) { return window->latestStart.value_or(Instant::max()); };
    for (const Window& window : m_bench.windows()) {
        const auto start = startOf(window, day, now);
        const bool isOpen =
            phaseOf(window, now) == Phase::Open || (window.stalled && phaseOf(window, now) == Phase::Stalled);
        if (!start || *start > now || !isOpen || window.begunAt || !mayBegin(window, planOf(window, now), day, now)) {
            continue;
        }
        if (!chosen || latest(&window) < latest(chosen)) {
            chosen = &window;
        }
    }
    if (!chosen) {
        return nullptr;
    }
    // Another window would have to be started before these hands were free again: it goes first.
    for (const Window& window : m_bench.windows()) {
        const bool comesFirst = window.latestStart &&
                                latest(&window) < std::min(latest(chosen), now + chosen->handsOn + minutes(2)) &&
                                planOf(window, now).share <= 0.5 && !window.begunAt;
        if (comesFirst && phaseOf(window, now) == Phase::Open) {
            chosen = &window;
        } else if (comesFirst && phaseOf(window, now) == Phase::Waiting) {
            return nullptr;
        }
    }
    return chosen;
}

MixId YearMender::mixFor(const rules::Stage& stage, const Window& window, Instant now)
{
    if (stage.mix.empty()) {
        return {};
    }
    auto& [mix, mixedAt] = m_mixes[{window.piece, stage.mix}];
    if (!mix.isSet() || now > mixedAt + minutes(25) || stage.mixesHere) {
        mix = MixId(++m_lastMix);
        mixedAt = now;
        Event started;
        started.what = What::MixStarted;
        started.mix = mix;
        started.word = stage.mix;
        m_bench.tell(started, now);
    }
    return mix;
}

void YearMender::tellStage(What what, const Window& window, Instant now, MixId mix, std::optional<Instant> happened)
{
    Event event;
    event.happened = happened.value_or(now);
    event.what = what;
    event.piece = window.piece;
    event.stage = window.stage;
    event.mix = mix;
    if (what == What::Begun || what == What::Done) {
        event.place = m_bench.placeOf(*m_bench.stageOf(window));
    }
    m_bench.tell(event, now);
}

void YearMender::begin(const Window& window, Instant now)
{
    Plan& plan = planOf(window, now);
    if (window.waitsForTest && plan.notYetFirst) {
        plan.notYetFirst = false;
        plan.called.reset();
        tellStage(What::NotYet, window, now);
        return;
    }
    const rules::Stage& stage = *m_bench.stageOf(window);
    const Window kept = window; // telling may lay the windows anew
    const MixId mix = mixFor(stage, kept, now);
    if (plan.called) {
        for (const Alert& alert : m_bench.alerts()) {
            if (alert.piece == kept.piece && alert.stage == kept.stage && alert.due <= now &&
                alert.kind != AlertKind::Done) {
                m_bench.tell(answerEvent(alert, Answered::HandsOn, PersonId(1)), now);
                break;
            }
        }
    }
    if (kept.handsOn >= minutes(5) || !stage.mix.empty()) {
        tellStage(What::Begun, kept, now, mix);
    }
    const double pace = 0.7 + 0.5 * m_dice.share();
    m_hands =
        Hands{kept,
              now + std::max<Span>(seconds(20),
                                   Span(static_cast<std::int64_t>(static_cast<double>(kept.handsOn.count()) * pace))),
              mix};
}

void YearMender::finish(Instant now)
{
    const Hands hands = *m_hands;
    m_hands.reset();
    tellStage(What::Done, hands.window, now, hands.mix, hands.end);
}

/// What closed while nobody did it is done late, or had been done and not told.
void YearMender::answerForClosed(const Window& window, Plan& plan, Instant now)
{
    const Window kept = window;
    plan.late.reset();
    if (m_dice.chance(0.3)) {
        Event done;
        done.what = What::Done;
        done.piece = kept.piece;
        done.stage = kept.stage;
        done.place = m_bench.placeOf(*m_bench.stageOf(kept));
        done.happened = *kept.closes - Span{1};
        m_bench.tell(done, now);
    } else {
        plan.called = now;
        tellStage(What::DoingLate, kept, now);
    }
}

void YearMender::live(Instant now, const Day& day)
{
    if (m_hands && now >= m_hands->end && day.canTell) {
        finish(now);
        m_bench.refresh(now);
    }
    if (!day.atBench || m_hands) {
        return;
    }
    for (const Window& window : m_bench.windows()) {
        const bool isPast = window.closes && now >= *window.closes && !window.begunAt;
        if (!isPast) {
            continue;
        }
        Plan& plan = planOf(window, now);
        if (!plan.late) {
            plan.late = now + m_dice.span(minutes(1), minutes(15));
        }
        if (now >= *plan.late) {
            answerForClosed(window, plan, now);
            m_bench.refresh(now);
            break;
        }
    }
    if (const Window* chosen = choose(day, now)) {
        begin(*chosen, now);
        m_bench.refresh(now);
    }
}

std::optional<Instant> YearMender::next(Instant now, const Day& day)
{
    if (m_hands) {
        return m_hands->end;
    }
    std::optional<Instant> soonest;
    const auto consider = [&](std::optional<Instant> instant) {
        if (instant && *instant > now && (!soonest || *instant < *soonest)) {
            soonest = instant;
        }
    };
    for (const Window& window : m_bench.windows()) {
        if (!day.atBench) {
            break;
        }
        const auto start = startOf(window, day, now);
        consider(start && window.opens ? std::optional(std::max(*start, *window.opens)) : start);
        consider(planOf(window, now).late);
    }
    return soonest;
}

void YearMender::hear(const Alert& alert, Instant now, bool atBench)
{
    if (alert.kind == AlertKind::Done || alert.kind == AlertKind::Closed || !m_dice.chance(atBench ? 0.95 : 0.5)) {
        return;
    }
    for (const Window& window : m_bench.windows()) {
        if (window.piece != alert.piece || window.stage != alert.stage) {
            continue;
        }
        Plan& plan = planOf(window, now);
        if (alert.kind == AlertKind::Closes && !plan.called) {
            if (m_dice.chance(0.1)) {
                m_bench.tell(answerEvent(alert, Answered::Heard, PersonId(1)), now);
            } else if (m_dice.chance(0.1)) {
                m_bench.tell(
                    answerEvent(alert, Answered::StartAt, PersonId(1), now + m_dice.span(minutes(1), minutes(20))),
                    now);
            }
            plan.called = now + m_dice.span(seconds(20), minutes(3));
        }
        return;
    }
}

void YearMender::moveClock(Span by)
{
    for (auto& [run, plan] : m_plans) {
        plan.seen += by;
        for (std::optional<Instant>* instant : {&plan.called, &plan.late}) {
            if (*instant) {
                **instant += by;
            }
        }
    }
    if (m_hands) {
        m_hands->end += by;
    }
    for (auto& [key, mix] : m_mixes) {
        mix.second += by;
    }
}

} // namespace mend::bench::test
