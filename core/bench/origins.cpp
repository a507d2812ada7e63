#include "core/bench/origins.h"

#include <algorithm>
#include <numeric>

namespace mend::bench {

Origins::Origins(const PieceState& piece, const BenchFold& bench, const rules::RuleBook& book,
                 const rules::Procedure& procedure)
    : m_piece(piece), m_bench(bench), m_book(book), m_procedure(procedure)
{
}

int Origins::repetitions(const rules::Stage& stage) const { return repetitionsOf(stage, m_piece, m_book); }

std::vector<int> Origins::asked(const rules::Origin& origin, const rules::Stage& stage, const rules::Stage& target,
                                int repetition) const
{
    const int count = repetitions(target);
    switch (origin.which) {
    case rules::Which::Same:
        return {target.repeat == stage.repeat && target.repeat != rules::Repeat::Once ? repetition : 1};
    case rules::Which::Previous:
        return repetition > 1 ? std::vector{repetition - 1} : std::vector<int>{};
    case rules::Which::First:
        return {1};
    case rules::Which::Last: {
        std::vector<int> all(static_cast<std::size_t>(count));
        std::iota(all.begin(), all.end(), 1);
        return all;
    }
    case rules::Which::Latest: {
        std::vector<int> done;
        for (int rep = 1; rep <= count; ++rep) {
            const StageRecord* told = m_piece.record({target.key, rep});
            if (told && told->isDone()) {
                done.push_back(rep);
            }
        }
        return done;
    }
    }
    return {};
}

bool Origins::isSettled(const rules::Stage& stage, int repetition) const
{
    const auto known = m_settled.find({&stage, repetition});
    if (known != m_settled.end()) {
        return known->second;
    }
    return m_settled[{&stage, repetition}] = isSettledAnew(stage, repetition);
}

bool Origins::isSettledAnew(const rules::Stage& stage, int repetition) const
{
    if (isPassedOver(stage, m_piece) || stage.byItself) {
        return isReached(stage, repetition);
    }
    const StageRecord* told = m_piece.record({stage.key, repetition});
    if (told && told->skipped) {
        return isReached(stage, repetition);
    }
    return told && told->isDone();
}

bool Origins::isReached(const rules::Stage& stage, int repetition) const
{
    if (stage.opens.empty()) {
        return m_piece.receivedAt.has_value();
    }
    return std::ranges::all_of(stage.opens, [&](const rules::Lag& lag) {
        const Hanging hanging = hangingOf(lag, stage, repetition);
        return !hanging.applies || hanging.settled;
    });
}

bool Origins::isClosing(const rules::Stage& stage, int repetition) const
{
    return std::ranges::any_of(stage.closes, [&](const rules::Lag& lag) {
        const rules::Stage* target = m_procedure.find(lag.from.stage);
        const Hanging hanging = hangingOf(lag, stage, repetition);
        return target && target->key != stage.key && hanging.applies && hanging.settled && hanging.from;
    });
}

std::optional<TouchPoint> Origins::mixingOf(const rules::Stage& target, int repetition) const
{
    const StageRecord* told = m_piece.record({target.key, repetition});
    const auto mix = told ? m_bench.mixes.find(told->mix) : m_bench.mixes.end();
    if (mix == m_bench.mixes.end()) {
        return std::nullopt;
    }
    return TouchPoint{mix->second.mixedAt, mix->second.mixedBy, &target, mix->first};
}

/// A stage that was skipped or goes by itself hands on the latest touch of what it hung on.
std::optional<TouchPoint> Origins::passedThrough(const rules::Stage& target, int repetition) const
{
    const auto known = m_passed.find({&target, repetition});
    if (known != m_passed.end()) {
        return known->second;
    }
    std::optional<TouchPoint> latest;
    for (const rules::Lag& lag : target.opens) {
        const Hanging hanging = hangingOf(lag, target, repetition);
        if (hanging.from && (!latest || hanging.from->at > latest->at)) {
            latest = hanging.from;
        }
    }
    return m_passed[{&target, repetition}] = latest;
}

std::optional<TouchPoint> Origins::touchOf(const rules::Stage& target, int repetition, rules::Touch touch) const
{
    if (touch == rules::Touch::Mixing) {
        return mixingOf(target, repetition);
    }
    const StageRecord* told = m_piece.record({target.key, repetition});
    if (target.byItself || isPassedOver(target, m_piece) || (told && told->skipped)) {
        return passedThrough(target, repetition);
    }
    if (!told) {
        return std::nullopt;
    }
    const auto& at = touch == rules::Touch::First ? told->firstTouch : told->lastTouch;
    if (!at) {
        return std::nullopt;
    }
    return TouchPoint{*at, touch == rules::Touch::First ? told->firstBy : told->lastBy, &target, told->mix};
}

Hanging Origins::hangingOf(const rules::Lag& lag, const rules::Stage& stage, int repetition) const
{
    Hanging hanging;
    const rules::Stage* target = m_procedure.find(lag.from.stage);
    if (!target || !holds(lag.when, m_piece)) {
        return hanging;
    }
    const std::vector<int> wanted = asked(lag.from, stage, *target, repetition);
    hanging.applies = !wanted.empty();
    hanging.settled = true;
    for (const int rep : wanted) {
        const StageRecord* told = m_piece.record({target->key, rep});
        hanging.settled = hanging.settled && isSettled(*target, rep);
        hanging.served = hanging.served || target->byItself || (told && told->firstTouch && !told->skipped);
        const auto point = touchOf(*target, rep, lag.from.touch);
        if (point && (!hanging.from || point->at > hanging.from->at)) {
            hanging.from = point;
        }
    }
    return hanging;
}

void Origins::gather(const rules::Lag& lag, const rules::Stage& stage, int repetition, std::set<StageInstance>& seen,
                     std::vector<StageInstance>& sources) const
{
    const rules::Stage* target = m_procedure.find(lag.from.stage);
    if (!target || !holds(lag.when, m_piece)) {
        return;
    }
    std::vector<int> wanted = asked(lag.from, stage, *target, repetition);
    if (lag.from.which == rules::Which::Latest) {
        wanted.resize(static_cast<std::size_t>(repetitions(*target)));
        std::iota(wanted.begin(), wanted.end(), 1);
    }
    for (const int rep : wanted) {
        const StageInstance at{target->key, rep};
        if (!seen.insert(at).second) {
            continue;
        }
        const StageRecord* told = m_piece.record(at);
        if (!target->byItself && !isPassedOver(*target, m_piece) && !(told && told->skipped)) {
            sources.push_back(at);
            continue;
        }
        for (const rules::Lag& before : target->opens) {
            gather(before, *target, rep, seen, sources);
        }
    }
}

std::vector<StageInstance> Origins::sourcesOf(const rules::Lag& lag, const rules::Stage& stage, int repetition) const
{
    std::set<StageInstance> seen;
    std::vector<StageInstance> sources;
    gather(lag, stage, repetition, seen, sources);
    return sources;
}

const rules::Wait* Origins::waitOf(const rules::Lag& lag) const
{
    const rules::Stage* target = m_procedure.find(lag.from.stage);
    if (!target || isPassedOver(*target, m_piece)) { // what nobody chose is not waited for
        return nullptr;
    }
    const auto wait =
        std::ranges::find_if(target->waits, [&](const rules::Wait& each) { return holds(each.when, m_piece); });
    return wait == target->waits.end() ? nullptr : &*wait;
}

std::optional<rules::SpanFigure> Origins::spanOf(const rules::Lag& lag) const
{
    if (!lag.waitOfStage) {
        return lag.span;
    }
    const rules::Wait* wait = waitOf(lag);
    return wait ? std::optional(wait->span) : std::nullopt;
}

std::optional<rules::SpanFigure> Origins::longestOf(const rules::Lag& lag) const
{
    const rules::Wait* wait = lag.waitOfStage ? waitOf(lag) : nullptr;
    return wait ? wait->longest : std::nullopt;
}

} // namespace mend::bench
