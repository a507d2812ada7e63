#include "core/rules/figurelist.h"

#include "core/rules/fields.h"

#include <algorithm>

namespace mend::rules {

namespace {

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

template <class P, class Visit> void walkFigures(P& procedure, Visit visit)
{
    FigureWalk<Visit> walk({}, visit);
    fields(walk, procedure);
}

template <class T> Outcome changeOne(Figure<T>& figure, const T& value, const Source& source)
{
    if (value < figure.least || figure.most < value) {
        return Fault{FaultKind::BadInput, "outside the range of this figure"};
    }
    figure.value = value;
    figure.source = source;
    return Done{};
}

} // namespace

const Source& FigureAt::source() const
{
    return std::visit([](const auto& held) -> const Source& { return held.source; }, figure);
}

std::vector<FigureAt> figuresOf(const Procedure& procedure)
{
    std::vector<FigureAt> all;
    walkFigures(procedure, [&](const std::string& path, const auto& figure) { all.push_back({path, figure}); });
    return all;
}

std::optional<FigureAt> figureAt(const Procedure& procedure, std::string_view path)
{
    const auto all = figuresOf(procedure);
    const auto found = std::ranges::find(all, path, &FigureAt::path);
    return found == all.end() ? std::nullopt : std::optional(*found);
}

Outcome changeFigure(Procedure& procedure, std::string_view path, const std::variant<Span, Temperature>& value,
                     const Source& source)
{
    Outcome outcome = Fault{FaultKind::NotFound, "no such figure"};
    walkFigures(procedure, [&](const std::string& here, auto& figure) {
        if (here != path) {
            return;
        }
        using Value = decltype(figure.value);
        if (const Value* same = std::get_if<Value>(&value)) {
            outcome = changeOne(figure, *same, source);
        }
    });
    return outcome;
}

Procedure nextRevision(Procedure edited, const RuleBook& book)
{
    int highest = edited.revision;
    for (const auto* held : {&book.procedures, &book.formerRevisions}) {
        for (const Procedure& each : *held) {
            if (each.key == edited.key) {
                highest = std::max(highest, each.revision);
            }
        }
    }
    edited.revision = highest + 1;
    edited.hash.clear();
    return edited;
}

std::vector<RuleFault> faultsAt(const std::vector<RuleFault>& faults, std::string_view path)
{
    std::vector<RuleFault> here;
    std::ranges::copy_if(faults, std::back_inserter(here), [&](const RuleFault& fault) {
        const std::string_view place = fault.path;
        return place == path || (place.starts_with(path) && place.substr(path.size()).starts_with('/'));
    });
    return here;
}

} // namespace mend::rules
