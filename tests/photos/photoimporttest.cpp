#include "app/photos/photoimport.h"

#include "tests/support/exifphoto.h"
#include "tests/support/scratch.h"

#include <QBuffer>
#include <QFile>
#include <QPainter>
#include <QTest>
#include <fstream>
#include <gtest/gtest.h>

using namespace mend;
using namespace mend::photos;
using mend::test::CameraMarks;
using mend::test::Scratch;

namespace {

#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
constexpr bool memoryIsOurs = false; // a sanitizer holds back what was freed
#else
constexpr bool memoryIsOurs = true;
#endif

const QTimeZone& berlin()
{
    static const QTimeZone zone("Europe/Berlin");
    return zone;
}

/// Wider than high, its upper left quarter black, else white.
QImage marked(QSize size, QImage::Format format = QImage::Format_RGB32)
{
    QImage image(size, format);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.fillRect(0, 0, size.width() / 2, size.height() / 2, Qt::black);
    return image;
}

std::string bytesOf(const QImage& image, const char* format = "JPEG", int quality = 90)
{
    QByteArray bytes;
    QBuffer out(&bytes);
    out.open(QIODevice::WriteOnly);
    EXPECT_TRUE(image.save(&out, format, quality));
    return bytes.toStdString();
}

Result<ReadyPhoto> ready(const std::string& bytes) { return readyPhoto(QByteArray::fromStdString(bytes), berlin()); }

QImage imageOf(const std::string& bytes) { return QImage::fromData(QByteArray::fromStdString(bytes)); }

bool isDark(const QImage& image, double x, double y)
{
    return qGray(image.pixel(int(x * (image.width() - 1)), int(y * (image.height() - 1)))) < 90;
}

std::uint32_t crcOf(const std::string& bytes)
{
    std::uint32_t crc = ~0U;
    for (const char each : bytes) {
        crc ^= static_cast<unsigned char>(each);
        for (int i = 0; i < 8; ++i) {
            crc = crc >> 1 ^ (crc & 1 ? 0xEDB88320U : 0U);
        }
    }
    return ~crc;
}

std::string big(std::uint32_t value)
{
    std::string four;
    for (int shift = 24; shift >= 0; shift -= 8) {
        four += static_cast<char>(value >> shift & 255);
    }
    return four;
}

std::string chunk(const std::string& kind, const std::string& inner)
{
    return big(static_cast<std::uint32_t>(inner.size())) + kind + inner + big(crcOf(kind + inner));
}

/// A PNG (ISO/IEC 15948) of few bytes that unpacks to a picture of 2.7 thousand million.
std::string bomb()
{
    const std::string packed = qCompress(QByteArray(1 << 20, '\0'), 9).mid(4).toStdString();
    return std::string("\x89PNG\r\n\x1A\n", 8) +
           chunk("IHDR", big(30000) + big(30000) + std::string("\x08\x02\x00\x00\x00", 5)) + chunk("IDAT", packed) +
           chunk("IEND", {});
}

qint64 kilobytes(const char* of)
{
    QFile status(QStringLiteral("/proc/self/status"));
    EXPECT_TRUE(status.open(QIODevice::ReadOnly));
    for (const QByteArray& line : status.readAll().split('\n')) {
        if (line.startsWith(of)) {
            return line.mid(line.indexOf(':') + 1).simplified().split(' ').first().toLongLong();
        }
    }
    return 0;
}

/// The most this process held while `work` ran, above what it held before.
template <class Work> qint64 megabytesFor(Work work)
{
    std::ofstream("/proc/self/clear_refs") << "5"; // the peak counts from now (proc(5))
    const qint64 before = kilobytes("VmRSS");
    work();
    return (kilobytes("VmHWM") - before) / 1024;
}

TEST(PhotoImport, AWorkingCopyAndASmallOneAreMade)
{
    const auto photo = ready(bytesOf(marked({3000, 2000})));
    ASSERT_TRUE(photo);
    EXPECT_EQ(imageOf(photo.value().working).size(), QSize(2400, 1600));
    EXPECT_EQ(imageOf(photo.value().thumbnail).size(), QSize(320, 213));
    EXPECT_EQ(photo.value().size, QSize(2400, 1600));
    EXPECT_LT(photo.value().thumbnail.size(), 20'000U);
}

TEST(PhotoImport, ASmallPhotoKeepsItsSize)
{
    EXPECT_EQ(imageOf(ready(bytesOf(marked({300, 200}))).value().working).size(), QSize(300, 200));
}

TEST(PhotoImport, APhotoIsSetUprightAsTheCameraWasHeld)
{
    struct Way {
        int orientation;
        double x;
        double y;
        bool turned;
    };
    // Exif 2.32, tag 0x0112: where the picture's own upper left corner lies once it is upright.
    const Way ways[] = {{1, 0, 0, false}, {2, 1, 0, false}, {3, 1, 1, false}, {4, 0, 1, false},
                        {5, 0, 0, true},  {6, 1, 0, true},  {7, 1, 1, true},  {8, 0, 1, true}};
    for (const Way& way : ways) {
        const auto bytes = test::withMarks(bytesOf(marked({3000, 1500})), CameraMarks{way.orientation});
        const auto photo = ready(bytes);
        ASSERT_TRUE(photo) << way.orientation;
        for (const std::string& each : {photo.value().working, photo.value().thumbnail}) {
            const QImage image = imageOf(each);
            EXPECT_EQ(image.width() < image.height(), way.turned) << way.orientation;
            for (const double x : {0.0, 1.0}) {
                for (const double y : {0.0, 1.0}) {
                    EXPECT_EQ(isDark(image, x, y), x == way.x && y == way.y) << way.orientation << " " << x << y;
                }
            }
        }
    }
}

TEST(PhotoImport, WhereItWasTakenIsNowhereInWhatIsKept)
{
    const std::string given = test::withMarks(bytesOf(marked({640, 480})), {});
    const std::string secret("RCES", 4); // secretDegrees, little endian
    ASSERT_NE(given.find(secret), std::string::npos);
    const auto photo = ready(given);
    ASSERT_TRUE(photo);
    for (const std::string& kept : {photo.value().working, photo.value().thumbnail}) {
        EXPECT_EQ(kept.find(secret), std::string::npos);
        EXPECT_EQ(kept.find("Exif"), std::string::npos);
    }
}

TEST(PhotoImport, WordsAProgramPutIntoAPictureAreLeftBehind)
{
    QImage image = marked({200, 100});
    image.setText(QStringLiteral("Comment"), QStringLiteral("Renee Muller, 5 Kiln Lane"));
    for (const char* format : {"PNG", "JPEG"}) {
        const std::string given = bytesOf(image, format);
        ASSERT_NE(given.find("Renee"), std::string::npos) << format;
        const auto photo = ready(given);
        ASSERT_TRUE(photo) << format;
        EXPECT_EQ(photo.value().working.find("Renee"), std::string::npos) << format;
        EXPECT_EQ(photo.value().thumbnail.find("Renee"), std::string::npos) << format;
    }
}

TEST(PhotoImport, WhenItWasTakenIsKeptInUtc)
{
    using namespace std::chrono_literals;
    const std::string plain = bytesOf(marked({64, 48}));
    const Instant noon = std::chrono::sys_days(std::chrono::year(2026) / 11 / 28) + 13h + 3min + 9s;
    EXPECT_EQ(ready(test::withMarks(plain, {})).value().taken, noon); // Berlin is an hour ahead in November
    EXPECT_EQ(ready(test::withMarks(plain, CameraMarks{1, "2026:11:28 14:03:09", "-03:30"})).value().taken,
              noon + 4h + 30min);
    EXPECT_FALSE(ready(plain).value().taken);
}

TEST(PhotoImport, WhatIsSeeThroughStandsOnWhite)
{
    QImage image(100, 100, QImage::Format_ARGB32);
    image.fill(Qt::transparent);
    const auto photo = ready(bytesOf(image, "PNG"));
    ASSERT_TRUE(photo);
    EXPECT_GT(qGray(imageOf(photo.value().working).pixel(50, 50)), 250);
}

TEST(PhotoImport, TheNameOfAFileDecidesNothing)
{
    const Scratch scratch;
    const auto write = [&](const std::string& name, const std::string& bytes) {
        std::ofstream(scratch / name, std::ios::binary) << bytes;
        return QString::fromStdString((scratch / name).native());
    };
    EXPECT_TRUE(readyPhotoOf(write("really-a-png.jpg", bytesOf(marked({60, 40}), "PNG")), berlin()));
    const auto words = readyPhotoOf(write("words.jpg", "Dear studio, here is my cup."), berlin());
    ASSERT_FALSE(words);
    EXPECT_EQ(words.fault().kind, FaultKind::Foreign);
    const auto empty = readyPhotoOf(write("empty.jpg", ""), berlin());
    ASSERT_FALSE(empty);
    EXPECT_EQ(empty.fault().kind, FaultKind::Foreign);
    const auto folder = readyPhotoOf(QString::fromStdString(scratch.folder().native()), berlin());
    ASSERT_FALSE(folder);
    EXPECT_EQ(folder.fault(), (Fault{FaultKind::Unavailable, "file"}));
    EXPECT_EQ(readyPhotoOf(QStringLiteral("/nowhere/at-all.jpg"), berlin()).fault().kind, FaultKind::NotFound);
}

TEST(PhotoImport, AHugePhotoIsShownScaledInLittleMemory) // F32
{
    QImage huge(8700, 5800, QImage::Format_RGB888); // 50 Mpx
    huge.fill(QColor(120, 90, 60));
    const std::string bytes = bytesOf(huge);
    huge = QImage();
    const qint64 held = megabytesFor([&] {
        const auto photo = ready(bytes);
        ASSERT_TRUE(photo);
        EXPECT_EQ(imageOf(photo.value().working).size(), QSize(2400, 1600));
    });
    if (memoryIsOurs) {
        EXPECT_LT(held, 256);
    }
}

TEST(PhotoImport, TheLargestThatIsReadWholeStaysInBounds)
{
    const std::string bytes = bytesOf(marked({6000, 4000}), "PNG", 60);
    const qint64 held = megabytesFor([&] { EXPECT_TRUE(ready(bytes)); });
    if (memoryIsOurs) {
        EXPECT_LT(held, 256);
    }
}

TEST(PhotoImport, ABombIsRefusedUnopened) // F33
{
    const std::string small = bomb();
    ASSERT_LT(small.size(), 900'000U);
    const qint64 held = megabytesFor([&] {
        const auto photo = ready(small);
        ASSERT_FALSE(photo);
        EXPECT_EQ(photo.fault().kind, FaultKind::BadInput);
    });
    if (memoryIsOurs) {
        EXPECT_LT(held, 20);
    }
}

TEST(PhotoImport, WhatIsCutShortIsNeverTaken) // F34
{
    for (const char* format : {"JPEG", "PNG", "BMP"}) {
        const std::string whole = bytesOf(marked({120, 80}), format);
        ASSERT_TRUE(ready(whole)) << format;
        for (std::size_t length = 0; length < whole.size() - 12; length += 7) { // a PNG's last chunk is empty
            EXPECT_FALSE(ready(whole.substr(0, length))) << format << " " << length;
        }
    }
}

TEST(PhotoImport, OfAMovingPictureTheFirstIsTaken) // F34
{
    // GIF89a of two frames of one pixel, written by hand: the first is white, the second black.
    const std::string gif("GIF89a\x01\x00\x01\x00\x80\x00\x00\xFF\xFF\xFF\x00\x00\x00"
                          "\x2C\x00\x00\x00\x00\x01\x00\x01\x00\x00\x02\x02\x44\x01\x00"
                          "\x2C\x00\x00\x00\x00\x01\x00\x01\x00\x00\x02\x02\x4C\x01\x00;",
                          50);
    const auto photo = ready(gif);
    ASSERT_TRUE(photo);
    EXPECT_GT(qGray(imageOf(photo.value().working).pixel(0, 0)), 200);
}

TEST(PhotoImport, ADrawingWithAScriptIsNotOpened) // F34
{
    const auto photo = ready("<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink'>"
                             "<image xlink:href='file:///etc/hostname'/><script>alert(1)</script></svg>");
    ASSERT_FALSE(photo);
    EXPECT_EQ(photo.fault().kind, FaultKind::Unavailable);
    EXPECT_TRUE(photoFaultWords(photo.fault(), QStringLiteral("pot.svg")).contains(QLatin1String("JPEG")));
}

TEST(PhotoImport, APictureIsPastedAsItIs)
{
    const auto photo = readyPhoto(marked({640, 480}, QImage::Format_ARGB32));
    ASSERT_TRUE(photo);
    EXPECT_EQ(photo.value().size, QSize(640, 480));
    EXPECT_FALSE(readyPhoto(QImage()));
}

TEST(PhotoImport, EveryFaultSaysWhatToDo)
{
    QStringList said;
    for (const Fault& fault : {Fault{FaultKind::NotFound, "file"}, Fault{FaultKind::Foreign, {}},
                               Fault{FaultKind::Damaged, {}}, Fault{FaultKind::BadInput, {}},
                               Fault{FaultKind::Unavailable, "file"}, Fault{FaultKind::Unavailable, "heic"}}) {
        const QString words = photoFaultWords(fault, QStringLiteral("IMG_1.jpg"));
        EXPECT_TRUE(words.contains(QLatin1String("IMG_1.jpg")));
        EXPECT_GE(words.count(QLatin1Char('.')) + words.count(QLatin1Char('?')), 2) << words.toStdString();
        EXPECT_FALSE(said.contains(words));
        said += words;
    }
}

} // namespace
