#pragma once

#include "core/bench/card.h"
#include "core/service/wording.h"

#include <QString>
#include <QStringList>

#include <map>

namespace mend::service {

/// What the things on the bench are called, so that a line about one can name another.
struct Names {
    std::map<PieceId, QString> pieces;
    std::map<PlaceId, QString> places;
    std::map<MixId, QString> mixes;
    std::map<std::pair<PieceId, bench::StageInstance>, QString> acts;
};
/// The names that a board itself holds; places come from whoever knows them.
Names namesOf(const bench::Board& board);

/// The large figure of a card and the line that says what it counts to.
struct CountWords {
    QString digits;       ///< "2:12"; a dash where there is no number to give
    QString below;        ///< "start by 13:44"
    bool seconds = false; ///< the digits change every second
};
CountWords countWords(const bench::Card& card, Instant now, const Manner& manner);

/// The words on a button: those of the rule, else our own for its kind.
QString actWords(const bench::CardAct& act);
/// What has to be done with the piece next, verb first; a finished one has no stage and is said to be so.
QString cardActWords(const bench::Card& card);
/// "set 2 of 4", empty where a stage is done once.
QString repetitionWords(const bench::Card& card);
/// "waiting", "open", "past its close": said where a shape would otherwise stand alone.
QString standingWords(bench::Standing standing);

/// One line for one reason; empty where it says nothing to a person.
QString reasonWords(const bench::Reason& reason, const Names& names, Instant now, const Manner& manner);
/// True where the line must be in bold: a hazard or a standing fault.
bool reasonIsGrave(const bench::Reason& reason);

/// What a hazard is and until when: "No flame until 14:19: pads are drying".
QString hazardWords(const bench::HazardFinding& hazard, const Names& names, Instant now, const Manner& manner);

/// The whole card as one sentence for a screen reader and for the console.
QString cardSentence(const bench::Card& card, const Names& names, Instant now, const Manner& manner);

/// "opens 13:56 · start by 14:31 · closes 14:36", as far as known, without what `below` says already.
QStringList windowWords(const bench::Card& card, Instant now, const Manner& manner);

/// How one figure came about, line by line: event, figure and source, air, result.
QStringList whyWords(const bench::Reckoning& reckoning, Instant now, const Manner& manner);

} // namespace mend::service
