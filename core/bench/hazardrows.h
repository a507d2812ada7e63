#pragma once

#include "core/bench/benchpicture.h"
#include "core/bench/hazardcheck.h"

#include <string>
#include <vector>

// The kinds of row a hazard can be, each asked in a file of its own. All of them append
// what they find and look at nothing but their arguments.

namespace mend::bench {

/// A start with what was looked up for it.
struct StartAsked {
    Start start;
    const Contents* contents = nullptr; ///< null: nobody's, a state that is about to be told
    const rules::Stage* stage = nullptr;
    std::string told;     ///< the state that is about to be told
    bool outside = false; ///< it happens outside: nothing in the room is met
};

using Findings = std::vector<HazardFinding>;

/// Overlap: what the start brings against what is in force, both ways.
void findOverlaps(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture, Findings& found);
/// Overlap: states in force that already meet something.
void findStandingOverlaps(const rules::Hazard& hazard, const BenchPicture& picture, Findings& found);

/// Climate: the start's piece in the air it is put into.
void findInAir(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture, Findings& found);
/// Climate: pieces in the air where they lie.
void findStandingInAir(const rules::Hazard& hazard, const BenchPicture& picture, Findings& found);

/// HeatLimit, all such rows at once because a place gives one finding: pieces inside the start's
/// place or being put in that may not get so warm.
void findHeatAtStart(const StartAsked& asked, const BenchPicture& picture, Findings& found);
/// HeatLimit: one finding a place that is warmer than a piece in it may get.
void findStandingHeat(const BenchPicture& picture, Findings& found);

/// Hands: windows of the named stages that close within the row's span of each other.
void findOnOneHand(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture, Findings& found);
void findStandingOnOneHand(const rules::Hazard& hazard, const BenchPicture& picture, Findings& found);

/// EndOfDay: what the start opens would close while nobody is there.
void findAfterHours(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture,
                    const BenchDay& day, Findings& found);
void findStandingAfterHours(const rules::Hazard& hazard, const BenchPicture& picture, const BenchDay& day,
                            Findings& found);

/// Assembly: a fragment that could not enter any more, a ring closed over an open join.
void findInAssembly(const StartAsked& asked, const rules::Hazard& hazard, const AssemblyFacts& facts, Findings& found);

/// Standing: reminders of what lies open, and of a new coat on a layer that is past its bond.
void findReminders(const StartAsked& asked, const rules::Hazard& hazard, const BenchPicture& picture, Findings& found);
void findStandingReminders(const rules::Hazard& hazard, const BenchPicture& picture, Findings& found);

/// When a row was last answered for this very start; empty where it was not.
std::optional<Instant> answeredAt(const StartAsked& asked, const rules::Hazard& hazard);
/// Sorted, each once.
void addPiece(std::vector<PieceId>& pieces, PieceId piece);
/// Whether a start brings any of the names: what its stage brings, the state that is told, the kind
/// of place it is at.
bool brings(const StartAsked& asked, const std::vector<std::string>& names, const BenchPicture& picture);
/// The kinds of place among the names of a row; empty: it means every place.
std::vector<record::PlaceKind> placeKindsIn(const rules::Hazard& hazard);

} // namespace mend::bench
