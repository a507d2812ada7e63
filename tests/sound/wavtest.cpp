#include "app/sound/wav.h"

#include <gtest/gtest.h>
#include <random>
#include <string>

using namespace mend;
using namespace mend::sound;

namespace {

using Bytes = std::vector<std::uint8_t>;

/// The canonical header of a RIFF WAVE file with one extra chunk of odd length before the data.
Bytes wave(std::uint32_t rate, std::uint32_t dataSize, const Bytes& data, std::uint8_t channels = 1)
{
    Bytes bytes;
    const auto text = [&](const std::string& tag) { bytes.insert(bytes.end(), tag.begin(), tag.end()); };
    const auto number = [&](std::uint32_t value, int size) {
        for (int i = 0; i < size; ++i) {
            bytes.push_back(static_cast<std::uint8_t>(value >> (8 * i)));
        }
    };
    text("RIFF");
    number(0x7FFFFFFF, 4);
    text("WAVEfmt ");
    number(16, 4);
    number(1, 2);
    number(channels, 2);
    number(rate, 4);
    number(rate * 2, 4);
    number(2, 2);
    number(16, 2);
    text("LIST");
    number(3, 4);
    text("abc");
    number(0, 1);
    text("data");
    number(dataSize, 4);
    bytes.insert(bytes.end(), data.begin(), data.end());
    return bytes;
}

} // namespace

TEST(Wav, ReadsSamplesOfAWholeFile)
{
    const auto pcm = pcmFromWav(wave(22050, 4, {0x01, 0x00, 0xFF, 0xFF, 0x55, 0x55}));
    ASSERT_TRUE(pcm.isOk());
    EXPECT_EQ(pcm.value().sampleRate, 22050);
    EXPECT_EQ(pcm.value().samples, (std::vector<std::int16_t>{1, -1}));
}

TEST(Wav, ReadsToTheEndWhereThePipeLeftTheLengthOpen)
{
    const auto pcm = pcmFromWav(wave(22050, 0x7FFFF000, {0x01, 0x00, 0x02, 0x00, 0x03}));
    ASSERT_TRUE(pcm.isOk());
    EXPECT_EQ(pcm.value().samples, (std::vector<std::int16_t>{1, 2}));
}

TEST(Wav, RefusesWhatItCannotPlay)
{
    EXPECT_FALSE(pcmFromWav({}).isOk());
    EXPECT_FALSE(pcmFromWav(wave(22050, 2, {1, 0}, 2)).isOk());
    EXPECT_FALSE(pcmFromWav(wave(100, 2, {1, 0})).isOk());
}

TEST(Wav, SurvivesEveryCutAndRandomNoise)
{
    const Bytes whole = wave(22050, 4, {1, 0, 2, 0});
    for (std::size_t i = 0; i < whole.size(); ++i) {
        static_cast<void>(pcmFromWav(std::span(whole).first(i)).isOk());
    }
    std::mt19937 random(20261125);
    for (int round = 0; round < 10000; ++round) {
        Bytes noisy = whole;
        for (int i = 0; i < 4; ++i) {
            noisy[random() % noisy.size()] = static_cast<std::uint8_t>(random());
        }
        static_cast<void>(pcmFromWav(noisy).isOk());
    }
}
