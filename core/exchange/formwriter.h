#pragma once

#include "core/rules/fields.h"

#include <nlohmann/json.hpp>

namespace mend::exchange {

/// Lays a rule value out as JSON along the names of core/rules/fields.h; what has its
/// default (nothing, false, empty) is left out, so that one value has one text only.
class FormWriter {
public:
    static constexpr bool reading = false;

    template <class T> static nlohmann::json write(const T& value)
    {
        FormWriter writer;
        rules::fields(writer, value);
        return std::move(writer.m_object);
    }

    void text(std::string_view name, const std::string& value, rules::Need)
    {
        if (!value.empty()) {
            put(name) = value;
        }
    }
    void texts(std::string_view name, const std::vector<std::string>& values)
    {
        if (!values.empty()) {
            put(name) = values;
        }
    }
    void flag(std::string_view name, bool value)
    {
        if (value) {
            put(name) = true;
        }
    }
    void number(std::string_view name, int value) { put(name) = value; }

    template <class E, std::size_t N>
    void choice(std::string_view name, const E& value, const std::array<rules::Word<E>, N>& words, rules::Need need)
    {
        for (const rules::Word<E>& word : words) {
            // A choice that may be left out has its first word or the type's own default;
            // writing it always keeps both readings the same.
            if (word.value == value) {
                put(name) = std::string(word.text);
            }
        }
        static_cast<void>(need);
    }

    template <class E, std::size_t N>
    void choice(std::string_view name, const std::optional<E>& value, const std::array<rules::Word<E>, N>& words)
    {
        if (value) {
            choice(name, *value, words, rules::Need::Must);
        }
    }

    template <class T> void part(std::string_view name, const T& value, rules::Need) { put(name) = write(value); }
    template <class T> void part(std::string_view name, const std::optional<T>& value)
    {
        if (value) {
            put(name) = write(*value);
        }
    }
    template <class T> void list(std::string_view name, const std::vector<T>& values, rules::Need need)
    {
        if (values.empty() && need == rules::Need::May) {
            return;
        }
        nlohmann::json& items = put(name) = nlohmann::json::array();
        for (const T& value : values) {
            items.push_back(write(value));
        }
    }

    template <class T> void amount(const T& value) { put(unit<T>().name) = inUnit(value); }
    template <class T> void amount(const T& value, const T& least, const T& most)
    {
        amount(value);
        put("least") = inUnit(least);
        put("most") = inUnit(most);
    }

private:
    template <class T> static constexpr const rules::UnitWord& unit() { return rules::Units<T>::words.front(); }
    template <class T> static nlohmann::json inUnit(const T& value)
    {
        const std::int64_t count = rules::Units<T>::count(value);
        const std::int64_t factor = unit<T>().factor;
        if (count % factor == 0) {
            return count / factor;
        }
        return static_cast<double>(count) / static_cast<double>(factor);
    }
    nlohmann::json& put(std::string_view name) { return m_object[std::string(name)]; }

    nlohmann::json m_object = nlohmann::json::object();
};

} // namespace mend::exchange
