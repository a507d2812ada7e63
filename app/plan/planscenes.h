#pragma once

#include "app/parts/scene.h"
#include "app/plan/planshown.h"

#include <QSize>

namespace mend::app {

/// From the edge of the space to what is drawn in it.
constexpr double planPadUnits = 24.0;

/// What the drawings of the Plan space share.
struct PlanPicture {
    PlanShown shown;
    PlanReach reach = PlanReach::Today;
    PlanGroup group = PlanGroup::InOrder;
    service::Manner manner;
    parts::Look look;
    PlanActs acts;
    bool mirrored = false;

    /// The lines within reach, oldest first; their numbers are their places here.
    std::vector<const service::PlanLine*> lines() const;
    /// Those of the first day that has any: what the threads show.
    std::vector<const service::PlanLine*> linesOfTheDay() const;
};

/// A drawing and how high it came out.
struct PlanDrawn {
    parts::Scene scene;
    int height = 0;
};

/// What day, how much there is to do, and how it may be looked at.
PlanDrawn planHead(const PlanPicture& picture, int width);
/// One numbered row for each thing to do.
PlanDrawn planList(const PlanPicture& picture, int width);
/// One thread for each person with a numbered knot for each pair of hands wanted, the waits as drawn seams under them,
/// and what cannot be or could be better.
PlanDrawn planThreads(const PlanPicture& picture, int width);

} // namespace mend::app
