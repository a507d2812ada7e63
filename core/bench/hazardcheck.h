#pragma once

#include "core/bench/benchpicture.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::bench {

/// One combination that stands against a start, or hangs over the bench.
struct HazardFinding {
    const rules::Hazard* hazard = nullptr; ///< points into the rule book that was asked
    std::vector<PieceId> pieces;           ///< whose they are; empty where nobody's
    std::optional<Instant> until;          ///< when it is over by itself, planned wipes counted; empty: until told
    std::string state;                     ///< the state or material that it meets, where there is one
    rules::Verdict verdict = rules::Verdict::Warn; ///< of this meeting: the row's own, or that for one side of it
    PlaceId place;                                 ///< heat and air: where
    std::vector<std::string> fragments;            ///< assembly: the ones that could not enter, the joins left open
    bool operator==(const HazardFinding&) const = default;
};

/// A start that is asked about: this stage of this piece, at this place, by these hands.
struct Start {
    PieceId piece;
    StageInstance stage;
    PlaceId place;
    std::optional<Temperature> setTo{}; ///< what the place is about to be set to, where it is
};

/// The bench hours round an instant: when this bench day ends and when the next one begins.
struct BenchDay {
    std::optional<Instant> benchCloses; ///< empty: nobody told, so nothing is known to close unattended
    std::optional<Instant> nextOpens;
};

/// What is known of the order of joining, for one start that joins fragments.
struct AssemblyFacts {
    std::vector<std::string> lockedOut = {};  ///< fragments without a free insertion direction once this is fixed
    bool closesRing = false;                  ///< this set closes a ring
    std::vector<std::string> openJoins = {};  ///< joins of that ring still open before this set
    std::vector<std::string> joinsOfSet = {}; ///< joins that this set fixes
};

/// The bench day that `now` falls into; outside bench hours it has just closed.
BenchDay benchDayOf(const Roster& roster, Instant now);

/// What stands against a start now, worst first: blocks, then warnings, then reminders.
/// Answers already given for this start (overrides) are left out, until a state begins anew that they
/// did not know of. Without a `day` the hours of the roster hold.
std::vector<HazardFinding> hazardsOf(const Start& start, const BenchPicture& picture, const BenchDay& day = {},
                                     const AssemblyFacts* assembly = nullptr);
std::vector<HazardFinding> hazardsOf(const Start& start, const BenchFold& bench, const std::vector<Window>& windows,
                                     const rules::RuleBook& book, Instant now, const BenchDay& day = {},
                                     const AssemblyFacts* assembly = nullptr);

/// What stands against telling that a state begins ("Flame is lit"): the same rows, before the tap.
std::vector<HazardFinding> hazardsOfTelling(const std::string& state, const BenchPicture& picture, PieceId piece = {});
std::vector<HazardFinding> hazardsOfTelling(const std::string& state, const BenchFold& bench,
                                            const std::vector<Window>& windows, const rules::RuleBook& book,
                                            Instant now, PieceId piece = {});

/// States of the bench in force now: those that stages left, those under hands, those that were told.
std::vector<StateInForce> statesInForce(const BenchPicture& picture);
std::vector<StateInForce> statesInForce(const BenchFold& bench, const rules::RuleBook& book, Instant now);

/// What hangs over the bench whether or not anything is started: one standing notice a
/// place that is warmer than something in it may get, states that already meet, windows
/// that close on the same hands or on nobody's, and the reminders of open work.
std::vector<HazardFinding> standingHazards(const BenchPicture& picture, const BenchDay& day = {});
std::vector<HazardFinding> standingHazards(const BenchFold& bench, const std::vector<Window>& windows,
                                           const rules::RuleBook& book, Instant now, const BenchDay& day = {});

} // namespace mend::bench
