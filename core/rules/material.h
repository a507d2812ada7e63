#pragma once

#include "core/rules/figure.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::rules {

/// The warmest a piece may get because of what was put into it; the first whose age
/// span contains the material's age rules.
struct HeatLimit {
    TemperatureFigure warmest;
    std::optional<Span> fromAge;  ///< empty: from the start
    std::optional<Span> untilAge; ///< empty: for ever
    bool operator==(const HeatLimit&) const = default;
};

/// Something that is mixed, laid or dusted, by its generic name.
struct Material {
    std::string key;    ///< "fastAdhesive"
    std::string name;   ///< "clear fast two-part adhesive"
    std::string tile;   ///< short name on the "Mixing now" tile: "Adhesive"; empty: never mixed
    std::string family; ///< "epoxy", "lacquer", "urushi", "acrylicResin", "plaster", "metalPowder", "solvent",
                        ///< "support", "oldMend"
    std::string law;    ///< key of a cure law
    std::optional<SpanFigure> potLife; ///< from mixing, at `potReference`
    Temperature potReference;
    std::string ratio; ///< "1 : 1 by volume"
    std::vector<HeatLimit> heatLimits;
    std::optional<SpanFigure> handOverWait; ///< after its own last stage
    std::optional<SpanFigure> fullCure;
    std::optional<Temperature> cureReference; ///< what `fullCure` is true at; empty: `potReference`
    std::vector<std::string> cautions;
    bool operator==(const Material&) const = default;
};

} // namespace mend::rules
