#pragma once

#include "core/base/result.h"

#include <chrono>
#include <cstdint>
#include <optional>
#include <string_view>

namespace mend::exchange {

/// The kinds of picture that are taken in. Which one it is says the content, never the name.
enum class PictureKind { Jpeg, Png, Gif, Bmp, WebP, Tiff };

/// When a photo was taken, by the camera's own clock: most tell no zone with it.
struct CameraTime {
    std::chrono::local_seconds wall;
    std::optional<std::chrono::minutes> aheadOfUtc; ///< where the camera told its zone
    bool operator==(const CameraTime&) const = default;
};

/// What can be known of a picture before any of it is decoded.
struct PictureFile {
    PictureKind kind = PictureKind::Jpeg;
    std::optional<CameraTime> taken;
    std::int64_t width = 0;      ///< of a JPEG, as it lies in the file; else 0
    std::int64_t height = 0;     ///< likewise
    std::int64_t heldAtOnce = 0; ///< bytes of coefficients that a decoder keeps for the whole of a progressive JPEG
    bool operator==(const PictureFile&) const = default;
};

/// Looks at the bytes of a file that is said to be a photo. A JPEG is followed to its end marker, because
/// a decoder fills what is missing with grey and says nothing.
/// Faults: Foreign (not a picture); Unavailable (a picture of a kind that is not read here; detail "heic", "svg");
/// Damaged (cut short, or its parts do not fit together).
Result<PictureFile> lookAtPicture(std::string_view bytes);

} // namespace mend::exchange
