#pragma once

#include "app/parts/sheet.h"
#include "app/settings/settingsnow.h"

#include <QStringList>
#include <functional>

namespace mend::app {

/// The standing words of papers: the list of them, and one of them to be rewritten.
struct PaperActs {
    std::function<void(const QString& key)> open;
    std::function<void()> leave; ///< back to the list
    std::function<void(int paragraph, const QString& words)> edited;
    std::function<void()> keep;
    std::function<void()> reset; ///< to the words that ship
};

/// Every standing text as a row: where it stands, and whether the words are the studio's own.
parts::Sheet paperTextsSheet(const std::vector<PaperTextNow>& texts, const PaperActs& acts);
/// One text, paragraph by paragraph, with one free line more at the end.
parts::Sheet paperTextSheet(const PaperTextNow& text, const QStringList& paragraphs, const PaperActs& acts);

} // namespace mend::app
