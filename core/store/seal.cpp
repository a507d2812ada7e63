#include "core/store/seal.h"

#include <QByteArrayView>
#include <QCryptographicHash>

namespace mend::store {

Bytes sha256(std::string_view bytes)
{
    const QByteArrayView view(bytes.data(), static_cast<qsizetype>(bytes.size()));
    const QByteArray hash = QCryptographicHash::hash(view, QCryptographicHash::Sha256);
    return {hash.constData(), static_cast<std::size_t>(hash.size())};
}

std::string toHex(std::string_view bytes)
{
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    text.reserve(bytes.size() * 2);
    for (const char byte : bytes) {
        const auto value = static_cast<unsigned char>(byte);
        text += digits[value >> 4U];
        text += digits[value & 15U];
    }
    return text;
}

std::optional<Bytes> fromHex(std::string_view text)
{
    constexpr std::string_view digits = "0123456789abcdef";
    if (text.size() % 2 != 0) {
        return std::nullopt;
    }
    Bytes bytes;
    for (std::size_t i = 0; i < text.size(); i += 2) {
        const auto high = digits.find(text[i]);
        const auto low = digits.find(text[i + 1]);
        if (high == std::string_view::npos || low == std::string_view::npos) {
            return std::nullopt;
        }
        bytes += static_cast<char>(high * 16 + low);
    }
    return bytes;
}

Canon& Canon::add(std::string_view text)
{
    m_text += std::to_string(text.size());
    m_text += ':';
    m_text += text;
    m_text += ',';
    return *this;
}

Canon& Canon::add(const std::optional<std::int64_t>& number)
{
    if (number) {
        return add(*number);
    }
    m_text += '~';
    return *this;
}

std::string canonical(const bench::Event& event)
{
    const auto instant = [](const std::optional<Instant>& at) { return at ? toRfc3339(*at) : std::string(); };
    const auto count = [](const auto& quantity) {
        return quantity ? std::optional<std::int64_t>(quantity->count()) : std::nullopt;
    };
    Canon canon("event1");
    canon.add(event.id.value()).add(static_cast<std::int64_t>(event.what)).add(event.piece.value());
    canon.add(event.stage.stage).add(std::int64_t{event.stage.repetition});
    canon.add(event.person.value()).add(event.place.value()).add(event.mix.value()).add(event.rules);
    canon.add(toRfc3339(event.happened)).add(toRfc3339(event.recorded));
    canon.add(event.boot.bootId).add(std::int64_t{event.boot.sinceBoot.count()}).add(event.target.value());
    canon.add(event.temperature ? std::optional(event.temperature->centidegrees()) : std::nullopt);
    canon.add(count(event.humidity)).add(event.amount);
    canon.add(instant(event.from)).add(instant(event.until)).add(event.word);
    return canon.text();
}

Bytes linkOf(std::string_view linkBefore, const bench::Event& event)
{
    return sha256(std::string(linkBefore) + canonical(event));
}

Bytes firstLink(std::string_view fileId) { return sha256("mendbench file " + std::string(fileId)); }

} // namespace mend::store
