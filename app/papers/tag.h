#pragma once

#include "app/papers/pdf.h"

#include <array>
#include <optional>
#include <vector>

namespace mend::papers {

/// What a tag says: number, bench name, how many fragments lie in its bag. Never whose it is.
struct Tag {
    QString number; ///< "2604175": what the code holds
    QString shown;  ///< "260417-5"
    QString name;   ///< the bench name: "Heron bowl"
    QString line;   ///< "7 fragments · in 25 Nov 2026"
};

/// Sizes of label, width by height in millimetres.
enum class Label { Small, Middle, Large };
inline constexpr std::array allLabels{Label::Small, Label::Middle, Label::Large};
QSizeF millimetresOf(Label label);
/// What a label is called in settings and commands: its size, "62x29".
QString keyOf(Label label);
std::optional<Label> labelOf(const QString& key);

/// Writes tags one a page, each page the size of the label, for a printer of labels.
/// Faults as writePdf.
Result<Written> writeTags(const std::vector<Tag>& tags, Label label, const QString& path);

} // namespace mend::papers
