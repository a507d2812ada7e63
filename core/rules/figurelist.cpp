#include "core/rules/figurelist.h"

#include "core/rules/figurewalk.h"

#include <algorithm>

namespace mend::rules {

namespace {

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
