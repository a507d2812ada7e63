#pragma once

#include "core/rules/figurelist.h"
#include "core/service/wording.h"

#include <QString>
#include <QStringList>

#include <optional>

namespace mend::service {

/// How far a number may be trusted, in words: "published standard or paper", "from memory".
QString markWords(rules::Mark mark);
/// Where a number comes from: its source and how far it may be trusted, said once.
QString sourceWords(const rules::Source& source);

/// A number of a rule as it is read: "12 min", "8 min to 20 min".
QString figureValue(const rules::FigureAt& figure, const Manner& manner);
QString figureRange(const rules::FigureAt& figure, const Manner& manner);

/// A number of a rule as it is typed: digits alone, and the unit that they are in. The unit is one in which
/// the number and its range are whole where there is one, and it does not change while somebody types.
struct TypedFigure {
    QString digits;
    QString unit; ///< "min"
};
TypedFigure typedFigure(const rules::FigureAt& figure, const Manner& manner);
/// What was typed, in the unit that `typedFigure` gave. Empty where it is no number.
std::optional<std::variant<Span, Temperature>> readFigure(const QString& typed, const rules::FigureAt& figure,
                                                          const Manner& manner);

/// A number as a person types it: in the language's own digits and mark or with a plain point. Group marks, "nan"
/// and "inf" are no numbers: in one language they would mean a thousand times what they mean in another.
std::optional<double> typedNumber(const QString& typed, const QLocale& locale);

/// "after the last touch of “Press the filler in”, same run".
QString originWords(const rules::Origin& origin, const rules::Procedure& procedure);
/// "on a porous body"; empty where it always holds.
QString conditionWords(const rules::Condition& condition);
/// "for each run"; empty where a stage is done once.
QString repeatWords(rules::Repeat repeat);

} // namespace mend::service
