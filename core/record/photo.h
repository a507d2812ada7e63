#pragma once

#include "core/base/id.h"
#include "core/base/time.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::record {

/// What a mark on a condition photo points at. Each has a shape of its own, so that no colour is needed.
enum class MarkKind { Chip, Crack, Loss, OldMend, Stain };

/// One mark on a photo, with a note. `x` and `y` are ten-thousandths of the picture's width and height as it is
/// seen, from its upper left.
struct PhotoMark {
    MarkKind kind = MarkKind::Chip;
    int x = 0;
    int y = 0;
    std::string note;
    bool operator==(const PhotoMark&) const = default;
};

/// What a photo was taken for, when, and what is marked on it.
struct PhotoNote {
    int visit = 1;
    std::optional<Instant> taken; ///< by the camera's own clock, where it told
    std::string words;
    std::vector<PhotoMark> marks;
    bool operator==(const PhotoNote&) const = default;
};

/// What a photo is for; the words are kept in the file.
inline constexpr auto conditionPhoto = "condition";
inline constexpr auto duringPhoto = "during";
inline constexpr auto finishedPhoto = "finished";
inline constexpr auto signaturePhoto = "signature"; ///< drawn at the consent or the hand-over

} // namespace mend::record
