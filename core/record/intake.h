#pragma once

#include "core/record/benchname.h"
#include "core/record/piece.h"
#include "core/record/visit.h"

#include <span>
#include <string>
#include <vector>

namespace mend::record {

/// Everything that the one page of the intake asks: whose it is, what it is, how it is, what was agreed.
/// A piece that came back has an `owner.id` and a `piece.id`.
struct Intake {
    Customer owner; ///< id set: somebody known; the rest may have been put right
    Piece piece;
    Visit visit;
    std::optional<CivilDay> promised;
    std::optional<Money> deposit;
    bool agreed = false;             ///< scope and procedure are agreed now; else the piece is only received
    bool alikeNamesAccepted = false; ///< two bench names sound alike and the mender keeps both
    bool samePersonAnswered = false; ///< asked whether it is somebody known already, and answered
    bool operator==(const Intake&) const = default;
};

/// What is missing or wrong on the page, each named by the field that it belongs to.
enum class IntakeFault {
    NoOwnerName,
    NoContact,
    PersonMayBeKnown, ///< somebody of that name or contact is known: the same or another?
    NoBenchName,
    BenchNameTooLong,
    BenchNameTaken,
    BenchNameHasOwner,
    BenchNameAlike, ///< sounds like another in hand: a word to tell them apart, or keep both
    NoProcedure,
    FragmentsOutOfRange,
    AccessoryUnnamed,
    AccessoryCountOutOfRange,
    MeasureOutOfRange, ///< nothing, less than nothing, or larger than a house
    ValueOutOfRange,
    PriceBandUpsideDown, ///< its lower end is the higher one, or the two are of different currencies
    DepositOutOfRange,
    SignatureWithoutDay,
    NotSigned, ///< agreed without a signature
    PromisedInThePast,
    TextTooLong,
};

/// What the faults are judged by.
struct IntakeSituation {
    CivilDay today;
    std::vector<std::string> namesInHand; ///< bench names of the other pieces in the house
    std::vector<SamePerson> peopleAlike;  ///< from `alikePeople`
};

/// Everything that stands against keeping the page, at once.
std::vector<IntakeFault> faultsOf(const Intake& intake, const IntakeSituation& situation);

/// The longest text of one field; above it a whole file was pasted (F46).
constexpr std::size_t longestField = 100'000;
constexpr std::size_t longestName = 300;

/// The page with every text freed of what must not be in a record: control characters, marks that turn the
/// direction of writing, blanks at the ends.
Intake cleaned(Intake intake);

} // namespace mend::record
