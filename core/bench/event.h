#pragma once

#include "core/base/id.h"
#include "core/base/time.h"
#include "core/base/units.h"
#include "core/record/piece.h"

#include <compare>
#include <optional>
#include <string>
#include <vector>

namespace mend::bench {

/// One repetition of one stage on one piece: "wipe back, second run".
struct StageInstance {
    std::string stage;
    int repetition = 1; ///< counts from 1
    auto operator<=>(const StageInstance&) const = default;
};

/// What an event says. The numbers are stored: never reuse or renumber one.
enum class What {
    Begun = 1,         ///< hands are on the stage
    Done = 2,          ///< the stage is done
    NotYet = 3,        ///< tested by touch: not there yet
    Skipped = 4,       ///< an optional or unwanted stage is left out; `note` says why
    SentBack = 5,      ///< work from this stage on has to be done again; `note` says why
    Missed = 6,        ///< "Not done": past its close and not done
    DoingLate = 7,     ///< past its close and being done all the same
    MoreToCome = 8,    ///< another repetition of the stage is needed
    Placed = 9,        ///< the piece lies at `place` from now on
    MixStarted = 10,   ///< a mix was begun: `mix`, `word` its material, `note` its batch
    MixEnded = 11,     ///< `mix`; `word`: "stiff", "thrownAway", "usedUp"
    MixWeighed = 12,   ///< `mix`; `amount` milligrams told later
    ReadingTaken = 13, ///< `place`, `temperature`, `humidity`
    GapAnswered = 14,  ///< `place` was heated or not from `from` to happened; `word`: "stayedOn", "wentOff", "unknown",
                       ///< or "between" its lowest `temperature` and its highest `amount` centidegrees
    HoldBegun = 15,    ///< work on the piece stops; `note` says why
    HoldEnded = 16,
    StateBegun = 17,       ///< a state of the bench is told: `word` its key ("flame")
    StateEnded = 18,       ///< a state of the bench is over: `word` its key ("padsDrying")
    Overridden = 19,       ///< a hazard was answered: `word` "INC-01:padsInCan"
    RulesAdopted = 20,     ///< the piece follows `rules` from now on, for stages not begun
    Noted = 21,            ///< `note`
    HandedOver = 22,       ///< `word`: "drawn", "onPaper" or empty, how it was signed for; `note` who took it
    ReturnedUnmended = 23, ///< `note` says why; `word` as for HandedOver
    AlertAnswered = 24,    ///< `word` the alert's key and how: see alert.h; `until` where it was put off
    PersonCame = 25,       ///< `person` is at the bench now
    AwayBegun = 26,
    AwayEnded = 27,
    Voided = 28,       ///< `target` did not happen
    Retold = 29,       ///< `target` happened at `happened` and to `piece` instead
    ClockStepped = 30, ///< the wall clock was moved by `amount` milliseconds
    Agreed = 31,       ///< scope, procedure and price are agreed; the piece is in work from here
    OptionChosen = 32, ///< optional stage `stage` was agreed
    Lifted = 33,       ///< the sub-assembly was lifted or turned out of its support
    WaitingForOwner = 34,
    OwnerAnswered = 35,
    Received = 36,        ///< the piece is in the house, at `place`; nothing is agreed yet
    CameBack = 37,        ///< a new visit of a piece that was here before, at `place`; `word` why (record::CameFor)
    FaultNamed = 38,      ///< what gave way since the visit before: `stage` the join or `mix` the batch; `note`
    FragmentFound = 39,   ///< `amount` fragments more; `note` where
    MaterialRemoved = 40, ///< `word`: key of a material of an earlier visit that is cut out of it again
    Promised = 41,        ///< `word`: the day that was promised to the owner, "2027-03-20"; the newest holds
    PriceAgreed = 42,     ///< `amount` minor units, `word` the currency; the newest holds
    Paid = 43,            ///< `amount` minor units, `word` the currency; a deposit or the rest; below 0: given back
    NoticeGiven = 44,     ///< the owner was told in form that it lies here unclaimed; `word` how ("recordedLetter")
    OwnerTold = 45,       ///< the owner was rung or written to; `word` how; `note` what about
    Counted = 46,       ///< `amount` of them; `word`: "fragmentsIn", "accessoriesIn", "fragmentsOut", "accessoriesOut"
    WaitShortened = 47, ///< it may go from `until` on, before the materials' own wait is over; `note` says why
    ConsentGiven = 48,  ///< `word`: "drawn", "onPaper"
};

/// One thing that happened, told once and kept for ever. Nothing derived is in it.
/// What each field means for each `What` stands beside the What; the rest stays empty.
struct Event {
    EventId id;
    What what = What::Noted;
    PieceId piece;
    StageInstance stage;
    PersonId person;
    PlaceId place;
    MixId mix;
    std::string rules; ///< hash of the rule revision it was told under; empty where none is meant
    Instant happened;
    Instant recorded;
    BootMark boot;
    EventId target;
    std::optional<Temperature> temperature;
    std::optional<Humidity> humidity;
    std::optional<std::int64_t> amount;
    std::optional<Instant> from;
    std::optional<Instant> until;
    std::string word; ///< a key, never a person's name
    std::string note; ///< free words of the mender; outside the hash chain
    bool operator==(const Event&) const = default;
};

/// The order of the fold: by when it happened, then by when it was told, then by its number.
bool happenedBefore(const Event& a, const Event& b);

} // namespace mend::bench
