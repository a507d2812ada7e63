#include "core/service/openbench.h"

#include <algorithm>

namespace mend::service {

namespace {

/// Takes the value out, or keeps the first fault that stood in the way.
template <class T> T taken(Result<T> result, std::optional<Fault>& fault)
{
    if (result) {
        return result.takeValue();
    }
    if (!fault) {
        fault = result.fault();
    }
    return {};
}

} // namespace

Result<OpenBench> readBench(const store::Store& store, RuleShelf& shelf, Instant now)
{
    std::optional<Fault> fault;
    OpenBench open;
    // The waits of a piece hang on the air since it came, so what happened to the bench is read from then on.
    const Instant since = std::min(taken(store.oldestInHand(), fault).value_or(now), now);
    open.record.events = taken(store.benchEvents(since), fault);
    open.record.roster.pieces = taken(store.piecesInHand(), fault);
    open.record.roster.customers = taken(store.ownersInHand(), fault);
    open.record.roster.places = taken(store.places(), fault);
    open.record.roster.people = taken(store.people(), fault);
    const auto settings = taken(store.settings(), fault);
    const auto revisions = taken(store.allRules(), fault);
    if (fault) {
        return *fault;
    }
    open.record.next = store.nextEventId();
    open.studio = studioOf(settings);
    open.record.roster.openHours = openHoursOf(open.studio, now);
    open.unreadRevisions = shelf.add(revisions);
    open.book = shelf.book();
    std::ranges::transform(revisions, std::inserter(open.storedRevisions, open.storedRevisions.end()),
                           &store::RuleText::hash);
    return open;
}

} // namespace mend::service
