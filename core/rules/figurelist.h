#pragma once

#include "core/base/result.h"
#include "core/rules/rulebook.h"
#include "core/rules/validation.h"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace mend::rules {

/// One number of a procedure, found by where it stands, so that it can be read, shown and changed.
struct FigureAt {
    std::string path; ///< JSON pointer within the procedure: "/stages/9/closes/0/span"
    std::variant<SpanFigure, TemperatureFigure> figure;
    const Source& source() const;
    bool operator==(const FigureAt&) const = default;
};

/// Every number of a procedure that a studio may change, in the order of its text.
std::vector<FigureAt> figuresOf(const Procedure& procedure);
std::optional<FigureAt> figureAt(const Procedure& procedure, std::string_view path);

/// Puts another number in the place of one of the same kind; its range stays what it was. BadInput where the
/// value lies outside that range, NotFound where no such number stands there.
Outcome changeFigure(Procedure& procedure, std::string_view path, const std::variant<Span, Temperature>& value,
                     const Source& source);

/// A next revision of a procedure, to be kept beside the others: its number is above every one in the book.
Procedure nextRevision(Procedure edited, const RuleBook& book);

/// The faults that speak of this place or of something within it.
std::vector<RuleFault> faultsAt(const std::vector<RuleFault>& faults, std::string_view path);

} // namespace mend::rules
