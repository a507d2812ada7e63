#include "core/exchange/formreader.h"

#include <algorithm>

namespace mend::exchange {
namespace {

constexpr std::size_t longestText = 600;

std::string_view kindName(JsonNode::Kind kind)
{
    switch (kind) {
    case JsonNode::Kind::Null:
        return "nothing";
    case JsonNode::Kind::Flag:
        return "true or false";
    case JsonNode::Kind::Number:
        return "a number";
    case JsonNode::Kind::Text:
        return "a text";
    case JsonNode::Kind::List:
        return "a list";
    case JsonNode::Kind::Object:
        return "an object";
    }
    return "";
}

} // namespace

FormReader::FormReader(const JsonNode& node, std::string path, FaultList& faults)
    : m_node(node), m_path(std::move(path)), m_faults(faults)
{
    if (node.kind != JsonNode::Kind::Object) {
        m_faults.add(node.place, m_path, "an object belongs here, not " + std::string(kindName(node.kind)));
    }
}

void FormReader::text(std::string_view name, std::string& value, rules::Need need)
{
    const JsonNode* found = take(name, JsonNode::Kind::Text, need);
    if (found == nullptr || !isPlainText(*found, at(name))) {
        return;
    }
    if (found->text.empty()) {
        fault(*found, name, "\"" + std::string(name) + "\" is empty: say it or leave it out");
        return;
    }
    value = found->text;
}

void FormReader::texts(std::string_view name, std::vector<std::string>& values)
{
    const JsonNode* found = take(name, JsonNode::Kind::List, rules::Need::May);
    if (found == nullptr) {
        return;
    }
    for (std::size_t i = 0; i < found->items.size(); ++i) {
        const JsonNode& item = found->items[i];
        const std::string path = at(name) + "/" + std::to_string(i);
        if (item.kind != JsonNode::Kind::Text) {
            m_faults.add(item.place, path, "a text belongs here, not " + std::string(kindName(item.kind)));
        } else if (item.text.empty()) {
            m_faults.add(item.place, path, "this is empty: say it or leave it out");
        } else if (std::find(values.begin(), values.end(), item.text) != values.end()) {
            m_faults.add(item.place, path, "\"" + item.text + "\" is listed twice");
        } else if (isPlainText(item, path)) {
            values.push_back(item.text);
        }
    }
}

void FormReader::flag(std::string_view name, bool& value)
{
    if (const JsonNode* found = take(name, JsonNode::Kind::Flag, rules::Need::May)) {
        value = found->flag;
    }
}

void FormReader::number(std::string_view name, int& value)
{
    const JsonNode* found = take(name, JsonNode::Kind::Number, rules::Need::Must);
    if (found == nullptr) {
        return;
    }
    if (found->number != std::floor(found->number) || std::abs(found->number) > 1e9) {
        fault(*found, name, "a whole number below a thousand million belongs here");
        return;
    }
    value = static_cast<int>(found->number);
}

void FormReader::refuseUnknown()
{
    for (const JsonMember& member : m_node.members) {
        if (!m_known.contains(member.key)) {
            m_faults.add(member.place, at(member.key), "\"" + member.key + "\" is not known here");
        }
    }
}

std::optional<std::int64_t> FormReader::wholeCount(const JsonNode& node, std::string_view name, std::int64_t factor)
{
    const double scaled = node.number * static_cast<double>(factor);
    if (!(std::abs(scaled) < 1e15)) {
        fault(node, name, "this number is too large");
        return std::nullopt;
    }
    const double whole = std::round(scaled);
    if (std::abs(scaled - whole) > 1e-6 * std::max(1.0, std::abs(scaled) * 1e-6)) {
        fault(node, name, "this number is finer than can be kept");
        return std::nullopt;
    }
    return static_cast<std::int64_t>(whole);
}

std::optional<rules::UnitWord> FormReader::takeUnit(std::span<const rules::UnitWord> words)
{
    std::optional<rules::UnitWord> found;
    std::string known;
    for (const rules::UnitWord& word : words) {
        m_known.emplace(word.name);
        known += (known.empty() ? "" : ", ") + std::string(word.name);
        if (const JsonNode* node = m_node.member(word.name)) {
            if (found) {
                fault(*node, word.name, "one amount in two units: keep one of them");
            }
            found = word;
        }
    }
    if (!found && m_node.kind == JsonNode::Kind::Object) {
        m_faults.add(m_node.place, m_path, "an amount is missing; its unit is one of: " + known);
    }
    return found;
}

const JsonNode* FormReader::take(std::string_view name, JsonNode::Kind kind, rules::Need need)
{
    m_known.emplace(name);
    const JsonNode* found = m_node.member(name);
    if (found == nullptr) {
        if (need == rules::Need::Must && m_node.kind == JsonNode::Kind::Object) {
            m_faults.add(m_node.place, m_path, "\"" + std::string(name) + "\" is missing");
        }
        return nullptr;
    }
    if (found->kind != kind) {
        fault(*found, name, std::string(kindName(kind)) + " belongs here, not " + std::string(kindName(found->kind)));
        return nullptr;
    }
    return found;
}

bool FormReader::isPlainText(const JsonNode& node, const std::string& path)
{
    if (node.text.size() > longestText) {
        m_faults.add(node.place, path, "this text is longer than 600 bytes");
        return false;
    }
    if (std::any_of(node.text.begin(), node.text.end(), [](unsigned char c) { return c < 0x20 || c == 0x7f; })) {
        m_faults.add(node.place, path, "a control character stands in this text");
        return false;
    }
    return true;
}

} // namespace mend::exchange
