#pragma once

#include "core/base/civil.h"
#include "core/bench/state.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace mend::bench {

/// A day that was promised to the owner, and when it was.
struct Promise {
    CivilDay day{};
    Instant toldAt;
    EventId by;
    bool operator==(const Promise&) const = default;
};

/// Money that came in, or went back where it is below nothing.
struct Payment {
    Money money;
    Instant at;
    EventId by;
    bool operator==(const Payment&) const = default;
};

/// The owner was told something: rung, written to, or given formal notice.
struct OwnerWord {
    bool isNotice = false; ///< in form, because the piece lies here unclaimed
    std::string how;       ///< "phone", "mail", "letter", "recordedLetter", "inPerson"
    std::string about;
    Instant at;
    EventId by;
    bool operator==(const OwnerWord&) const = default;
};

/// What was named as having given way since the visit before.
struct NamedFault {
    StageInstance stage; ///< the join; empty where a batch is at fault
    MixId mix;
    std::string note;
    Instant at;
    bool operator==(const NamedFault&) const = default;
};

/// A piece went back to its owner.
struct Handing {
    Instant at;
    std::string takenBy;
    std::string signedHow;
    PersonId by;
    EventId event;
    bool operator==(const Handing&) const = default;
};

/// One material that was put into a piece, with its batch.
struct PutIn {
    std::string material; ///< key
    std::string batch;    ///< empty where it was not mixed
    MixId mix;
    StageInstance stage;
    Instant at;
    bool operator==(const PutIn&) const = default;
};

/// How many of something came in and went out; unset: not counted.
struct InAndOut {
    std::optional<int> in;
    std::optional<int> out;
    bool operator==(const InAndOut&) const = default;
    bool isShort() const { return in && out && *out < *in; }
};

/// Everything told of one visit of a piece at the door: what was agreed, promised, paid and counted.
struct VisitFacts {
    int number = 1;
    std::string cameFor; ///< empty at the first visit
    std::optional<Instant> receivedAt;
    std::optional<Instant> agreedAt;
    std::optional<Instant> consentAt;
    std::string consentHow;
    std::vector<Promise> promises; ///< the newest holds
    std::optional<Money> price;
    std::vector<Payment> payments;
    std::vector<OwnerWord> ownerWords;
    std::vector<NamedFault> faults;
    int fragmentsFound = 0;
    InAndOut fragments;
    InAndOut accessories;
    std::vector<PutIn> putIn;
    std::optional<Instant> waitShortenedTo;
    std::string waitShortenedBecause;
    std::optional<Handing> handedOver;
    std::optional<Instant> returnedUnmended;
    bool operator==(const VisitFacts&) const = default;

    bool isOver() const { return handedOver || returnedUnmended; }
    std::optional<Promise> promise() const;
    /// How often the owner was given notice in form, since it became ready or before.
    int notices() const;
};

/// What is owed. `left` is below nothing where too much was paid; empty where no price is agreed, the
/// payments are of another currency, or a sum does not fit.
struct Owed {
    std::optional<Money> price;
    std::optional<Money> paid;
    std::optional<Money> left;
    bool operator==(const Owed&) const = default;
};
Owed owedFor(const VisitFacts& visit);

/// All visits of one piece, the first one first; never empty.
struct Dossier {
    PieceId piece;
    std::vector<VisitFacts> visits;
    bool operator==(const Dossier&) const = default;
    const VisitFacts& now() const { return visits.back(); }
};

/// Folds everything told of one piece (`Store::eventsOf`, or the bench's own events) into its visits. Events of
/// other pieces are passed over, mixes are looked up among all. Voided facts are left out, moved ones moved.
Dossier dossierOf(PieceId piece, std::span<const Event> events, const rules::RuleBook& book);

} // namespace mend::bench
