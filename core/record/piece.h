#pragma once

#include "core/base/id.h"
#include "core/base/time.h"
#include "core/base/units.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::record {

/// What a pot is made of, as far as mending goes: a porous body drinks, a vitrified one does not.
enum class Body { Unknown, Porous, Vitrified };

/// Whoever a piece belongs to. A name and one contact are enough.
struct Customer {
    CustomerId id;
    std::string name;
    std::string contact;
    bool operator==(const Customer&) const = default;
};

/// One owner's object, as agreed when it came in.
struct Piece {
    PieceId id;
    std::string number;    ///< YYNNNN plus its check character, without a hyphen: "2604175"
    std::string benchName; ///< short, spoken, never a customer's name: "Heron bowl"
    CustomerId owner;
    std::string procedure; ///< key of the procedure that was agreed
    Body body = Body::Unknown;
    int fragments = 1;
    int joins = 0; ///< 0: not counted yet; fragments - 1 is then reckoned with
    int sets = 0;  ///< 0: not planned yet; a third of the joins, rounded up, is then reckoned with
    Length seam;   ///< both faces
    Length chip;   ///< lengths of chips and losses to fill, added up
    std::vector<std::string> optionalStages; ///< keys of the optional stages that were agreed
    std::vector<std::string> materialsInIt;  ///< old mends and supports: keys of materials that set limits
    bool operator==(const Piece&) const = default;
};

/// The joins to reckon with.
int joinsOf(const Piece& piece);
/// The sets to reckon with: as planned, else three joins a set (common practice, no source).
int setsOf(const Piece& piece);

/// Kinds of place; the rules name them by the words in `placeKindKey`.
enum class PlaceKind { Bench, Shelf, Cabinet, HumidBox, Tray, Outside };
std::string placeKindKey(PlaceKind kind);
std::optional<PlaceKind> placeKindFromKey(const std::string& key);

/// Somewhere a piece can lie, with an air of its own.
struct Place {
    PlaceId id;
    std::string name;
    PlaceKind kind = PlaceKind::Bench;
    int slots = 0; ///< 0: as many as you like
    bool operator==(const Place&) const = default;
};

/// Someone who works here. No accounts: a name and hours.
struct Person {
    PersonId id;
    std::string name;
    bool operator==(const Person&) const = default;
};

} // namespace mend::record
