#pragma once

#include "core/base/civil.h"
#include "core/base/id.h"
#include "core/base/units.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::record {

/// How the piece is when it comes in. What the eye sees stands apart from what the mender makes of it.
struct Condition {
    std::string seen;                  ///< "rim chip 12 mm, two joins open, brown glue on both edges"
    std::string inferred;              ///< "joined before, probably with a household glue"
    std::string how;                   ///< by what it was looked at: "by eye, daylight, tapped"
    std::vector<std::string> oldMends; ///< each former mend, as it is found
    bool operator==(const Condition&) const = default;
};

/// Something that came with the piece and has to go back with it: a lid, a stand, a box.
struct Accessory {
    std::string what;
    int count = 1;
    bool operator==(const Accessory&) const = default;
};

/// How consent was signed.
enum class Signature { None, Drawn, OnPaper };

/// What the owner agrees to: one text with ticks and one signature. The ticks start as most jobs have them.
struct Consent {
    std::string scope;              ///< what is to be done, in the owner's words
    bool reversible = true;         ///< wants a mend that can be undone
    bool visible = true;            ///< the mend may show
    bool metal = false;             ///< metal powder may be laid on it
    bool noFoodUse = true;          ///< understands: not for food or drink afterwards
    bool hiddenDamage = true;       ///< understands: damage that cannot be seen may come to light
    bool photoUse = false;          ///< pictures of it may be shown to others
    std::optional<Money> priceFrom; ///< the price band
    std::optional<Money> priceTo;
    std::string words; ///< which wording was signed: the revision of the text
    std::optional<CivilDay> signedOn;
    Signature how = Signature::None;
    std::string picture; ///< hash of the drawn signature's picture
    bool operator==(const Consent&) const = default;

    bool isSigned() const { return how != Signature::None && signedOn.has_value(); }
};

/// Why a piece is here again.
enum class CameFor { FirstTime, JoinFailed, BrokenAnew, FragmentFound, Another };

/// One stay of a piece: a piece that comes back keeps its number and gets a new visit with a condition and a
/// consent of its own. What happened during it (stages, promises, payments) is told by events.
struct Visit {
    PieceId piece;
    int number = 1; ///< counts from 1
    CameFor cameFor = CameFor::FirstTime;
    std::string procedure; ///< key of what was agreed this time
    int fragments = 0;     ///< as counted at this intake
    Condition condition;
    std::vector<Accessory> accessories;
    std::optional<Money> declaredValue;
    std::string wishes; ///< what the owner would like
    std::string story;  ///< what the owner tells of it
    Consent consent;
    bool operator==(const Visit&) const = default;
};

/// All accessories, each counted.
int accessoriesOf(const Visit& visit);

} // namespace mend::record
