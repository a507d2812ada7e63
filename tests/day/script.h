#pragma once

#include "core/base/time.h"

#include <QString>
#include <QStringList>
#include <vector>

namespace mend::test {

/// One line of the day: when, where, what is tapped there, and what the record then has to say.
///
///     13:01:02  Heron bowl: is heard wipeBack#1
///     13:04:10  Heron bowl: Wiped back => done wipeBack#1
///     13:05:00  Bench: reads 26.5 47 => reading 26.5 47
///     13:06:00  power: cut for 00:04:00
struct Line {
    enum class Kind {
        Taps,
        Reading,
        Heard, ///< the window is about to close, and that is heard
        Seen,  ///< the same while no sound server lives: it stands on the screen
        PowerCut,
        SoundDies,
        SoundComesBack
    };

    Instant at;
    Kind kind = Kind::Taps;
    QString where;      ///< a piece or a place by its name on the bench
    QStringList taps;   ///< the words on what is tapped, one after the other; of a reading, its figures
    QString window;     ///< of a call: the stage and its repetition, "wipeBack#1"
    Span lasts{0};      ///< of a power cut
    QStringList record; ///< what is told by it, as `recordSince` words it
    QString text;       ///< the line itself, for a failure to show

    /// Whether it is about the house, and what is tapped belongs to no piece.
    bool isOfBench() const { return where == QLatin1String("bench"); }
};

struct Script {
    Instant begins; ///< the demo bench is made then
    std::vector<Line> lines;
    QStringList faults; ///< lines that could not be read

    std::vector<Line> of(Line::Kind kind) const;
};

/// Lines that are empty or begin with # are for people.
Script readScript(const QString& path);

} // namespace mend::test
