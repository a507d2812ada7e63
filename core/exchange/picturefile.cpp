#include "core/exchange/picturefile.h"

#include <libexif/exif-data.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <memory>
#include <string>

namespace mend::exchange {

namespace {

using namespace std::string_view_literals;

/// More scans than any camera writes; some hundred of them over a large picture keep a decoder busy for minutes.
constexpr int mostScans = 100;

Fault cutShort() { return {FaultKind::Damaged, "cut short"}; }
Fault broken() { return {FaultKind::Damaged, "parts do not fit together"}; }

struct ExifFree {
    void operator()(ExifData* data) const { exif_data_unref(data); }
};

std::string asciiOf(ExifData* data, ExifTag tag)
{
    const ExifEntry* entry = exif_content_get_entry(data->ifd[EXIF_IFD_EXIF], tag);
    if (!entry || entry->format != EXIF_FORMAT_ASCII || !entry->data) {
        return {};
    }
    const std::string_view all(reinterpret_cast<const char*>(entry->data), entry->size);
    return std::string(all.substr(0, all.find('\0')));
}

std::optional<int> figureIn(std::string_view text, std::size_t at, std::size_t count)
{
    int value = 0;
    if (text.size() < at + count) {
        return std::nullopt;
    }
    const char* const end = text.data() + at + count;
    const auto read = std::from_chars(text.data() + at, end, value);
    return read.ec == std::errc() && read.ptr == end && value >= 0 ? std::optional(value) : std::nullopt;
}

/// "2026:11:28 14:03:09", as Exif 2.32 writes DateTimeOriginal.
std::optional<std::chrono::local_seconds> wallIn(std::string_view text)
{
    using namespace std::chrono;
    const auto y = figureIn(text, 0, 4);
    const auto mo = figureIn(text, 5, 2);
    const auto d = figureIn(text, 8, 2);
    const auto h = figureIn(text, 11, 2);
    const auto mi = figureIn(text, 14, 2);
    const auto s = figureIn(text, 17, 2);
    if (!y || !mo || !d || !h || !mi || !s || *y < 1900 || *y > 2200 || *h > 23 || *mi > 59 || *s > 59) {
        return std::nullopt;
    }
    const year_month_day day(year(*y), month(static_cast<unsigned>(*mo)), std::chrono::day(static_cast<unsigned>(*d)));
    if (!day.ok()) {
        return std::nullopt;
    }
    return local_days(day) + hours(*h) + minutes(*mi) + seconds(*s);
}

/// "+02:00", as Exif 2.31 writes OffsetTimeOriginal.
std::optional<std::chrono::minutes> offsetIn(std::string_view text)
{
    const auto h = figureIn(text, 1, 2);
    const auto m = figureIn(text, 4, 2);
    if (!h || !m || *h > 14 || *m > 59 || (text[0] != '+' && text[0] != '-')) {
        return std::nullopt;
    }
    const std::chrono::minutes all(*h * 60 + *m);
    return text[0] == '-' ? -all : all;
}

/// The one thing that is read of what a camera adds: where a picture was taken is nobody's business here.
std::optional<CameraTime> takenAt(std::string_view exif)
{
    const std::unique_ptr<ExifData, ExifFree> data(exif_data_new_from_data(
        reinterpret_cast<const unsigned char*>(exif.data()), static_cast<unsigned int>(exif.size())));
    if (!data) {
        return std::nullopt;
    }
    const auto wall = wallIn(asciiOf(data.get(), EXIF_TAG_DATE_TIME_ORIGINAL));
    if (!wall) {
        return std::nullopt;
    }
    return CameraTime{*wall, offsetIn(asciiOf(data.get(), EXIF_TAG_OFFSET_TIME_ORIGINAL))};
}

/// Follows the markers of a JPEG (ITU-T T.81, annex B).
class JpegWalk {
public:
    explicit JpegWalk(std::string_view bytes) : m_bytes(bytes) {}

    Result<PictureFile> follow()
    {
        m_at = 2;
        while (true) {
            const auto marker = nextMarker();
            if (!marker) {
                return cutShort();
            }
            if (*marker == endOfImage) {
                return m_found.width > 0 && m_scans > 0 ? Result<PictureFile>(m_found) : Result<PictureFile>(broken());
            }
            const auto segment = nextSegment();
            if (!segment) {
                return cutShort();
            }
            if (!take(*marker, *segment)) {
                return broken();
            }
        }
    }

private:
    static constexpr int endOfImage = 0xD9;
    static constexpr int startOfScan = 0xDA;
    static constexpr int application1 = 0xE1;

    int byteAt(std::size_t at) const { return static_cast<unsigned char>(m_bytes[at]); }
    static int word(std::string_view in, std::size_t at)
    {
        return static_cast<unsigned char>(in[at]) * 256 + static_cast<unsigned char>(in[at + 1]);
    }

    /// Passes over what is coded, to the next marker that is none of a scan's own.
    std::optional<int> nextMarker()
    {
        while ((m_at = m_bytes.find('\xFF', m_at)) != std::string_view::npos && m_at + 1 < m_bytes.size()) {
            const int code = byteAt(m_at + 1);
            const bool ofTheScan = code == 0x00 || (code >= 0xD0 && code <= 0xD7) || code == 0x01;
            if (code == 0xFF) {
                m_at += 1; // filling
            } else if (ofTheScan) {
                m_at += 2;
            } else {
                m_at += 2;
                return code;
            }
        }
        return std::nullopt;
    }

    std::optional<std::string_view> nextSegment()
    {
        if (m_at + 2 > m_bytes.size()) {
            return std::nullopt;
        }
        const auto length = static_cast<std::size_t>(word(m_bytes, m_at));
        if (length < 2 || m_at + length > m_bytes.size()) {
            return std::nullopt;
        }
        const std::string_view segment = m_bytes.substr(m_at + 2, length - 2);
        m_at += length;
        return segment;
    }

    bool take(int marker, std::string_view segment)
    {
        const bool isFrame = marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
        if (isFrame) {
            return takeFrame(marker, segment);
        }
        if (marker == startOfScan) {
            return m_found.width > 0 && ++m_scans <= mostScans;
        }
        if (marker == application1 && !m_found.taken && segment.starts_with("Exif\0\0"sv)) {
            m_found.taken = takenAt(segment);
        }
        return true;
    }

    bool takeFrame(int marker, std::string_view segment)
    {
        constexpr std::size_t head = 6;
        if (segment.size() < head || m_found.width > 0) {
            return false;
        }
        const auto parts = static_cast<std::size_t>(static_cast<unsigned char>(segment[5]));
        m_found.height = word(segment, 1);
        m_found.width = word(segment, 3);
        if (m_found.height == 0 || m_found.width == 0 || parts == 0 || parts > 4 || segment.size() < head + parts * 3) {
            return false;
        }
        std::array<int, 4> blocks{};
        int across = 1;
        int down = 1;
        for (std::size_t i = 0; i < parts; ++i) {
            const int sampling = static_cast<unsigned char>(segment[head + i * 3 + 1]);
            across = std::max(across, sampling >> 4);
            down = std::max(down, sampling & 15);
            blocks[i] = (sampling >> 4) * (sampling & 15);
        }
        const bool isProgressive = marker == 0xC2 || marker == 0xC6 || marker == 0xCA || marker == 0xCE;
        for (std::size_t i = 0; isProgressive && i < parts; ++i) {
            m_found.heldAtOnce += m_found.width * m_found.height * blocks[i] * 2 / (across * down);
        }
        return true;
    }

    std::string_view m_bytes;
    std::size_t m_at = 0;
    int m_scans = 0;
    PictureFile m_found;
};

std::size_t littleNumber(std::string_view bytes, std::size_t at)
{
    std::size_t value = 0;
    for (std::size_t i = 4; i-- > 0;) {
        value = value * 256 + static_cast<unsigned char>(bytes[at + i]);
    }
    return value;
}

/// Kinds that tell how long they are, or how they end: a decoder would take what is left of them for all.
bool isWhole(PictureKind kind, std::string_view bytes)
{
    switch (kind) {
    case PictureKind::Bmp:
        return littleNumber(bytes, 2) <= bytes.size();
    case PictureKind::WebP:
        return littleNumber(bytes, 4) + 8 <= bytes.size();
    case PictureKind::Gif: {
        const auto last = bytes.find_last_not_of('\0');
        return last != std::string_view::npos && bytes[last] == ';';
    }
    default:
        return true;
    }
}

/// A brand of the ISO base media file format (ISO/IEC 14496-12) that holds a still picture.
bool isHeifBrand(std::string_view bytes)
{
    const std::string_view brand = bytes.substr(8, 4);
    return bytes.substr(4, 4) == "ftyp" &&
           (brand == "heic" || brand == "heix" || brand == "mif1" || brand == "msf1" || brand == "avif");
}

bool isDrawing(std::string_view bytes)
{
    const std::string_view begin = bytes.substr(0, 1000);
    return begin.find("<svg") != std::string_view::npos;
}

} // namespace

Result<PictureFile> lookAtPicture(std::string_view bytes)
{
    const auto of = [&](PictureKind kind) -> Result<PictureFile> {
        PictureFile found;
        found.kind = kind;
        return isWhole(kind, bytes) ? Result<PictureFile>(found) : Result<PictureFile>(cutShort());
    };
    if (bytes.starts_with("\xFF\xD8\xFF"sv)) {
        return JpegWalk(bytes).follow();
    }
    if (bytes.starts_with("\x89PNG\r\n\x1A\n"sv)) {
        return of(PictureKind::Png);
    }
    if (bytes.starts_with("GIF87a"sv) || bytes.starts_with("GIF89a"sv)) {
        return of(PictureKind::Gif);
    }
    if (bytes.starts_with("RIFF"sv) && bytes.size() > 12 && bytes.substr(8, 4) == "WEBP") {
        return of(PictureKind::WebP);
    }
    if (bytes.starts_with("II*\0"sv) || bytes.starts_with("MM\0*"sv)) {
        return of(PictureKind::Tiff);
    }
    if (bytes.starts_with("BM"sv) && bytes.size() > 26) {
        return of(PictureKind::Bmp);
    }
    if (bytes.size() > 12 && isHeifBrand(bytes)) {
        return Fault{FaultKind::Unavailable, "heic"};
    }
    if (isDrawing(bytes)) {
        return Fault{FaultKind::Unavailable, "svg"};
    }
    return Fault{FaultKind::Foreign, "not a picture"};
}

} // namespace mend::exchange
