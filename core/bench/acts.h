#pragma once

#include "core/bench/card.h"

#include <optional>
#include <vector>

namespace mend::bench {

/// Who taps, and when by both clocks.
struct Hand {
    Moment now;
    PersonId person;
};

/// A tap on a card, with what the mender may add to it.
struct Tap {
    PieceId piece;
    CardAct act;
    std::optional<Instant> happened; ///< "it went on 4 minutes ago"; empty: now
    MixId mix;                       ///< asked for where none or two mixes of the kind live; unset: the living one
    PlaceId place;                   ///< where it was done; unset: the stage's usual place
    std::string note;
};

/// The mixes that a stage could take at that time, newest last: neither ended nor stiff. The tap asks
/// where there is not exactly one.
std::vector<MixId> mixesFor(const rules::Stage& stage, const BenchFold& bench, const rules::RuleBook& book,
                            Instant when);

/// What one tap tells: one event, or the few that belong together. Ids are left unset; the
/// one who records numbers them. Empty where the act means nothing on this bench any more.
std::vector<Event> eventsOf(const Tap& tap, const BenchFold& bench, const rules::RuleBook& book, const Hand& hand);

/// An event of this hand with only the times, the boot and the person filled in.
Event toldNow(What what, const Hand& hand);

/// Events that build on this one and would have to go with it: later acts on the same piece.
std::vector<EventId> builtOn(EventId id, std::span<const Event> events);

} // namespace mend::bench
