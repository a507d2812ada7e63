#pragma once

#include "core/bench/event.h"
#include "core/store/sqlite.h"

#include <optional>
#include <string>
#include <string_view>

namespace mend::store {

/// SHA-256 (FIPS 180-4) of bytes: 32 bytes.
Bytes sha256(std::string_view bytes);
std::string toHex(std::string_view bytes);
std::optional<Bytes> fromHex(std::string_view text);

/// Writes fields one after the other so that no two different rows read the same: each text
/// stands behind its length, a missing value has a sign of its own.
class Canon {
public:
    explicit Canon(std::string_view kind) { add(kind); }
    Canon& add(std::string_view text);
    Canon& add(std::int64_t number) { return add(std::string_view(std::to_string(number))); }
    Canon& add(const std::optional<std::int64_t>& number);
    const std::string& text() const { return m_text; }
    /// The seal of a row that may change: the first 16 bytes of its hash.
    Bytes seal() const { return sha256(m_text).substr(0, 16); }

private:
    std::string m_text;
};

/// Every field of an event but its note, which stays outside the chain so that forgetting
/// a person does not break it.
std::string canonical(const bench::Event& event);

/// The link of an event: SHA-256 over the link before and the event.
Bytes linkOf(std::string_view linkBefore, const bench::Event& event);

/// What the first event is chained to: another for each file, so that no row of one file
/// passes for a row of another.
Bytes firstLink(std::string_view fileId);

} // namespace mend::store
