#pragma once

#include "app/bench/hands.h"
#include "app/bench/picture.h"
#include "app/parts/scribe.h"

#include <functional>
#include <vector>

namespace mend::app {

/// One word of the rail: a space of the window that exists.
struct RailWord {
    QString key;
    QString word;
};

/// A line across the window that stays until what it says is over.
struct Banner {
    QString key;
    QString words;
    QString act; ///< the words on its button; empty: none
    bool operator==(const Banner&) const = default;
};

/// The rail: words only, the one in front marked by a bar at the edge. As one button where
/// there is no height for all.
parts::Scene railScene(const parts::Look& look, QSize size, bool mirrored, const std::vector<RailWord>& words,
                       const QString& here, bool asButton, const std::function<void(const QString&)>& go);
int railWidth(const parts::Look& look, const std::vector<RailWord>& words, bool asButton);
int railHeight(const parts::Look& look, std::size_t words);

parts::Scene bannerScene(const parts::Look& look, QSize size, bool mirrored, const Banner& banner,
                         const std::function<void(const QString&)>& act);
int bannerHeight(const parts::Look& look);

/// The most urgent thing on the bench, at the foot of every other space: what to do, which
/// piece, how long, its seam, and its button.
parts::Scene urgentScene(const bench::Card& card, const Picture& picture, QSize size, bool mirrored, Hands& hands);
int urgentHeight(const parts::Look& look);
/// The card that the strip speaks of: the first that must be started by a certain time.
const bench::Card* mostUrgent(const Picture& picture);

} // namespace mend::app
