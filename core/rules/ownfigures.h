#pragma once

#include "core/rules/figurelist.h"

#include <optional>
#include <string>
#include <vector>

namespace mend::rules {

/// One number of what the procedures share (a pot life, how warm a material may get, how old a reading may be) that a
/// studio has put in the place of the shipped one. It stands in a file of the studio's own; the shipped file is never
/// written. Just one of `span` and `temperature` is given.
struct OwnFigure {
    std::string of;   ///< "material/fillerPaste", "hazard/INC-12", "practice"
    std::string path; ///< JSON pointer within it: "/potLife", "/heatLimits/0/warmest"
    std::optional<Span> span;
    std::optional<Temperature> temperature;
    Source source; ///< where the studio has it from
    bool operator==(const OwnFigure&) const = default;
};

/// A number of what the procedures share, found by where it stands.
struct SharedFigure {
    std::string of;
    FigureAt at;
    bool isLimit = false; ///< a limit that something is harmed beyond: it may be lowered, never raised
    bool operator==(const SharedFigure&) const = default;
};

/// Every number of materials, hazards and the habits of the bench that a studio may change, in the order of the book.
/// Cure laws are not among them: they are physics, and an open window hangs on them.
std::vector<SharedFigure> sharedFiguresOf(const RuleBook& book);
std::optional<SharedFigure> sharedFigureAt(const RuleBook& book, std::string_view of, std::string_view path);

/// Puts a studio's own number into the book. NotFound where no such number stands there or it is of another kind,
/// BadInput outside its range, without a source, or where a limit would be raised: a hazard limit always beats a
/// practice figure.
Outcome putOwn(RuleBook& book, const OwnFigure& own);

} // namespace mend::rules
