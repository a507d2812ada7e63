#include "app/sound/wav.h"

#include <algorithm>
#include <cstring>

namespace mend::sound {
namespace {

std::uint32_t littleEndian(std::span<const std::uint8_t> bytes)
{
    std::uint32_t value = 0;
    for (std::size_t i = bytes.size(); i > 0; --i) {
        value = value << 8U | bytes[i - 1];
    }
    return value;
}

bool isTag(std::span<const std::uint8_t> bytes, const char* tag) { return std::memcmp(bytes.data(), tag, 4) == 0; }

} // namespace

Result<Pcm> pcmFromWav(std::span<const std::uint8_t> bytes)
{
    const Fault refused{FaultKind::BadInput, "no 16 bit one-channel WAVE"};
    if (bytes.size() < 12 || !isTag(bytes, "RIFF") || !isTag(bytes.subspan(8), "WAVE")) {
        return refused;
    }
    Pcm pcm;
    std::size_t at = 12;
    while (bytes.size() - at >= 8) {
        const auto head = bytes.subspan(at, 8);
        const auto rest = bytes.subspan(at + 8);
        const std::size_t size = std::min<std::size_t>(littleEndian(head.subspan(4, 4)), rest.size());
        if (isTag(head, "fmt ") && size >= 16) {
            const bool plain = littleEndian(rest.subspan(0, 2)) == 1 && littleEndian(rest.subspan(2, 2)) == 1 &&
                               littleEndian(rest.subspan(14, 2)) == 16;
            const std::uint32_t rate = littleEndian(rest.subspan(4, 4));
            if (!plain || rate < 8000 || rate > 192000) {
                return refused;
            }
            pcm.sampleRate = static_cast<int>(rate);
        } else if (isTag(head, "data") && pcm.sampleRate != 0) {
            for (std::size_t i = 0; i + 1 < size; i += 2) {
                pcm.samples.push_back(static_cast<std::int16_t>(littleEndian(rest.subspan(i, 2))));
            }
            return pcm;
        }
        at += 8 + std::min(size + size % 2, rest.size());
    }
    return refused;
}

} // namespace mend::sound
