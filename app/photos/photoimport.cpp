#include "app/photos/photoimport.h"

#include "core/exchange/picturefile.h"

#include <QBuffer>
#include <QColorSpace>
#include <QCoreApplication>
#include <QDateTime>
#include <QFile>
#include <QFileInfo>
#include <QImageReader>
#include <QPainter>

namespace mend::photos {

namespace {

using exchange::PictureKind;

constexpr int workingQuality = 85;
constexpr int smallQuality = 80;

const char* formatOf(PictureKind kind)
{
    switch (kind) {
    case PictureKind::Jpeg:
        return "jpeg";
    case PictureKind::Png:
        return "png";
    case PictureKind::Gif:
        return "gif";
    case PictureKind::Bmp:
        return "bmp";
    case PictureKind::WebP:
        return "webp";
    case PictureKind::Tiff:
        return "tiff";
    }
    return "jpeg";
}

Fault tooLarge() { return {FaultKind::BadInput, "too large"}; }

std::optional<Instant> instantOf(const std::optional<exchange::CameraTime>& taken, const QTimeZone& zone)
{
    if (!taken) {
        return std::nullopt;
    }
    const auto wall = std::chrono::duration_cast<Span>(taken->wall.time_since_epoch());
    if (taken->aheadOfUtc) {
        return Instant(wall - *taken->aheadOfUtc);
    }
    // A local time that does not exist, or comes twice, is a camera's slip of an hour at most.
    const QDateTime asUtc = QDateTime::fromMSecsSinceEpoch(wall.count(), QTimeZone::utc());
    return Instant(wall - std::chrono::seconds(zone.offsetFromUtc(asUtc)));
}

/// Painted anew on white: what comes out has no transparency, no words of a camera and no colours of its own.
QImage onPaper(QImage picture)
{
    if (picture.colorSpace().isValid() && picture.colorSpace() != QColorSpace::SRgb) {
        picture.convertToColorSpace(QColorSpace::SRgb);
    }
    QImage paper(picture.size(), QImage::Format_RGB32);
    paper.fill(Qt::white);
    picture.setDevicePixelRatio(1.0);
    QPainter(&paper).drawImage(0, 0, picture);
    return paper;
}

QImage atMost(const QImage& picture, int side)
{
    if (std::max(picture.width(), picture.height()) <= side) {
        return picture;
    }
    return picture.scaled(side, side, Qt::KeepAspectRatio, Qt::SmoothTransformation);
}

std::string jpegOf(const QImage& picture, int quality)
{
    QByteArray bytes;
    QBuffer out(&bytes);
    out.open(QIODevice::WriteOnly);
    picture.save(&out, "JPEG", quality);
    return bytes.toStdString();
}

Result<ReadyPhoto> readyOf(const QImage& picture, const std::optional<Instant>& taken)
{
    const QImage working = onPaper(atMost(picture, workingSide));
    ReadyPhoto ready{jpegOf(working, workingQuality), jpegOf(atMost(working, smallSide), smallQuality), working.size(),
                     taken};
    if (ready.working.empty() || ready.thumbnail.empty()) {
        return Fault{FaultKind::Damaged, "cannot be written"};
    }
    return ready;
}

/// How large it is read, so that little is held: a JPEG is decoded small, everything else whole.
Result<QImage> decoded(QImageReader& reader, const exchange::PictureFile& file)
{
    const QSize whole = reader.size();
    if (!whole.isValid() || whole.isEmpty()) {
        return Fault{FaultKind::Damaged, "no size"};
    }
    qint64 held = qint64(whole.width()) * whole.height() * 4;
    if (file.kind == PictureKind::Jpeg) {
        const QSize wanted = whole.scaled(workingSide, workingSide, Qt::KeepAspectRatio);
        if (wanted.width() < whole.width()) {
            reader.setScaledSize(wanted);
            // libjpeg halves up to three times and stays above what is wanted.
            int halved = 1;
            while (halved < 8 && whole.width() / (halved * 2) >= wanted.width()) {
                halved *= 2;
            }
            held /= qint64(halved) * halved;
        }
        held += file.heldAtOnce;
    } else if (reader.imageFormat() == QImage::Format_RGBA64 || reader.imageFormat() == QImage::Format_RGBX64) {
        held *= 2;
    }
    if (held > mostHeld) {
        return tooLarge();
    }
    QImage picture = reader.read();
    if (picture.isNull()) {
        return Fault{FaultKind::Damaged, "cannot be decoded"};
    }
    return picture;
}

// What a translator finds these words under.
class PhotoWords {
    Q_DECLARE_TR_FUNCTIONS(PhotoWords)
};

} // namespace

Result<ReadyPhoto> readyPhoto(const QByteArray& bytes, const QTimeZone& zone)
{
    if (bytes.size() > longestPhotoFile) {
        return tooLarge();
    }
    const auto file = exchange::lookAtPicture({bytes.constData(), static_cast<std::size_t>(bytes.size())});
    if (!file) {
        return file.fault();
    }
    const QByteArray format = formatOf(file.value().kind);
    if (!QImageReader::supportedImageFormats().contains(format)) {
        return Fault{FaultKind::Unavailable, format.toStdString()};
    }
    QBuffer in;
    in.setData(bytes);
    QImageReader reader(&in, format);
    reader.setAutoDetectImageFormat(false); // the content was looked at here; nothing else is ever tried
    reader.setAutoTransform(true);
    const auto picture = decoded(reader, file.value());
    if (!picture) {
        return picture.fault();
    }
    return readyOf(picture.value(), instantOf(file.value().taken, zone));
}

Result<ReadyPhoto> readyPhotoOf(const QString& path, const QTimeZone& zone)
{
    const QFileInfo about(path);
    if (!about.exists()) {
        return Fault{FaultKind::NotFound, "file"};
    }
    QFile file(path);
    if (!about.isFile() || !file.open(QIODevice::ReadOnly)) {
        return Fault{FaultKind::Unavailable, "file"};
    }
    if (about.size() > longestPhotoFile) {
        return tooLarge();
    }
    return readyPhoto(file.read(longestPhotoFile + 1), zone);
}

Result<ReadyPhoto> readyPhoto(const QImage& picture)
{
    if (picture.isNull()) {
        return Fault{FaultKind::Foreign, "not a picture"};
    }
    return readyOf(picture, std::nullopt);
}

QString photoFaultWords(const Fault& fault, const QString& name)
{
    const QString which = name.isEmpty() ? PhotoWords::tr("This picture") : QStringLiteral("\u2068%1\u2069").arg(name);
    switch (fault.kind) {
    case FaultKind::NotFound:
        return PhotoWords::tr("%1 is no longer there. Choose it again.").arg(which);
    case FaultKind::Foreign:
        return PhotoWords::tr("%1 is not a picture, whatever its name says. Choose a photo.").arg(which);
    case FaultKind::Damaged:
        return PhotoWords::tr("%1 is damaged or was copied only in part. Copy it from the camera once more.")
            .arg(which);
    case FaultKind::BadInput:
        return PhotoWords::tr("%1 is too large to show. Save a smaller copy of it and take that.").arg(which);
    default:
        break;
    }
    if (fault.detail == "file") {
        return PhotoWords::tr("%1 cannot be read. Is it a file, and may you open it?").arg(which);
    }
    return PhotoWords::tr("%1 is of a kind that is not read here. Save it as JPEG or PNG and take that.").arg(which);
}

} // namespace mend::photos
