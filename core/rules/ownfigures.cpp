#include "core/rules/ownfigures.h"

#include "core/rules/figurewalk.h"

#include <algorithm>

namespace mend::rules {

namespace {

/// Whether a figure can be held by a FigureAt at all: lengths and humidities stay as they ship.
template <class T> constexpr bool isShown = std::is_same_v<T, SpanFigure> || std::is_same_v<T, TemperatureFigure>;

/// Goes over every shared number with what it is of, and may change it.
template <class Book, class Visit> void walkShared(Book& book, Visit visit)
{
    const auto walk = [&visit](auto& row, const std::string& of) {
        walkFigures(row, [&](const std::string& path, auto& figure) {
            if constexpr (isShown<std::remove_cvref_t<decltype(figure)>>) {
                visit(of, path, figure);
            }
        });
    };
    for (auto& material : book.materials) {
        walk(material, "material/" + material.key);
    }
    for (auto& hazard : book.hazards) {
        walk(hazard, "hazard/" + hazard.key);
    }
    walk(book.practice, "practice");
}

/// What something is harmed beyond: how warm a material may get, and every temperature of a hazard.
bool isLimit(const std::string& of, const std::string& path)
{
    return path.starts_with("/heatLimits/") || (of.starts_with("hazard/") && path == "/temperature");
}

template <class T> Outcome putOne(Figure<T>& figure, const std::optional<T>& value, const OwnFigure& own)
{
    if (!value) {
        return Fault{FaultKind::NotFound, "this number is of another kind"};
    }
    if (own.source.text.empty()) {
        return Fault{FaultKind::BadInput, "no number stands without its source"};
    }
    if (*value < figure.least || figure.most < *value) {
        return Fault{FaultKind::BadInput, "outside the range of this figure"};
    }
    if (isLimit(own.of, own.path) && figure.value < *value) {
        return Fault{FaultKind::BadInput, "a limit may be lowered, never raised"};
    }
    figure.value = *value;
    figure.source = own.source;
    return Done{};
}

} // namespace

std::vector<SharedFigure> sharedFiguresOf(const RuleBook& book)
{
    std::vector<SharedFigure> all;
    walkShared(book, [&](const std::string& of, const std::string& path, const auto& figure) {
        all.push_back({of, {path, figure}, isLimit(of, path)});
    });
    return all;
}

std::optional<SharedFigure> sharedFigureAt(const RuleBook& book, std::string_view of, std::string_view path)
{
    const auto all = sharedFiguresOf(book);
    const auto found = std::ranges::find_if(
        all, [&](const SharedFigure& figure) { return figure.of == of && figure.at.path == path; });
    return found == all.end() ? std::nullopt : std::optional(*found);
}

Outcome putOwn(RuleBook& book, const OwnFigure& own)
{
    Outcome outcome = Fault{FaultKind::NotFound, "no such figure"};
    walkShared(book, [&](const std::string& of, const std::string& path, auto& figure) {
        if (of != own.of || path != own.path) {
            return;
        }
        if constexpr (std::is_same_v<decltype(figure.value), Span>) {
            outcome = putOne(figure, own.span, own);
        } else {
            outcome = putOne(figure, own.temperature, own);
        }
    });
    return outcome;
}

} // namespace mend::rules
