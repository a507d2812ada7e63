#pragma once

#include "app/parts/measure.h"

#include <QFont>
#include <QString>
#include <map>
#include <memory>

namespace mend::parts {

/// What a line of text is for; each has one size and weight, given at 96 dpi.
enum class Role {
    BlockDigits, ///< read from two metres
    BlockVerb,
    BlockText,
    BlockAct,
    CardDigits,
    CardVerb,
    CardAct,
    Clock,
    Reading, ///< the strong line of the top line
    RailWord,
    RailHere,
    Body,
    BodyBold,
    Reason, ///< the smallest there is
    ReasonBold,
};

/// Pixels of a role at 96 dpi.
double unitsOf(Role role);

/// The type face: Lato by name, because its figures are all of one width; Noto Sans for scripts
/// that it lacks. Never "the default", which changes with whatever else is installed.
class Type {
public:
    explicit Type(Measure measure = Measure());
    QFont font(Role role, double shrink = 1.0) const;
    /// Loads the faces once and gives the family in force; never empty where any font exists.
    static QString family();

private:
    using Made = std::map<std::pair<Role, int>, QFont>;
    Measure m_measure;
    std::shared_ptr<Made> m_made; ///< fonts are dear to make and asked for at every line
};

} // namespace mend::parts
