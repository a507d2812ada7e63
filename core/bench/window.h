#pragma once

#include "core/bench/state.h"
#include "core/cure/progress.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::bench {

/// Which figure of a window a reckoning gives.
enum class FigureOf { Opens, OpensAtLatest, Recommended, Closes, Lost };

/// How one figure on a card came about: enough to work it out again by hand.
struct Reckoning {
    FigureOf of = FigureOf::Opens;
    EventId event;  ///< what it counts from
    Instant origin; ///< when that was
    Span figure{0}; ///< the rule's figure, at `reference`
    rules::Source source;
    std::string law; ///< key of the cure law
    cure::Law formula;
    cure::EnergyEnd end = cure::EnergyEnd::Typical;
    Temperature reference;
    Span warmThrough{0};
    cure::Climate air;             ///< as used for this figure
    bool closing = false;          ///< a closing is only ever shortened by heat
    std::optional<Instant> result; ///< empty: stalled
    bool operator==(const Reckoning&) const = default;
};

/// The span in which a stage may be done: it opens, it closes. Closes means the hands are off.
struct Window {
    PieceId piece;
    StageInstance stage;
    std::string act; ///< what to do, from the rule
    Span handsOn{0};
    bool stalled = false;                 ///< what it waits for makes no progress: check by touch
    std::optional<Instant> opens;         ///< not before; empty where stalled
    std::optional<Instant> opensAtLatest; ///< slow end of the forecast; equal to `opens` for short waits
    std::optional<Instant> recommended;
    std::optional<Instant> latestStart; ///< closes minus hands-on, or that of its chain
    std::optional<Instant> closes;
    std::optional<Instant> lost; ///< between closes and lost: test by touch
    rules::Miss miss = rules::Miss::Nothing;
    bool soft = false;
    bool counted = false;            ///< counted softly, never alarmed
    bool waitsForTest = false;       ///< opened by a test of touch that nobody has confirmed yet
    std::optional<Instant> askAgain; ///< after "Not yet"
    std::optional<Instant> begunAt;  ///< hands are on it since
    MixId mix;
    std::vector<StageInstance> chain; ///< this and what the same hands must serve with it, in order; empty: alone
    std::vector<PieceId> chainPieces; ///< the pieces of `chain`, same order
    std::vector<Reckoning> why;       ///< openings first, then closings
    std::vector<Reckoning> whyElse;   ///< the slow end of openings, what is recommended, when it is lost
    bool operator==(const Window&) const = default;

    bool hasClose() const { return closes.has_value(); }
};

/// Where a window stands at one instant.
enum class Phase { Stalled, Waiting, Open, Past, Lost };
Phase phaseOf(const Window& window, Instant now);

/// How long until the hands have to start, or negative past it; empty where nothing closes.
/// The card, the alert, the plan and the paper all ask this one function.
std::optional<Span> remaining(const Window& window, Instant now);

/// Every stage of one piece that can be next: what it hangs on is done or skipped, itself not.
/// In the order of the procedure.
std::vector<Window> windowsOf(const PieceState& piece, const BenchFold& bench, const rules::RuleBook& book,
                              Instant now);

/// The same for every stage still to do, reached or not: opens by what has been done so far, closes only where that
/// runs already.
std::vector<Window> windowsAhead(const PieceState& piece, const BenchFold& bench, const rules::RuleBook& book,
                                 Instant now);

/// The same as `windowsOf` for the whole bench, with chains through one pair of hands set (chain.h).
/// Pieces on hold give only windows that already run.
std::vector<Window> windowsOf(const BenchFold& bench, const rules::RuleBook& book, Instant now);

} // namespace mend::bench
