#pragma once

#include "app/parts/measure.h"
#include "app/parts/tokens.h"
#include "app/parts/type.h"

namespace mend::parts {

/// Everything a view has to know about how this person sees and reaches the screen.
struct Look {
    Theme theme = Theme::Light;
    Measure measure;
    Type type;
    bool reduceMotion = false; ///< nothing flashes: what would is steady
    bool actionsLeft = false;  ///< buttons at the left edge of a card

    const Tokens& tokens() const { return tokensOf(theme); }
};
inline Look lookOf(Theme theme, Measure measure) { return {theme, measure, Type(measure), false, false}; }

/// Least sizes of what a finger has to hit, in millimetres (from standards on gloved hands:
/// Chen et al., Applied Ergonomics 44, 2013; misses level off at 20 mm).
constexpr double benchActMm = 20.0;
constexpr double otherActMm = 12.0;
constexpr double gapMm = 3.0;

} // namespace mend::parts
