#include "core/bench/state.h"

#include <algorithm>
#include <tuple>
#include <unordered_map>
#include <unordered_set>

namespace mend::bench {

namespace {

std::unordered_set<EventId> voidedBy(std::span<const Event> events)
{
    std::unordered_set<EventId> voided;
    for (const Event& event : events) {
        if (event.what == What::Voided) {
            voided.insert(event.target);
        }
    }
    return voided;
}

/// The newest telling of each event that was told again.
std::unordered_map<EventId, const Event*> retellings(std::span<const Event> events,
                                                     const std::unordered_set<EventId>& voided)
{
    std::unordered_map<EventId, const Event*> newest;
    for (const Event& event : events) {
        if (event.what != What::Retold || voided.contains(event.id)) {
            continue;
        }
        const Event*& held = newest[event.target];
        if (!held || std::tie(held->recorded, held->id) < std::tie(event.recorded, event.id)) {
            held = &event;
        }
    }
    return newest;
}

/// Whether a step of the wall clock moves what was told before it: real elapsed time is kept. An event of
/// an earlier boot stays where it is when the clock before the step was evidently wrong, behind that event.
bool isMovedBy(const Event& step, const Event& event)
{
    if (event.id >= step.id) {
        return false;
    }
    return event.boot.bootId == step.boot.bootId || event.recorded <= step.recorded - Span{*step.amount};
}

/// All events as the wall clock of now would have told them.
std::vector<Event> onTodaysClock(std::span<const Event> events)
{
    std::vector<Event> told(events.begin(), events.end());
    for (const Event& step : events) {
        if (step.what != What::ClockStepped || !step.amount) {
            continue;
        }
        const Span moved{*step.amount};
        for (Event& event : told) {
            if (!isMovedBy(step, event)) {
                continue;
            }
            event.happened += moved;
            event.recorded += moved;
            if (event.from) {
                *event.from += moved;
            }
            if (event.until) {
                *event.until += moved;
            }
        }
    }
    return told;
}

} // namespace

std::vector<Event> effective(std::span<const Event> asTold)
{
    const std::vector<Event> events = onTodaysClock(asTold);
    const auto voided = voidedBy(events);
    const auto retold = retellings(events, voided);
    std::vector<Event> standing;
    standing.reserve(events.size());
    for (const Event& event : events) {
        if (event.what == What::Voided || event.what == What::Retold || voided.contains(event.id)) {
            continue;
        }
        standing.push_back(event);
        if (const auto found = retold.find(event.id); found != retold.end()) {
            const Event& telling = *found->second;
            standing.back().happened = telling.happened;
            if (telling.piece.isSet()) {
                standing.back().piece = telling.piece;
            }
        }
    }
    std::ranges::sort(standing, happenedBefore);
    return standing;
}

} // namespace mend::bench
