#pragma once

#include "core/base/result.h"

#include <QJsonObject>
#include <QString>
#include <QStringList>

namespace mend::desk {

/// How the program ends: 0 good, 2 what was given is no good, 3 it is proven that there is no plan,
/// 4 none was found in the time, 1 anything else that stood in the way.
enum class Ending { Good = 0, Otherwise = 1, BadInput = 2, NoPlan = 3, NotFound = 4 };

/// What a verb has to say, for people and for scripts.
struct Answer {
    Ending ending = Ending::Good;
    QString text;     ///< to standard output, or to standard error where it did not end well and `data` is empty
    QJsonObject data; ///< printed instead with --json
};

/// A verb could not do what it was asked to: why, in a sentence.
Answer refusal(const Fault& fault, const QString& about);

/// What a fault means to whoever typed the command.
QString faultWords(const Fault& fault);
Ending endingOf(FaultKind kind);
/// "foreign", "newer": names a kind in JSON.
QString faultKey(FaultKind kind);

} // namespace mend::desk
