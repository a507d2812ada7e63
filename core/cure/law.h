#pragma once

#include "core/base/units.h"

#include <optional>
#include <variant>

namespace mend::cure {

/// How strongly heat hastens one chemistry, as the band that is published for it:
/// a forecast of a wait is a range from `high` to `low`, and `typical` between.
struct EnergyBand {
    ActivationEnergy low;
    ActivationEnergy typical;
    ActivationEnergy high;
    bool operator==(const EnergyBand&) const = default;
};

/// A cure that follows the Arrhenius law, such as an epoxy's. Below `noCreditBelow`
/// it stalls and nothing is credited; above `noExtraAbove` more heat counts for no
/// more than that temperature does. Where `bend` is set, `aboveBend` rules above it.
struct Arrhenius {
    EnergyBand energy;
    std::optional<Temperature> bend;
    EnergyBand aboveBend;
    Temperature noCreditBelow;
    Temperature noExtraAbove;
    bool operator==(const Arrhenius&) const = default;
};

/// A cure that only goes on in warm, damp air, such as urushi's: it progresses by
/// the clock inside the band and not at all outside.
struct HumidBand {
    Temperature coldest;
    Temperature warmest;
    Humidity driest;
    Humidity dampest;
    bool operator==(const HumidBand&) const = default;
};

/// A wait that the clock alone decides: solvent loss and waits without a formula.
struct ClockOnly {
    bool operator==(const ClockOnly&) const = default;
};

using Law = std::variant<ClockOnly, Arrhenius, HumidBand>;

} // namespace mend::cure
