#pragma once

#include "core/plan/timetable.h"

#include <string>
#include <vector>

namespace mend::plan {

/// What is wrong with a timetable. The words of the plan format: STARTED-MOVED, BEFORE-NOW, ...
enum class Broken {
    StartedMoved,
    StartedPerson,
    BeforeNow,
    AfterHorizon,
    Earliest,
    LatestEnd,
    NoPerson,
    PersonOnUnattended,
    BenchClosed,
    LagMin,
    LagMax,
    PersonOverlap,
    Capacity,
    Incompatible,
};

struct Violation {
    Broken what = Broken::BeforeNow;
    std::string text; ///< names the steps
};

/// The gate that every plan passes before anyone sees it: every rule of the format, judged
/// from the problem alone and not by the code that made the plan. Empty: the plan holds.
/// `table` has one entry for each step. History (two started steps) is not judged.
std::vector<Violation> violations(const Problem& problem, const Timetable& table);

} // namespace mend::plan
