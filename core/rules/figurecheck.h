#pragma once

#include "core/rules/fields.h"
#include "core/rules/validation.h"

#include <string>
#include <vector>

namespace mend::rules {

/// Gathers what is wrong, with its path.
class Faults {
public:
    void add(std::string path, std::string text) { m_list.push_back({"", std::move(path), 0, 0, std::move(text)}); }
    std::vector<RuleFault> take() { return std::move(m_list); }

private:
    std::vector<RuleFault> m_list;
};

/// Looks at every figure and every needed word of a rule, along the names of fields.h:
/// a value outside its own range, a range outside what the unit can sensibly be, a number
/// without its source, a word that is missing.
class FigureCheck {
public:
    static constexpr bool reading = false;

    FigureCheck(std::string path, Faults& faults) : m_path(std::move(path)), m_faults(faults) {}

    template <class T> static void look(const T& value, const std::string& path, Faults& faults)
    {
        FigureCheck check(path, faults);
        fields(check, value);
    }

    void text(std::string_view name, const std::string& value, Need need)
    {
        if (value.empty() && need == Need::Must) {
            m_faults.add(at(name), "\"" + std::string(name) + "\" is empty");
        }
    }
    void texts(std::string_view name, const std::vector<std::string>& values)
    {
        for (std::size_t i = 0; i < values.size(); ++i) {
            if (values[i].empty()) {
                m_faults.add(at(name) + "/" + std::to_string(i), "this is empty");
            }
        }
    }
    void flag(std::string_view, bool) {}
    void number(std::string_view, int) {}
    template <class E, std::size_t N>
    void choice(std::string_view, const std::optional<E>&, const std::array<Word<E>, N>&)
    {
    }
    template <class E, std::size_t N> void choice(std::string_view, const E&, const std::array<Word<E>, N>&, Need) {}
    template <class T> void part(std::string_view name, const T& value, Need) { look(value, at(name), m_faults); }
    template <class T> void part(std::string_view name, const std::optional<T>& value)
    {
        if (value) {
            look(*value, at(name), m_faults);
        }
    }
    template <class T> void list(std::string_view name, const std::vector<T>& values, Need need)
    {
        if (values.empty() && need == Need::Must) {
            m_faults.add(at(name), "\"" + std::string(name) + "\" is empty");
        }
        for (std::size_t i = 0; i < values.size(); ++i) {
            look(values[i], at(name) + "/" + std::to_string(i), m_faults);
        }
    }

    template <class T> void amount(const T& value) { saneOrFault(value, m_path); }
    template <class T> void amount(const T& value, const T& least, const T& most)
    {
        if (most < least) {
            m_faults.add(at("most"), "the range is upside down: most is less than least");
        } else if (value < least || most < value) {
            m_faults.add(m_path, "this figure lies outside its own range");
        }
        saneOrFault(least, at("least"));
        saneOrFault(most, at("most"));
    }

private:
    void saneOrFault(Span value, const std::string& path);
    void saneOrFault(Temperature value, const std::string& path);
    void saneOrFault(Humidity value, const std::string& path);
    void saneOrFault(Length value, const std::string& path);
    void saneOrFault(ActivationEnergy value, const std::string& path);
    std::string at(std::string_view name) const { return m_path + "/" + std::string(name); }

    std::string m_path;
    Faults& m_faults;
};

} // namespace mend::rules
