#pragma once

#include "core/bench/card.h"

#include <QString>

namespace mend::app {

/// What can be done on the Bench by one tap, said without saying how it was tapped.
class Hands {
public:
    virtual ~Hands() = default;
    virtual void act(PieceId piece, const bench::CardAct& act) = 0;
    virtual void more(PieceId piece) = 0;
    virtual void why(PieceId piece) = 0;
    virtual void undo(EventId event) = 0;
    virtual void openPlace(PlaceId place) = 0;
    virtual void mixNow(const QString& material) = 0;
    virtual void openMix(MixId mix) = 0;
    virtual void openPeople() = 0;
    virtual void openSound() = 0;
    virtual void allMixes() = 0;
    virtual void allPlaces() = 0;
    virtual void step(int cards) = 0; ///< one card at a time: the one before or after
};

} // namespace mend::app
