#pragma once

#include "core/rules/fields.h"

#include <string>
#include <utility>

namespace mend::rules {

/// Goes along the names of fields.h and shows every figure with its path; may change them.
template <class Visit> class FigureWalk {
public:
    static constexpr bool reading = false;

    FigureWalk(std::string path, Visit& visit) : m_path(std::move(path)), m_visit(visit) {}

    template <class T> void text(std::string_view, T&, Need) {}
    template <class T> void texts(std::string_view, T&) {}
    template <class T> void flag(std::string_view, T&) {}
    template <class T> void number(std::string_view, T&) {}
    template <class E, class N> void choice(std::string_view, E&, const N&) {}
    template <class E, class N> void choice(std::string_view, E&, const N&, Need) {}
    template <class... A> void amount(A&...) {}

    template <class T> void part(std::string_view name, T& value, Need) { into(at(name), value); }
    template <class O> void part(std::string_view name, O& value)
    {
        if (value) {
            into(at(name), *value);
        }
    }
    template <class L> void list(std::string_view name, L& values, Need)
    {
        for (std::size_t i = 0; i < values.size(); ++i) {
            into(at(name) + "/" + std::to_string(i), values[i]);
        }
    }

private:
    template <class T> void into(std::string path, T& value)
    {
        if constexpr (AnyFigure<T>) {
            m_visit(path, value);
        } else {
            FigureWalk walk(std::move(path), m_visit);
            fields(walk, value);
        }
    }
    std::string at(std::string_view name) const { return m_path + "/" + std::string(name); }

    std::string m_path;
    Visit& m_visit;
};

/// Shows `visit` every figure of a rule with its path.
template <class P, class Visit> void walkFigures(P& rule, Visit visit)
{
    FigureWalk<Visit> walk({}, visit);
    fields(walk, rule);
}

} // namespace mend::rules
