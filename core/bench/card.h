#pragma once

#include "core/bench/hazardcheck.h"
#include "core/bench/plannedhands.h"
#include "core/bench/reach.h"
#include "core/bench/window.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::bench {

/// How a card stands on the Bench: decides its frame and its place.
enum class Standing {
    DoNow,      ///< a costly window is closing: the inverted block
    Open,       ///< a window is open: thick frame
    Past,       ///< a window closed and nobody has said what became of it
    UnderHands, ///< begun and not done
    Stopped,    ///< the next act is forbidden for now: dashed
    Stalled,    ///< a wait makes no progress
    Waiting,    ///< something has to be waited for
    Free,       ///< may be worked on whenever there is time
    OnHold,
    Ready, ///< may be handed over
};

/// One thing a card can be told. What it does to the bench is an event or a few.
enum class ActKind {
    HandsOnIt, ///< answers the alert
    Begin,     ///< hands are on the stage now
    Finish,    ///< the stage is done
    Confirm,   ///< the touch test passed: begins the stage
    NotYet,
    WasInTime, ///< past the close: it was done in time
    DoingLate,
    NotDone,
    AskHazard, ///< stopped: opens the answers
    SendBack,  ///< cut back: this stage and all after it are done again
    HandOver,
    EndHold,
};

/// A button of a card: what it does and the mender's own words on it.
struct CardAct {
    ActKind kind = ActKind::Finish;
    StageInstance stage;
    std::string words; ///< from the rule file where it has them ("Wiped back"); empty: the app words the kind
    bool operator==(const CardAct&) const = default;
};

/// Why a card says what it says: one line, worded by the app from its kind and figures.
enum class ReasonKind {
    Hazard,       ///< `text` from the rule, `until`
    MissCosts,    ///< `miss`, `text`
    Sooner,       ///< `span` sooner than at the reference, because of `temperature`
    ChainThen,    ///< `stage` of `piece` wants the same hands right after
    TwoNeedHands, ///< two latest starts closer than their hands-on times: `piece`
    MixLeft,      ///< `mix`, `span` of pot life left
    MixReach,     ///< before it is mixed: how much of this piece one mix does, see `share`
    TestByTouch,  ///< `text` how
    Stalled,      ///< `temperature` is under what it needs
    StaleReading, ///< the reading behind it is `span` old
    NoReading,
    MayStay,      ///< nothing is lost by leaving it
    Late,         ///< closed `span` ago
    Hold,         ///< `text`
    Fits,         ///< a start now fits, until `until`: there is a whole plan of the bench with it
    Clashes,      ///< it would cost the window of `stage` of `piece`, hands off there by `until`; unset: a later one
    NotBefore,    ///< hands, place or hours are only there from `until`
    UnsureIfFits, ///< no plan with it was found, nor that there is none; `piece` and `stage` as in Clashes
    HeatOver,     ///< `temperature` of `place` is over what something in it may get
    Caution,      ///< `text`
};
struct Reason {
    ReasonKind kind = ReasonKind::Caution;
    std::string text{};
    std::optional<Instant> until{};
    std::optional<Span> span{};
    std::optional<Temperature> temperature{};
    PieceId piece{};
    PlaceId place{};
    MixId mix{};
    StageInstance stage{};
    rules::Miss miss = rules::Miss::Nothing;
    std::optional<ReachShare> share{};
    bool operator==(const Reason&) const = default;
};

/// The seam drawn across a card from now to the right; every part is an instant or absent.
struct Seam {
    std::optional<Instant> opens; ///< swells to full breadth here
    std::optional<Instant> opensAtLatest;
    std::optional<Instant> latestStart; ///< upright tick
    std::optional<Instant> closes;      ///< tapers to its point here
    std::optional<Instant> lost;        ///< dots up to here
    std::optional<Instant> ends;        ///< a wait ends: ring
    bool stalled = false;
    bool operator==(const Seam&) const = default;
};

/// What the digits of a card count to.
enum class CountKind { Nothing, StartBy, Opens, Ends, UnderHands, Late, Counted };

/// Everything one card of the Bench shows about one piece, without a word of layout.
struct Card {
    PieceId piece;
    std::string number;
    std::string benchName;
    std::string ownerName;
    std::string procedureName;
    std::string placeName;
    Standing standing = Standing::Free;
    std::string act; ///< "Wipe back the filler"
    StageInstance stage;
    int repetitions = 1; ///< of this stage on this piece: "set 2 of 4"
    CountKind counts = CountKind::Nothing;
    std::optional<Instant> countTo;
    std::optional<Instant> countToAtLatest; ///< for ranges
    Seam seam;
    std::vector<Reason> reasons;        ///< most important first
    std::vector<CardAct> acts;          ///< the first is the big button; Past has three of equal size
    std::optional<Window> window;       ///< the window the card speaks of
    std::vector<Window> others;         ///< further windows of the piece, by urgency
    std::vector<HazardFinding> hazards; ///< against the next act
    double mended = 0.0;                ///< share of stages done, 0 to 1: how far its seams have turned gold
    bool operator==(const Card&) const = default;
};

/// A small card for a living mix.
struct MixCard {
    MixId mix;
    std::string materialName;
    std::string batch;
    Instant mixedAt;
    std::optional<Instant> stiffAt;
    std::vector<PieceId> on;
    bool operator==(const MixCard&) const = default;
};

/// The bench at one instant as the Bench space, the wall list and the console print it.
struct Board {
    Instant at;
    std::vector<Card> cards; ///< in order: costly and soonest first
    std::vector<MixCard> mixes;
    std::vector<HazardFinding> standing;
    std::vector<StateInForce> states;
    std::optional<Instant> freeUntil; ///< how long these hands may turn away; empty: nothing closes
    bool planned = false;             ///< a whole plan stands behind `hands` and `freeUntil`
    std::vector<PlannedHands> hands;  ///< whose hands are wanted when, oldest first
    std::vector<Window> windows;      ///< every window, for alerts and the common strip
    std::vector<Reach> reaches;       ///< how far each kind of mix in use would go if it were mixed now
    bool operator==(const Board&) const = default;
};

/// When a mix is too stiff to use, by its pot life and the heat of the bench; empty where it has none.
std::optional<Instant> stiffAt(const MixState& mix, const BenchFold& bench, const rules::RuleBook& book, Instant now);

/// When the board next says something else by the clock alone; empty where nothing runs.
std::optional<Instant> nextChange(const Board& board, Instant now);

/// The Bench, worked out from what was told.
Board boardOf(const BenchFold& bench, const rules::RuleBook& book, Instant now);

} // namespace mend::bench
