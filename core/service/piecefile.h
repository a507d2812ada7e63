#pragma once

#include "core/bench/counter.h"
#include "core/bench/handover.h"
#include "core/store/store.h"

#include <QTimeZone>

#include <optional>
#include <string>
#include <vector>

namespace mend::service {

/// One piece with everything the file holds of it: what the Piece space and the papers show.
struct PieceFile {
    record::Piece piece;
    record::Customer owner;
    std::vector<record::Visit> visits; ///< the first one first
    std::vector<store::NotedPhoto> photos;
    std::vector<bench::Event> events; ///< all that was told of it, taken back or not
    bench::Dossier dossier;
    bool operator==(const PieceFile&) const = default;

    /// The visit that `dossier.now()` tells the facts of; null for a piece from before visits were kept.
    const record::Visit* visit() const;
};

/// NotFound: no piece of that number.
Result<PieceFile> readPieceFile(const store::Store& store, PieceId piece, const rules::RuleBook& book);

/// One person and all their pieces.
struct PersonFile {
    record::Customer person;
    std::vector<PieceFile> pieces;
    bool operator==(const PersonFile&) const = default;
};
Result<PersonFile> readPersonFile(const store::Store& store, CustomerId person, const rules::RuleBook& book);

/// Everything the counter has to know before a piece goes out of the door.
struct HandOverFacts {
    std::optional<bench::HandOverFrom> from; ///< empty: work is to do
    std::optional<CivilDay> collectable;     ///< the one date in words for the owner: "may be collected from"
    bool isWaitOver = false;
    std::optional<bench::Promise> promise;
    bench::Owed owed;
    bench::InAndOut fragments; ///< `in` with those found later
    bench::InAndOut accessories;
    std::vector<record::Accessory> accessoryList;

    /// What stands against handing it over now. None of these stops it: each is said and can be overridden.
    enum class Against {
        WorkToDo,
        WaitNotOver,
        MoneyOwed,
        FragmentsNotCounted,
        FragmentMissing,
        AccessoriesNotCounted,
        AccessoryMissing
    };
    std::vector<Against> against;
    bool operator==(const HandOverFacts&) const = default;
};
HandOverFacts handOverFacts(const PieceFile& file, const bench::PieceState* state, const rules::RuleBook& book,
                            Instant now, const bench::DayOf& dayOf);

/// The civil day of an instant in a time zone.
bench::DayOf dayIn(const QTimeZone& zone);

} // namespace mend::service
