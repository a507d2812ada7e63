#pragma once

#include <QStringList>
#include <vector>

namespace mend::test {

/// One thing that the bench file says happened, read by the command of SQLite and not by the program's code.
struct Recorded {
    qint64 id = 0;
    QString where; ///< the piece's or the place's name
    QString what;  ///< "done wipeBack#1", "reading 26.5 47", "void done wipeBack#1"
    QString happened;
    QString recorded;
};

/// What people told since that event, in the order in which it was told. What the program noted by itself, that
/// an alert was shown, is left out. Empty where the file cannot be read just now.
std::vector<Recorded> recordSince(const QString& file, qint64 event);
/// The number of the last event in the file; -1 where it cannot be read just now.
qint64 lastEvent(const QString& file);
/// When the program noted that it first called for a window before its close, each with the stage, "wipeBack#1".
std::vector<Recorded> callsSince(const QString& file, qint64 event);

} // namespace mend::test
