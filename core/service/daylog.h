#pragma once

#include "core/bench/state.h"
#include "core/service/wording.h"

#include <QString>

#include <span>
#include <vector>

namespace mend::service {

/// One thing that was told, as the day's log shows it.
struct LogLine {
    EventId event;
    PieceId piece;
    Instant happened;       ///< as it stands now
    Instant recorded;       ///< when it was told
    QString words;          ///< "Filler is in"
    QString pieceName;      ///< the bench name; empty: of no piece
    QString person;         ///< who told it
    QString note;           ///< a reason or remark told with it
    bool takenBack = false; ///< it did not happen
    bool toldAgain = false; ///< it stands at another time or piece than it was first told
    bool canMove = false;   ///< to another time; to another piece where `piece` is set
    bool canTakeBack = false;
    bool operator==(const LogLine&) const = default;
};

/// What was told and happened within this stretch, newest first. What the program noted by itself (an alert was
/// shown) is no line. Only facts of the day before `now` can be moved or taken back here.
std::vector<LogLine> dayLog(std::span<const bench::Event> told, const bench::BenchFold& bench,
                            const rules::RuleBook& book, InstantRange day, Instant now, const Manner& manner);

/// Why a fact cannot be said to have happened at this time; empty where it can. It is not told of the future, nor of
/// a time more than a day ago.
enum class MoveFault { None, Future, TooLongAgo };
MoveFault moveFault(Instant happened, Instant now);

} // namespace mend::service
