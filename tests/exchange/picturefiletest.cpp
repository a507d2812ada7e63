#include "core/exchange/picturefile.h"

#include "tests/support/exifphoto.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::exchange;
using namespace std::chrono_literals;
using mend::test::CameraMarks;
using mend::test::withMarks;

namespace {

std::string segment(int marker, const std::string& inner)
{
    const auto length = inner.size() + 2;
    return std::string("\xFF") + static_cast<char>(marker) + static_cast<char>(length >> 8) +
           static_cast<char>(length & 255) + inner;
}

/// A frame header of ITU-T T.81, B.2.2: three parts, the colour ones halved each way.
std::string frame(int marker, int width, int height)
{
    std::string inner(1, '\x08');
    inner += static_cast<char>(height >> 8);
    inner += static_cast<char>(height & 255);
    inner += static_cast<char>(width >> 8);
    inner += static_cast<char>(width & 255);
    inner += std::string("\x03\x01\x22\x00\x02\x11\x01\x03\x11\x01", 10);
    return segment(marker, inner);
}

const std::string scan = segment(0xDA, std::string("\x03\x01\x00\x02\x11\x03\x11\x00\x3F\x00", 10));
const std::string coded("\x12\x34\xFF\x00\x56\xFF\xD0\x78\x9A", 9);

std::string jpeg(int frameMarker = 0xC0, int width = 640, int height = 480)
{
    return "\xFF\xD8" + frame(frameMarker, width, height) + scan + coded + "\xFF\xD9";
}

TEST(PictureFile, AJpegIsFollowedToItsEnd)
{
    const auto found = lookAtPicture(jpeg());
    ASSERT_TRUE(found);
    EXPECT_EQ(found.value().kind, PictureKind::Jpeg);
    EXPECT_EQ(found.value().width, 640);
    EXPECT_EQ(found.value().height, 480);
    EXPECT_FALSE(found.value().taken);
}

TEST(PictureFile, WhatFollowsTheEndIsLeftAlone)
{
    EXPECT_TRUE(lookAtPicture(jpeg() + "a second picture, or a film of three seconds"));
}

TEST(PictureFile, AJpegThatEndsTooEarlyIsDamagedWhereverItEnds)
{
    const std::string whole = withMarks(jpeg(), {});
    for (std::size_t length = 3; length < whole.size(); ++length) {
        const auto found = lookAtPicture(std::string_view(whole).substr(0, length));
        ASSERT_FALSE(found) << length;
        EXPECT_EQ(found.fault().kind, FaultKind::Damaged) << length;
    }
}

TEST(PictureFile, AHalfWrittenOneThatIsFilledUpIsDamaged)
{
    std::string half = jpeg();
    const auto from = half.size() - 6;
    half.replace(from, 6, std::string(6000, '\0'));
    ASSERT_FALSE(lookAtPicture(half));
    EXPECT_EQ(lookAtPicture(half).fault().kind, FaultKind::Damaged);
}

TEST(PictureFile, OnlyAProgressiveOneIsHeldWhole)
{
    EXPECT_EQ(lookAtPicture(jpeg(0xC0, 4000, 3000)).value().heldAtOnce, 0);
    // Two bytes a coefficient: the light whole, two colours at a quarter each.
    EXPECT_EQ(lookAtPicture(jpeg(0xC2, 4000, 3000)).value().heldAtOnce, 4000LL * 3000 * 2 * 3 / 2);
}

TEST(PictureFile, OneWithScansWithoutEndIsRefused)
{
    std::string many = "\xFF\xD8" + frame(0xC2, 640, 480);
    for (int i = 0; i < 2000; ++i) {
        many += scan + coded;
    }
    ASSERT_FALSE(lookAtPicture(many + "\xFF\xD9"));
}

TEST(PictureFile, TheCamerasOwnClockIsRead)
{
    const auto found = lookAtPicture(withMarks(jpeg(), {}));
    ASSERT_TRUE(found && found.value().taken);
    EXPECT_EQ(found.value().taken->wall, std::chrono::local_days(std::chrono::year(2026) / 11 / 28) + 14h + 3min + 9s);
    EXPECT_FALSE(found.value().taken->aheadOfUtc);
    const auto told = lookAtPicture(withMarks(jpeg(), CameraMarks{1, "2026:11:28 14:03:09", "-03:30"}));
    EXPECT_EQ(told.value().taken->aheadOfUtc, -210min);
}

TEST(PictureFile, ATimeThatCannotBeIsNone)
{
    for (const char* when : {"0000:00:00 00:00:00", "2027:02:29 10:00:00", "2026:11:28 24:00:00", "yesterday at noon..",
                             "9999:01:01 00:00:00"}) {
        const auto found = lookAtPicture(withMarks(jpeg(), CameraMarks{1, when, {}}));
        ASSERT_TRUE(found) << when;
        EXPECT_FALSE(found.value().taken) << when;
    }
}

TEST(PictureFile, TheContentSaysWhatItIs)
{
    EXPECT_EQ(lookAtPicture(std::string("\x89PNG\r\n\x1A\n....", 12)).value().kind, PictureKind::Png);
    EXPECT_EQ(lookAtPicture("GIF89a.....;").value().kind, PictureKind::Gif);
    EXPECT_EQ(lookAtPicture(std::string("RIFF\x08\0\0\0WEBPVP8 ", 16)).value().kind, PictureKind::WebP);
    for (const char* none : {"", "B", "just words", "%PDF-1.4 and so on", "GIF", "RIFF....WAVEfmt "}) {
        ASSERT_FALSE(lookAtPicture(none)) << none;
        EXPECT_EQ(lookAtPicture(none).fault().kind, FaultKind::Foreign) << none;
    }
}

TEST(PictureFile, OneThatIsShorterThanItSaysIsDamaged)
{
    const std::string bmp = std::string("BM\x40\0\0\0", 6) + std::string(58, '\0'); // 64 bytes, as it says
    EXPECT_TRUE(lookAtPicture(bmp));
    for (const std::string& cut :
         {bmp.substr(0, 63), std::string("RIFF\x09\0\0\0WEBPVP8 ", 16), std::string("GIF89a...")}) {
        ASSERT_FALSE(lookAtPicture(cut));
        EXPECT_EQ(lookAtPicture(cut).fault().kind, FaultKind::Damaged);
    }
}

TEST(PictureFile, KindsThatAreNotReadAreNamed)
{
    const auto heic = lookAtPicture(std::string("\0\0\0\x18"
                                                "ftypheic\0\0\0\0",
                                                16));
    ASSERT_FALSE(heic);
    EXPECT_EQ(heic.fault(), (Fault{FaultKind::Unavailable, "heic"}));
    const auto svg =
        lookAtPicture("<?xml version='1.0'?><svg xmlns='http://www.w3.org/2000/svg'><script>x</script></svg>");
    ASSERT_FALSE(svg);
    EXPECT_EQ(svg.fault(), (Fault{FaultKind::Unavailable, "svg"}));
}

} // namespace
