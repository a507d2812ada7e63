#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mend::exchange {

/// Where in a text something stands: 1-based; the column counts characters, not bytes.
struct TextPlace {
    int line = 1;
    int column = 1;
    bool operator==(const TextPlace&) const = default;
};

struct JsonMember;

/// One value of a JSON text that remembers where it stood, so that a fault found much
/// later can still be pointed at.
struct JsonNode {
    enum class Kind { Null, Flag, Number, Text, List, Object };
    Kind kind = Kind::Null;
    TextPlace place;
    bool flag = false;
    double number = 0.0; ///< finite, magnitude at most 2^53
    bool whole = false;  ///< of a number: written without point and exponent
    std::string text;
    std::vector<JsonNode> items;     ///< of a list
    std::vector<JsonMember> members; ///< of an object, in the order of the text, keys unique

    const JsonNode* member(std::string_view key) const;
};

struct JsonMember {
    std::string key;
    TextPlace place;
    JsonNode value;
};

/// Why a JSON text was not taken, with its place and JSON pointer (RFC 6901).
struct JsonFault {
    TextPlace place;
    std::string path;
    std::string text;
};

/// A JSON text (RFC 8259) read whole, or everything that stood in the way. Refused, each
/// with its place: bad syntax, the same key twice in one object, more than `deepest` levels,
/// more than `longest` bytes, numbers that no double holds exactly (beyond 2^53 or 1e400),
/// lone surrogates, bytes that are not UTF-8, a NUL. `root` is empty if anything was refused.
struct PlacedJson {
    static constexpr std::size_t deepest = 32;
    static constexpr std::size_t longest = std::size_t{4} * 1024 * 1024;
    std::optional<JsonNode> root;
    std::vector<JsonFault> faults;
};
PlacedJson readPlacedJson(std::string_view text);

/// The node a JSON pointer names, or the deepest one on the way to it that exists.
const JsonNode& nearestNode(const JsonNode& root, std::string_view pointer);

/// One step of a JSON pointer: "~" and "/" escaped.
std::string pointerStep(std::string_view key);

} // namespace mend::exchange
