#pragma once

#include <QColor>
#include <QString>

#include <vector>

namespace mend::parts {

/// How the window is coloured. High contrast is black and white only, with the same shapes.
enum class Theme { Light, Dark, HighContrast };

/// The few colours there are, by what they are for. Colour only repeats what shape,
/// position and words already say.
struct Tokens {
    QColor ground;   ///< the window
    QColor card;     ///< cards and fields
    QColor ink;      ///< text and frames
    QColor ink2;     ///< second text
    QColor hair;     ///< hairlines and quiet frames
    QColor edge;     ///< separators that carry nothing
    QColor gold;     ///< open windows, mended seams
    QColor goldText; ///< the word "fits"
    QColor block;    ///< ground of the inverted block
    QColor onBlock;
    QColor onBlock2;
    QColor goldOnBlock;
    QColor plinth; ///< what a drawn pot stands before
    QColor plinthOnBlock;
    QColor pot;
    QColor potOnBlock;
    QColor potLine;
};

/// The colours of a theme, from resources/look/tokens.json.
const Tokens& tokensOf(Theme theme);

/// Relative luminance and contrast as WCAG 2.2 defines them (threshold 0.04045).
double luminance(const QColor& colour);
double contrast(const QColor& a, const QColor& b);

} // namespace mend::parts
