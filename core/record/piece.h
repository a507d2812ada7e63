#pragma once

#include "core/base/id.h"
#include "core/base/time.h"
#include "core/base/units.h"
#include "core/record/customer.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::record {

/// What a pot is made of, as far as mending goes: a porous body drinks, a vitrified one does not.
enum class Body { Unknown, Porous, Vitrified };

/// How large and how heavy a piece is, as far as it was measured.
struct Size {
    std::optional<Length> height;
    std::optional<Length> width; ///< the widest
    std::optional<Length> depth;
    std::optional<Length> wall; ///< thickness at the break
    std::optional<Mass> mass;
    bool operator==(const Size&) const = default;
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
    std::string looks = {};                  ///< what one sees: "small blue bowl with a heron"
    std::string maker = {};                  ///< maker or place of origin, as far as known
    std::string marks = {};                  ///< stamps and signatures on it
    Size size = {};
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
