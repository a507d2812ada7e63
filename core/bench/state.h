#pragma once

#include "core/bench/event.h"
#include "core/cure/climate.h"
#include "core/record/piece.h"
#include "core/rules/rulebook.h"

#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

namespace mend::bench {

/// Who and what there is, as agreed: the part of the bench that is not told by events.
struct Roster {
    std::vector<record::Customer> customers;
    std::vector<record::Piece> pieces;
    std::vector<record::Place> places;
    std::vector<record::Person> people;
    std::vector<InstantRange> openHours; ///< when the bench is staffed, UTC, oldest first, as far as is known

    /// The end of the bench day that `when` falls into, or of the next one.
    std::optional<Instant> endOfDay(Instant when) const;
    const record::Piece* piece(PieceId id) const;
    const record::Customer* customer(CustomerId id) const;
    const record::Place* place(PlaceId id) const;
    const record::Person* person(PersonId id) const;
    const record::Place* firstOfKind(record::PlaceKind kind) const;
    bool operator==(const Roster&) const = default;
};

/// What has been told of one repetition of one stage.
struct StageRecord {
    StageInstance at;
    std::optional<Instant> firstTouch; ///< begun, or done minus the usual minutes where only "done" was told
    std::optional<Instant> lastTouch;  ///< done
    EventId firstBy;
    EventId lastBy;
    std::optional<Instant> notYet; ///< last time a touch test said "not yet"
    bool skipped = false;
    bool missed = false;    ///< past its close, told as not done
    bool doingLate = false; ///< past its close and being done all the same
    MixId mix;
    bool operator==(const StageRecord&) const = default;

    bool isDone() const { return lastTouch.has_value(); }
    bool isUnderHands() const { return firstTouch.has_value() && !lastTouch.has_value(); }
    bool isSettled() const { return isDone() || skipped; }
};

/// A piece lay at `place` from then on.
struct PieceStay {
    Instant from;
    PlaceId place;
    bool operator==(const PieceStay&) const = default;
};

/// A hazard was answered for one start: that start goes on, the next one asks again.
struct Override {
    StageInstance stage;
    std::string answer; ///< "INC-01:padsInCan"
    Instant at;
    bool operator==(const Override&) const = default;
};

/// Something that an earlier visit put into the piece and that is still in it.
struct EarlierMaterial {
    std::string material; ///< key
    Instant at;           ///< its last use
    bool operator==(const EarlierMaterial&) const = default;
};

/// Everything told of one piece, folded: of its present visit, with what earlier ones left in it.
struct PieceState {
    record::Piece piece;
    rules::RevisionHash rules;             ///< the revision it follows
    std::vector<StageRecord> stages;       ///< by stage key and repetition
    std::vector<PieceStay> stays;          ///< oldest first, never empty
    std::map<std::string, int> moreToCome; ///< repetitions asked for beyond those reckoned
    std::set<std::string> conditions;      ///< of rules::Condition that hold
    std::set<std::string> chosenOptions;
    std::vector<Override> overrides; ///< hazards answered, newest last
    std::vector<EarlierMaterial> earlier;
    int visit = 1;
    std::optional<Instant> receivedAt;
    std::optional<Instant> handedOverAt;
    std::optional<Instant> waitShortenedTo; ///< it may go from then on, before the materials' own wait is over
    bool agreed = true;
    bool onHold = false;
    bool waitingForOwner = false;
    bool returnedUnmended = false;
    bool operator==(const PieceState&) const = default;

    const StageRecord* record(const StageInstance& at) const;
    PlaceId placeAt(Instant when) const;
};

/// One mix of a two-part material.
struct MixState {
    MixId id;
    std::string material;
    std::string batch;
    Instant mixedAt;
    EventId mixedBy;
    std::optional<Instant> endedAt;
    std::string ended; ///< "stiff", "thrownAway", "usedUp"
    std::optional<Mass> mass;
    std::vector<PieceId> on; ///< pieces it went on, in order
    bool operator==(const MixState&) const = default;
    bool isAlive() const { return !endedAt.has_value(); }
};

/// A state of the bench in force: pads that dry, a flame that burns.
struct StateInForce {
    std::string state;
    Instant since;
    std::optional<Instant> until; ///< ends by itself then; empty: until told
    PieceId piece;                ///< whose stage left it; unset: told
    EventId by;
    bool operator==(const StateInForce&) const = default;
};

/// What an alert has been answered with; see alert.h for the keys.
struct AlertAnswer {
    std::string key;
    std::string how;
    Instant at;
    std::optional<Instant> until;
    PersonId by;
    bool operator==(const AlertAnswer&) const = default;
};

/// The readings of a place as waits and as closings must see them: after a gap of
/// which nobody knows, waits are given room temperature and closings the full heat.
struct PlaceAir {
    cure::PlaceRecord forWaits;
    cure::PlaceRecord forClosings;
    bool operator==(const PlaceAir&) const = default;
};

/// The bench as told so far: a fold over events, the same one live and at start-up.
struct BenchFold {
    Roster roster;
    std::map<PieceId, PieceState> pieces; ///< in hand only: neither handed over nor returned
    std::map<MixId, MixState> mixes;
    std::map<PlaceId, PlaceAir> air;
    std::vector<StateInForce> states; ///< every one ever begun and not ended by telling; look at `until`
    std::vector<AlertAnswer> answers; ///< the newest of each key
    PersonId atBench;
    std::optional<Instant> awaySince;
    bool operator==(const BenchFold&) const = default;

    const PieceState* piece(PieceId id) const;
};

/// What is left of the events when voided ones are taken out and retold ones stand at
/// their new time and piece, in the order of the fold.
std::vector<Event> effective(std::span<const Event> events);

/// Folds everything told into the state of the bench. Events may come in any order.
BenchFold fold(const Roster& roster, std::span<const Event> events, const rules::RuleBook& book);

/// Takes answers to alerts into a bench that was folded before, as folding everything anew would. False: there is
/// something else among them, or they were told earlier than an answer that stands; then nothing was done.
bool addAnswers(BenchFold& bench, std::span<const Event> events);

/// Whether a condition of a rule ("porous", "lifted") holds for the piece; an unknown body counts
/// as porous, because that waits longer.
bool holds(const rules::Condition& condition, const PieceState& piece);

/// An optional stage that nobody chose or began is passed over.
bool isPassedOver(const rules::Stage& stage, const PieceState& piece);

/// How many repetitions of a stage a piece needs, as far as is known.
int repetitionsOf(const rules::Stage& stage, const PieceState& piece, const rules::RuleBook& book);

/// The procedure (in the revision that it follows) of a piece; null where the rules are gone.
const rules::Procedure* procedureOf(const PieceState& piece, const rules::RuleBook& book);

/// What the stages done so far put into the piece, each with its last use.
std::vector<EarlierMaterial> materialsPutIn(const PieceState& piece, const rules::RuleBook& book);

/// Hands-on time of one repetition of a stage on this piece.
Span handsOn(const rules::Stage& stage, const PieceState& piece, const rules::RuleBook& book);

} // namespace mend::bench
