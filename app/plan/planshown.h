#pragma once

#include "app/parts/look.h"
#include "core/bench/card.h"
#include "core/service/planlines.h"

#include <QString>

#include <functional>
#include <optional>
#include <vector>

namespace mend::app {

/// How far ahead the list reaches, and what stands together in it.
enum class PlanReach { Today, Week };
enum class PlanGroup { InOrder, ByPerson, ByPlace };

/// A better plan that would turn the order round: taken or refused by a person.
struct PlanOffer {
    QString words; ///< "3 moved, none later than promised"
};

/// All that the Plan space shows, in words and instants.
struct PlanShown {
    service::PlanInWords plan;
    std::vector<bench::Card> waits; ///< cards that wait for a time: drawn as seams under the threads
    QString person;                 ///< whose thread it is where lines name none
    std::optional<PlanOffer> offer;
    bool isPlanning = false;
    Instant now;
};

/// What a tap in the Plan space asks for.
struct PlanActs {
    std::function<void(PieceId)> openPiece;
    std::function<void(PieceId)> setAside;
    std::function<void(PlanReach)> reach;
    std::function<void(PlanGroup)> group;
    std::function<void()> takeOffer;
    std::function<void()> refuseOffer;
};

} // namespace mend::app
