#pragma once

#include "core/base/result.h"
#include "core/base/time.h"

#include <QByteArray>
#include <QImage>
#include <QString>
#include <QTimeZone>

#include <optional>
#include <string>

namespace mend::photos {

/// The longer side of the copy that is worked with, and of the small one, in pixels. Enough for a
/// photo over a whole page at 200 dots an inch (common practice, no source).
constexpr int workingSide = 2400;
constexpr int smallSide = 320;
/// The longest file that is looked at: a raw developed photo of a hundred million pixels.
constexpr qint64 longestPhotoFile = 64LL * 1024 * 1024;
/// What decoding one photo may hold at once, in bytes; a whole import stays below 256 MB with it.
constexpr qint64 mostHeld = 100LL * 1024 * 1024;

/// A photo as it goes into the bench file: upright, JPEG, with nothing in it that a camera adds (no place, no
/// name of a camera, no small picture of another one). `taken` is kept beside it, as a field of our own.
struct ReadyPhoto {
    std::string working;   ///< at most `workingSide` long
    std::string thumbnail; ///< at most `smallSide` long
    QSize size;            ///< of the working copy
    std::optional<Instant> taken;
};

/// Makes a photo out of the bytes of a file. `zone`: of the studio, for a camera that tells no zone of its own.
/// Only the first picture of several is taken. Nothing is ever fetched, and no kind is read that could ask for it.
/// Faults: Foreign (not a picture), Unavailable (detail "heic", "svg", "webp", "tiff": not read here),
/// Damaged (cut short or broken), BadInput (larger than can be shown).
Result<ReadyPhoto> readyPhoto(const QByteArray& bytes, const QTimeZone& zone);

/// The same of a file. Faults beside those: NotFound, Unavailable with detail "file" (cannot be read, not a file).
Result<ReadyPhoto> readyPhotoOf(const QString& path, const QTimeZone& zone);

/// The same of a picture that was pasted.
Result<ReadyPhoto> readyPhoto(const QImage& picture);

/// What to do about it, one sentence with the file's name. `name` may be empty.
QString photoFaultWords(const Fault& fault, const QString& name);

} // namespace mend::photos
