#pragma once

#include "core/bench/card.h"
#include "core/bench/standingplan.h"
#include "core/service/wording.h"

#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace mend::service {

/// One thing to do, as the Plan says it.
struct PlanLine {
    PieceId piece;
    bench::StageInstance stage;
    Instant from;
    Instant to;
    QString clock; ///< "13:43"; with its day where that is another; "now" where it may begin at once
    QString act;
    QString name; ///< of the piece
    QString why;  ///< the one reason why then: what closes, what was promised
    QString person;
    QString place;
    bool running = false;
};

/// Something that cannot hold together, and what would help.
struct PlanConflict {
    QStringList reasons;
    struct Way {
        QString words;
        PieceId setAside; ///< set: leaving this piece for another day is the way, and can be told by one tap
    };
    std::vector<Way> ways;
};

/// A plan in words: what is to be done and why then, what is left out, what cannot be.
struct PlanInWords {
    std::vector<PlanLine> lines; ///< oldest first
    QStringList leftOut;         ///< promises that are not kept, windows that are lost, what stalls
    std::optional<PlanConflict> conflict;
    bool isKnown = false; ///< a whole plan stands behind the lines
};

/// What is looked things up in.
struct PlanSources {
    const bench::BenchFold& bench;
    const rules::RuleBook& book;
    const bench::Board& board;
};
PlanInWords planInWords(const bench::StandingPlan& plan, const PlanSources& sources, Instant now, const Manner& manner);

/// "3 moved, none later than promised": what a better plan would change.
QString changeWords(const plan::PlanChange& change);

} // namespace mend::service
