#pragma once

#include "app/parts/measure.h"

#include <QFont>
#include <QFontMetricsF>
#include <QHash>
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

/// How much room words take in one font. Working that out is the dearest part of drawing a card, and the same
/// words come again on every card and every second, so what was worked out is kept.
class Widths {
public:
    explicit Widths(const QFont& font) : m_font(font), m_metrics(font) {}
    const QFont& font() const { return m_font; }
    double of(const QString& words);
    double height() const { return m_metrics.height(); }
    QString shortened(const QString& words, double width) const
    {
        return m_metrics.elidedText(words, Qt::ElideRight, width);
    }

private:
    QFont m_font;
    QFontMetricsF m_metrics;
    QHash<QString, double> m_known;
};

/// The type face: Lato by name, because its figures are all of one width; Noto Sans for scripts
/// that it lacks. Never "the default", which changes with whatever else is installed.
class Type {
public:
    explicit Type(Measure measure = Measure());
    QFont font(Role role, double shrink = 1.0) const { return widths(role, shrink).font(); }
    Widths& widths(Role role, double shrink = 1.0) const;
    /// Loads the faces once and gives the family in force; never empty where any font exists.
    static QString family();

private:
    using Made = std::map<std::pair<Role, int>, Widths>;
    Measure m_measure;
    std::shared_ptr<Made> m_made; ///< fonts are dear to make and asked for at every line
};

} // namespace mend::parts
