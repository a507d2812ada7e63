#include "core/exchange/placedjson.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace mend::exchange {
namespace {

constexpr int numberTooLarge = 406;                 // the parser's own number for what fits no double
constexpr double largestExact = 9007199254740992.0; // 2^53

/// Follows the parser through the text token by token. The parser calls back once for each
/// token in order, and between two tokens stand only blanks, commas and colons.
class TokenTrail {
public:
    explicit TokenTrail(std::string_view text) : m_text(text)
    {
        if (text.starts_with("\xef\xbb\xbf")) {
            m_end = m_counted = 3; // no character of the text
        }
    }

    /// Steps over the next token and tells where it begins.
    TextPlace next()
    {
        while (m_end < m_text.size() && std::string_view(" \t\r\n,:").find(m_text[m_end]) != std::string_view::npos) {
            ++m_end;
        }
        const TextPlace place = placeOf(m_end);
        m_end = endOfToken(m_end);
        return place;
    }

    /// Line and column of a byte; positions only ever grow, so the text is counted once.
    TextPlace placeOf(std::size_t byte)
    {
        for (; m_counted < std::min(byte, m_text.size()); ++m_counted) {
            const auto c = static_cast<unsigned char>(m_text[m_counted]);
            if (c == '\n') {
                ++m_place.line;
                m_place.column = 1;
            } else if ((c & 0xC0U) != 0x80U) {
                ++m_place.column;
            }
        }
        return m_place;
    }

private:
    std::size_t endOfToken(std::size_t from) const
    {
        if (from >= m_text.size()) {
            return from;
        }
        if (m_text[from] == '"') {
            std::size_t at = from + 1;
            while (at < m_text.size() && m_text[at] != '"') {
                at += m_text[at] == '\\' ? 2 : 1;
            }
            return std::min(at + 1, m_text.size());
        }
        if (std::string_view("{}[]").find(m_text[from]) != std::string_view::npos) {
            return from + 1;
        }
        return std::min(m_text.find_first_of(" \t\r\n,:{}[]\"", from), m_text.size());
    }

    std::string_view m_text;
    std::size_t m_end = 0;
    std::size_t m_counted = 0;
    TextPlace m_place;
};

/// Builds the tree from the parser's calls; a call that returns false ends the reading.
class TreeBuilder : public nlohmann::json_sax<nlohmann::json> {
public:
    explicit TreeBuilder(std::string_view text) : m_trail(text) {}

    bool null() override { return add(node(JsonNode::Kind::Null)); }
    bool boolean(bool value) override
    {
        JsonNode made = node(JsonNode::Kind::Flag);
        made.flag = value;
        return add(std::move(made));
    }
    bool number_integer(number_integer_t value) override { return addNumber(static_cast<double>(value), true); }
    bool number_unsigned(number_unsigned_t value) override { return addNumber(static_cast<double>(value), true); }
    bool number_float(number_float_t value, const string_t&) override { return addNumber(value, false); }
    bool string(string_t& value) override
    {
        JsonNode made = node(JsonNode::Kind::Text);
        made.text = std::move(value);
        return add(std::move(made));
    }
    bool binary(binary_t&) override { return false; }

    bool start_object(std::size_t) override { return open(JsonNode::Kind::Object); }
    bool end_object() override { return close(); }
    bool start_array(std::size_t) override { return open(JsonNode::Kind::List); }
    bool end_array() override { return close(); }

    bool key(string_t& name) override
    {
        const TextPlace place = m_trail.next();
        JsonNode& object = m_open.back();
        const bool twice = object.member(name) != nullptr;
        object.members.push_back({name, place, {}});
        if (twice) {
            m_faults.push_back({place, path(), "\"" + name + "\" is given twice"});
        }
        return true;
    }

    bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception& error) override
    {
        if (error.id == numberTooLarge) {
            m_faults.push_back({m_trail.next(), path(Telling::Pending), "this number is too large"});
        } else {
            m_faults.push_back({m_trail.placeOf(position > 0 ? position - 1 : 0), path(Telling::Pending),
                                "this is not JSON: " + reason(error.what())});
        }
        return false;
    }

    PlacedJson take()
    {
        PlacedJson result;
        if (m_faults.empty() && m_root) {
            result.root = std::move(m_root);
        }
        result.faults = std::move(m_faults);
        return result;
    }

private:
    JsonNode node(JsonNode::Kind kind)
    {
        JsonNode made;
        made.kind = kind;
        made.place = m_trail.next();
        return made;
    }

    bool addNumber(double value, bool whole)
    {
        JsonNode made = node(JsonNode::Kind::Number);
        made.whole = whole;
        made.number = value;
        if (!(std::abs(value) < largestExact)) {
            const TextPlace place = made.place;
            add(std::move(made));
            m_faults.push_back({place, path(), "this number is too large"});
            return true;
        }
        return add(std::move(made));
    }

    bool open(JsonNode::Kind kind)
    {
        JsonNode made = node(kind);
        if (m_open.size() >= PlacedJson::deepest) {
            m_faults.push_back({made.place, path(Telling::Pending), "this is nested too deeply"});
            return false;
        }
        m_open.push_back(std::move(made));
        return true;
    }

    bool close()
    {
        m_trail.next();
        JsonNode made = std::move(m_open.back());
        m_open.pop_back();
        return add(std::move(made));
    }

    bool add(JsonNode made)
    {
        if (m_open.empty()) {
            m_root = std::move(made);
        } else if (m_open.back().kind == JsonNode::Kind::List) {
            m_open.back().items.push_back(std::move(made));
        } else {
            m_open.back().members.back().value = std::move(made);
        }
        return true;
    }

    /// The pointer of the value that was read last, or of the one that is about to be.
    enum class Telling { Read, Pending };
    std::string path(Telling telling = Telling::Read) const
    {
        std::string steps;
        for (const JsonNode& level : m_open) {
            const bool inner = &level != &m_open.back();
            if (level.kind == JsonNode::Kind::Object) {
                steps += level.members.empty() ? "" : "/" + pointerStep(level.members.back().key);
            } else if (inner || telling == Telling::Pending) {
                steps += "/" + std::to_string(level.items.size());
            } else if (!level.items.empty()) {
                steps += "/" + std::to_string(level.items.size() - 1);
            }
        }
        return steps;
    }

    /// The parser's own words without its name, its error number and its byte count.
    static std::string reason(std::string_view what)
    {
        const std::size_t colon = what.find(": ");
        std::string_view tail = colon == std::string_view::npos ? what : what.substr(colon + 2);
        if (const std::size_t dash = tail.find(" - "); dash != std::string_view::npos) {
            tail = tail.substr(dash + 3);
        }
        return std::string(tail);
    }

    TokenTrail m_trail;
    std::vector<JsonNode> m_open;
    std::optional<JsonNode> m_root;
    std::vector<JsonFault> m_faults;
};

} // namespace

const JsonNode* JsonNode::member(std::string_view key) const
{
    const auto found = std::find_if(members.begin(), members.end(), [&](const JsonMember& m) { return m.key == key; });
    return found == members.end() ? nullptr : &found->value;
}

PlacedJson readPlacedJson(std::string_view text)
{
    PlacedJson refused;
    if (text.size() > PlacedJson::longest) {
        refused.faults.push_back({{1, 1}, "", "this file is larger than 4 MB"});
        return refused;
    }
    // The parser takes a NUL for the end and would not look at what follows it.
    if (const std::size_t nul = text.find('\0'); nul != std::string_view::npos) {
        refused.faults.push_back({TokenTrail(text).placeOf(nul), "", "this is not JSON: a NUL stands in it"});
        return refused;
    }
    TreeBuilder builder(text);
    nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
    return builder.take();
}

const JsonNode& nearestNode(const JsonNode& root, std::string_view pointer)
{
    const JsonNode* at = &root;
    while (pointer.starts_with('/')) {
        pointer.remove_prefix(1);
        const std::string_view step = pointer.substr(0, pointer.find('/'));
        pointer.remove_prefix(step.size());
        const JsonNode* next = nullptr;
        if (at->kind == JsonNode::Kind::List) {
            std::size_t index = at->items.size();
            std::from_chars(step.data(), step.data() + step.size(), index);
            next = index < at->items.size() ? &at->items[index] : nullptr;
        } else {
            for (const JsonMember& member : at->members) {
                next = pointerStep(member.key) == step ? &member.value : next;
            }
        }
        if (next == nullptr) {
            break;
        }
        at = next;
    }
    return *at;
}

std::string pointerStep(std::string_view key)
{
    std::string step;
    for (const char c : key) {
        if (c == '~') {
            step += "~0";
        } else if (c == '/') {
            step += "~1";
        } else {
            step += c;
        }
    }
    return step;
}

} // namespace mend::exchange
