#include "core/bench/state.h"

#include <algorithm>
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

} // namespace

std::vector<Event> effective(std::span<const Event> events)
{
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
