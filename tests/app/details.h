#pragma once

#include "app/bench/told.h"
#include "tests/app/samples.h"

namespace mend::app::samples {

/// Answers as a service would, made by hand.
class SampleDetails : public Details {
public:
    std::vector<Fact> factsOf(PieceId) const override
    {
        return {{EventId(70), QStringLiteral("Filler is in"), now() - std::chrono::minutes(13)},
                {EventId(69), QStringLiteral("Glue is on"), now() - std::chrono::hours(20)}};
    }
    std::vector<StageDone> stagesDoneOf(PieceId) const override
    {
        return {{{"joinSet", 1}, QStringLiteral("Glue set 1")},
                {{"clean", 1}, QStringLiteral("Clean the break edges")}};
    }
    std::vector<PutOff> putOffsOf(PieceId) const override
    {
        return {{QStringLiteral("afterStep"), QStringLiteral("After this step")}};
    }
    std::vector<StateTold> states() const override
    {
        return {{QStringLiteral("padsDrying"), QStringLiteral("Pads are in the can"), false}};
    }
    QStringList nightAhead() const override
    {
        return {QStringLiteral(
                    "Before you go: Heron bowl: Wipe back the filler, start by 13:44 (a miss costs an afternoon)"),
                QStringLiteral("Not cured by Sun 09:00: Banded jug: Sand the fill, about Sun 10:00 to Sun 11:00"),
                QStringLiteral("Has to stay on: Cabinet")};
    }
    QStringList movedBy(EventId, Instant, PieceId) const override
    {
        return {QStringLiteral("Wipe back: closes 13:44 instead of 13:49")};
    }
};

} // namespace mend::app::samples
