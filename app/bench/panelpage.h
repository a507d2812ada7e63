#pragma once

#include "app/bench/picture.h"
#include "app/parts/scribe.h"

#include <functional>
#include <vector>

namespace mend::app {

/// One page of the panel that opens over the cards: a question with large answers. Never modal:
/// the block and everything above it go on.
struct PanelPage {
    struct Choice {
        QString key;
        QString label;
        QString below;
        std::function<void()> act;
        bool strong = false;
    };
    QString key;
    QString title;
    QString figure;                   ///< what has been typed so far, large; empty: no figure
    QStringList text;                 ///< paragraphs
    bool pad = false;                 ///< digits to tap
    bool comma = false;               ///< with a decimal mark
    std::function<void(QChar)> typed; ///< '0'..'9', '.', '<' for one back
    QString wordsAsked;               ///< a line for words is shown with this label
    std::vector<Choice> choices;
};

/// Draws a page at this width and gives its height.
struct PanelDrawn {
    parts::Scene scene;
    int height = 0;
    QRect words; ///< where the line for words goes; empty: none
};
PanelDrawn drawPanel(const PanelPage& page, const parts::Look& look, int width, bool mirrored,
                     const std::function<void()>& close);

} // namespace mend::app
