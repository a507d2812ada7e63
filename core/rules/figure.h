#pragma once

#include "core/base/time.h"
#include "core/base/units.h"

#include <optional>
#include <string>

namespace mend::rules {

/// How far a number may be trusted.
enum class Mark {
    Agency,   ///< standard, agency or reviewed paper, read
    Museum,   ///< museum, conservator or maker's sheet, read
    Studio,   ///< studio or shop page, read
    Derived,  ///< calculated from others
    Memory,   ///< from memory, not read
    Practice, ///< common practice, no source
};

/// Where a number comes from.
struct Source {
    std::string text;
    Mark mark = Mark::Practice;
    bool operator==(const Source&) const = default;
};

/// One number of a rule with the range inside which a studio may change it.
template <class T> struct Figure {
    T value{};
    T least{};
    T most{};
    Source source;
    bool operator==(const Figure&) const = default;
};
using SpanFigure = Figure<Span>;
using TemperatureFigure = Figure<Temperature>;

} // namespace mend::rules
