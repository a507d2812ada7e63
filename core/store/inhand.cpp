#include "core/store/inhand.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <vector>

namespace mend::store {

using bench::Event;
using bench::What;

namespace {

bool closes(What what) { return what == What::HandedOver || what == What::ReturnedUnmended; }

/// What is told of a piece wherever it is: money, words with its owner, notes.
bool saysNothingOfWhere(What what)
{
    switch (what) {
    case What::Noted:
    case What::AlertAnswered:
    case What::Voided:
    case What::Retold:
    case What::ClockStepped:
    case What::FaultNamed:
    case What::FragmentFound:
    case What::MaterialRemoved:
    case What::Promised:
    case What::PriceAgreed:
    case What::Paid:
    case What::NoticeGiven:
    case What::OwnerTold:
    case What::Counted:
    case What::WaitShortened:
    case What::ConsentGiven:
        return true;
    default:
        return false;
    }
}

/// Numbers of the events that were taken back. A void row can itself be taken back by a later one.
std::set<EventId> takenBack(std::span<const Event> told)
{
    std::vector<const Event*> voids;
    for (const Event& event : told) {
        if (event.what == What::Voided) {
            voids.push_back(&event);
        }
    }
    std::ranges::sort(voids, std::greater(), [](const Event* event) { return event->id; });
    std::set<EventId> gone;
    for (const Event* const event : voids) {
        if (!gone.contains(event->id)) {
            gone.insert(event->target);
        }
    }
    return gone;
}

} // namespace

bool movesPiece(const Event& event)
{
    return !saysNothingOfWhere(event.what) || event.what == What::Voided || event.what == What::Retold;
}

bool isInHand(std::span<const Event> told, PieceId piece)
{
    const std::set<EventId> gone = takenBack(told);
    std::map<EventId, const Event*> retold;
    for (const Event& event : told) {
        if (event.what == What::Retold && !gone.contains(event.id)) {
            retold[event.target] = &event; // told in order of number: the last one holds
        }
    }
    bool inHand = true;
    std::tuple<Instant, Instant, EventId> latest;
    bool any = false;
    for (const Event& event : told) {
        if (gone.contains(event.id) || saysNothingOfWhere(event.what)) {
            continue;
        }
        const auto moved = retold.find(event.id);
        const Event& truth = moved == retold.end() ? event : *moved->second;
        const std::tuple when(truth.happened, event.recorded, event.id);
        if (truth.piece == piece && (!any || when > latest)) {
            any = true;
            latest = when;
            inHand = !closes(event.what);
        }
    }
    return inHand;
}

} // namespace mend::store
