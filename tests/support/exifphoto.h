#pragma once

#include <cstdint>
#include <string>

namespace mend::test {

/// What a camera writes beside a picture (Exif 2.32, TIFF 6.0): which way up it was held, when, and where.
struct CameraMarks {
    int orientation = 1;
    std::string when = "2026:11:28 14:03:09"; ///< 19 characters
    std::string offset = {};                  ///< "+02:00"; empty: not told
};

/// The degrees of the place, seen again wherever the bytes of the place are.
inline constexpr std::uint32_t secretDegrees = 0x53454352;

class TiffBytes {
public:
    void word(std::uint32_t value)
    {
        m_bytes += static_cast<char>(value & 255);
        m_bytes += static_cast<char>(value >> 8 & 255);
    }
    void number(std::uint32_t value)
    {
        word(value & 0xFFFF);
        word(value >> 16);
    }
    void entry(std::uint32_t tag, std::uint32_t type, std::uint32_t count, std::uint32_t value)
    {
        word(tag);
        word(type);
        number(count);
        number(value);
    }
    void text(const std::string& words) { m_bytes.append(words).append(1, '\0'); }
    std::uint32_t size() const { return static_cast<std::uint32_t>(m_bytes.size()); }
    const std::string& bytes() const { return m_bytes; }

private:
    std::string m_bytes;
};

/// An APP1 segment with these marks and a place.
inline std::string exifSegment(const CameraMarks& marks)
{
    constexpr std::uint32_t ascii = 2;
    constexpr std::uint32_t shortNumber = 3;
    constexpr std::uint32_t longNumber = 4;
    constexpr std::uint32_t rational = 5;
    const std::uint32_t exifCount = marks.offset.empty() ? 1 : 2;
    const std::uint32_t firstDirectory = 8;
    const std::uint32_t exifDirectory = firstDirectory + 2 + 3 * 12 + 4;
    const std::uint32_t placeDirectory = exifDirectory + 2 + exifCount * 12 + 4;
    const std::uint32_t values = placeDirectory + 2 + 2 * 12 + 4;
    TiffBytes out;
    out.word(0x4949); // little endian
    out.word(42);
    out.number(firstDirectory);
    out.word(3);
    out.entry(0x0112, shortNumber, 1, static_cast<std::uint32_t>(marks.orientation));
    out.entry(0x8769, longNumber, 1, exifDirectory);
    out.entry(0x8825, longNumber, 1, placeDirectory);
    out.number(0);
    out.word(exifCount);
    out.entry(0x9003, ascii, 20, values);
    if (!marks.offset.empty()) {
        out.entry(0x9011, ascii, 7, values + 20);
    }
    out.number(0);
    const std::uint32_t degrees = values + 20 + (marks.offset.empty() ? 0 : 7);
    out.word(2);
    out.entry(0x0001, ascii, 2, 'N');
    out.entry(0x0002, rational, 3, degrees);
    out.number(0);
    out.text(marks.when);
    if (!marks.offset.empty()) {
        out.text(marks.offset);
    }
    for (int i = 0; i < 3; ++i) {
        out.number(secretDegrees);
        out.number(1);
    }
    const std::string inner = std::string("Exif\0\0", 6) + out.bytes();
    const auto length = inner.size() + 2;
    return std::string("\xFF\xE1") + static_cast<char>(length >> 8) + static_cast<char>(length & 255) + inner;
}

/// The JPEG with that segment behind its first marker.
inline std::string withMarks(const std::string& jpeg, const CameraMarks& marks)
{
    return jpeg.substr(0, 2) + exifSegment(marks) + jpeg.substr(2);
}

} // namespace mend::test
