#pragma once

#include "app/parts/scribe.h"
#include "core/bench/card.h"

#include <QTimeZone>

#include <vector>

namespace mend::parts {

/// Where an instant stands on a line that begins at now.
struct TimeAxis {
    Instant now;
    Span shown{0}; ///< what the whole width stands for; never 0
    double left = 0.0;
    double width = 0.0;

    double x(Instant at) const; ///< not cut off at the ends
    double right() const { return left + width; }
};

/// The instants on an axis at which a clock on the wall of that zone shows whole steps.
std::vector<Instant> wallTicks(const TimeAxis& axis, Span step, const QTimeZone& zone);

/// The axis of one card: the whole width is the whole stretch from what the window counts from
/// to its end, so that the seam burns down from the right as a candle does.
TimeAxis axisOf(const bench::Card& card, Instant now, double left, double width);

/// Nothing to draw: no time is known and nothing stalls.
bool isEmpty(const bench::Seam& seam);

/// The inks a seam is drawn with; they differ on the inverted block.
struct SeamInk {
    QColor open; ///< gold
    QColor hair; ///< waiting
    QColor mark; ///< now, latest start
    QColor ground;
};
SeamInk seamInk(const Tokens& tokens, bool onBlock);

/// On a card a seam has its now mark, and dots to the end of the line; on the common axis, where
/// now is drawn once for all, dots only reach to where a window is lost.
enum class SeamDetail { Card, Common };

/// The sign for a window: hairline while waiting, swelling before it opens, full while open, an
/// upright tick at the latest start, tapering from there to a point at the close, dots past it;
/// a ring where a wait ends, with a thick stretch under it for its range; dotted where stalled.
void drawSeam(Scribe& scribe, const bench::Seam& seam, const TimeAxis& axis, double middle, double breadth,
              const SeamInk& ink, SeamDetail detail);

} // namespace mend::parts
