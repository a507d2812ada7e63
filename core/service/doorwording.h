#pragma once

#include "core/base/civil.h"
#include "core/bench/counter.h"
#include "core/bench/handover.h"
#include "core/record/intake.h"
#include "core/record/photo.h"
#include "core/service/wording.h"

#include <QDate>
#include <QString>

namespace mend::service {

/// "128.50 €" as this language writes it, with the currency's own decimals.
QString moneyWords(const Money& money, const Manner& manner);

/// What a mark on a photo says: "chip", "old mend".
QString markWords(record::MarkKind kind);

/// A day in words, for people and papers: "Saturday, 20 March 2027".
QString dayWords(CivilDay day, const Manner& manner);
/// A day of this year on a button: "Sat 20 Mar".
QString shortDayWords(CivilDay day, const Manner& manner);
QDate dateOf(CivilDay day);

/// How far a piece has come and, where it waits, from when it may go: "resting, may be collected from Saturday,
/// 20 March 2027". Never a name.
QString progressWords(const bench::PieceState& piece, const rules::RuleBook& book, Instant now,
                      const bench::DayOf& dayOf, const Manner& manner);

/// What an event of the door says: "Promised for Saturday, 20 March 2027". Empty for other events. Never a name.
QString doorTold(const bench::Event& event, const Manner& manner);

/// What is wrong on the page of the intake and what to do about it, one sentence.
QString intakeFaultWords(record::IntakeFault fault);

/// The field of the page a fault belongs to: "owner/name", "piece/benchName"; along the names of the form.
const char* intakeFaultField(record::IntakeFault fault);

/// "3 pieces may be collected", "1 piece is late", "2 pieces wait for their owners"; empty for a list with nothing in
/// it.
QString mayBeCollectedWords(const bench::CounterFacts& facts);
QString lateWords(const bench::CounterFacts& facts);
QString waitsForOwnerWords(const bench::CounterFacts& facts);
QString toCallWords(const bench::CounterFacts& facts);
QString unclaimedWords(const bench::CounterFacts& facts);

/// Said at the moment a promise is made that cannot be kept: "That is 3 days too early: its epoxy waits until
/// Tuesday, 23 March 2027". Empty where it can be kept. `material`: its name in words, may be empty.
QString promiseWords(const bench::PromiseJudgement& judgement, const QString& material, const Manner& manner);

} // namespace mend::service
