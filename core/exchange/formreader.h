#pragma once

#include "core/exchange/placedjson.h"
#include "core/rules/fields.h"
#include "core/rules/validation.h"

#include <cmath>
#include <set>
#include <span>
#include <string>
#include <vector>

namespace mend::exchange {

/// What was wrong in one file, gathered while reading goes on.
class FaultList {
public:
    explicit FaultList(std::string file) : m_file(std::move(file)) {}
    void add(TextPlace place, std::string path, std::string text)
    {
        m_faults.push_back({m_file, std::move(path), place.line, place.column, std::move(text)});
    }
    const std::string& file() const { return m_file; }
    std::vector<rules::RuleFault> take() { return std::move(m_faults); }

private:
    std::string m_file;
    std::vector<rules::RuleFault> m_faults;
};

/// Fills a rule value from a JSON object along the names of core/rules/fields.h. It never
/// stops at a fault: what is missing, of the wrong kind or unknown is listed with its place
/// and the value keeps its default.
class FormReader {
public:
    static constexpr bool reading = true;

    FormReader(const JsonNode& node, std::string path, FaultList& faults);

    /// Reads `value` from `node` and refuses keys that are no part of it.
    template <class T> static void read(const JsonNode& node, const std::string& path, FaultList& faults, T& value)
    {
        FormReader reader(node, path, faults);
        rules::fields(reader, value);
        reader.refuseUnknown();
    }

    void text(std::string_view name, std::string& value, rules::Need need);
    void texts(std::string_view name, std::vector<std::string>& values);
    void flag(std::string_view name, bool& value);
    void number(std::string_view name, int& value);

    template <class E, std::size_t N>
    void choice(std::string_view name, E& value, const std::array<rules::Word<E>, N>& words, rules::Need need)
    {
        const JsonNode* found = take(name, JsonNode::Kind::Text, need);
        if (found == nullptr) {
            return;
        }
        std::string known;
        for (const rules::Word<E>& word : words) {
            if (word.text == found->text) {
                value = word.value;
                return;
            }
            known += (known.empty() ? "" : ", ") + std::string(word.text);
        }
        fault(*found, name, "\"" + found->text + "\" is none of: " + known);
    }

    template <class E, std::size_t N>
    void choice(std::string_view name, std::optional<E>& value, const std::array<rules::Word<E>, N>& words)
    {
        if (m_node.member(name) != nullptr) {
            choice(name, value.emplace(), words, rules::Need::Must);
        }
        m_known.emplace(name);
    }

    template <class T> void part(std::string_view name, T& value, rules::Need need)
    {
        if (const JsonNode* found = take(name, JsonNode::Kind::Object, need)) {
            read(*found, at(name), m_faults, value);
        }
    }
    template <class T> void part(std::string_view name, std::optional<T>& value)
    {
        if (const JsonNode* found = take(name, JsonNode::Kind::Object, rules::Need::May)) {
            read(*found, at(name), m_faults, value.emplace());
        }
    }
    template <class T> void list(std::string_view name, std::vector<T>& values, rules::Need need)
    {
        const JsonNode* found = take(name, JsonNode::Kind::List, need);
        if (found == nullptr) {
            return;
        }
        for (std::size_t i = 0; i < found->items.size(); ++i) {
            read(found->items[i], at(name) + "/" + std::to_string(i), m_faults, values.emplace_back());
        }
    }

    template <class T> void amount(T& value)
    {
        if (const auto unit = takeUnit(rules::Units<T>::words)) {
            readAmount(unit->name, unit->factor, value);
        }
    }
    template <class T> void amount(T& value, T& least, T& most)
    {
        const auto unit = takeUnit(rules::Units<T>::words);
        if (!unit) {
            m_known.insert({"least", "most"});
            return;
        }
        readAmount(unit->name, unit->factor, value);
        readAmount("least", unit->factor, least);
        readAmount("most", unit->factor, most);
    }

    /// Lists every key that nobody asked for.
    void refuseUnknown();

private:
    template <class T> void readAmount(std::string_view name, std::int64_t factor, T& value)
    {
        if (const JsonNode* found = take(name, JsonNode::Kind::Number, rules::Need::Must)) {
            if (const auto count = wholeCount(*found, name, factor)) {
                value = rules::Units<T>::from(*count);
            }
        }
    }
    std::optional<std::int64_t> wholeCount(const JsonNode& node, std::string_view name, std::int64_t factor);
    std::optional<rules::UnitWord> takeUnit(std::span<const rules::UnitWord> words);
    const JsonNode* take(std::string_view name, JsonNode::Kind kind, rules::Need need);
    bool isPlainText(const JsonNode& node, const std::string& path);
    std::string at(std::string_view name) const { return m_path + "/" + pointerStep(name); }
    void fault(const JsonNode& node, std::string_view name, std::string text)
    {
        m_faults.add(node.place, at(name), std::move(text));
    }

    const JsonNode& m_node;
    std::string m_path;
    FaultList& m_faults;
    std::set<std::string, std::less<>> m_known;
};

} // namespace mend::exchange
