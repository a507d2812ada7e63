#include "core/service/cardwording.h"
#include "core/service/reachwording.h"

#include <QCoreApplication>

#include <algorithm>

namespace mend::service {

namespace {

using bench::ActKind;
using bench::CountKind;
using bench::ReasonKind;
using bench::Standing;

// What a translator finds these words under.
class CardWording {
    Q_DECLARE_TR_FUNCTIONS(CardWording)
};

template <class Map, class Key> QString nameIn(const Map& names, const Key& key)
{
    const auto found = names.find(key);
    return found == names.end() ? QString() : isolated(found->second);
}

QString rangeOfClocks(const char* once, const char* about, Instant from, std::optional<Instant> to, Instant now,
                      const Manner& manner)
{
    const QString first = clockTime(from, now, manner);
    const QString last = to ? clockTime(*to, now, manner) : first;
    return first == last ? CardWording::tr(once).arg(first) : CardWording::tr(about).arg(first, last);
}

CountWords startBy(const bench::Card& card, Instant now, const Manner& manner)
{
    if (card.standing == Standing::UnderHands && card.countTo) {
        const Span left = *card.countTo - now;
        return {countDigits(left), CardWording::tr("hands off by %1").arg(clockTime(*card.countTo, now, manner)),
                countsSeconds(left)};
    }
    const auto left = card.window    ? bench::remaining(*card.window, now)
                      : card.countTo ? std::optional<Span>(*card.countTo - now)
                                     : std::nullopt;
    if (!left) {
        return {QStringLiteral("–"), QString(), false};
    }
    const Instant due = now + *left;
    const QString below = *left < Span{0} ? CardWording::tr("should have begun %1").arg(clockTime(due, now, manner))
                                          : CardWording::tr("start by %1").arg(clockTime(due, now, manner));
    return {countDigits(*left), below, countsSeconds(*left)};
}

} // namespace

Names namesOf(const bench::Board& board)
{
    Names names;
    for (const auto& card : board.cards) {
        names.pieces[card.piece] = text(card.benchName);
        names.acts[{card.piece, card.stage}] = text(card.act);
        for (const auto& other : card.others) {
            names.acts[{card.piece, other.stage}] = text(other.act);
        }
    }
    for (const auto& mix : board.mixes) {
        names.mixes[mix.mix] = text(mix.materialName);
    }
    return names;
}

CountWords countWords(const bench::Card& card, Instant now, const Manner& manner)
{
    if (card.counts == CountKind::StartBy) {
        return startBy(card, now, manner);
    }
    if (card.standing == Standing::Ready) {
        return {};
    }
    if (!card.countTo || card.counts == CountKind::Nothing) {
        return {QStringLiteral("–"),
                card.countTo ? CardWording::tr("not before %1").arg(clockTime(*card.countTo, now, manner)) : QString(),
                false};
    }
    const Span left = *card.countTo - now;
    switch (card.counts) {
    case CountKind::Opens:
        return {waitDigits(left),
                rangeOfClocks(QT_TRANSLATE_NOOP("CardWording", "opens %1"),
                              QT_TRANSLATE_NOOP("CardWording", "opens about %1 to %2"), *card.countTo,
                              card.countToAtLatest, now, manner),
                countsSeconds(left)};
    case CountKind::Ends:
        return {waitDigits(left),
                rangeOfClocks(QT_TRANSLATE_NOOP("CardWording", "until %1"),
                              QT_TRANSLATE_NOOP("CardWording", "about %1 to %2"), *card.countTo, card.countToAtLatest,
                              now, manner),
                countsSeconds(left)};
    case CountKind::UnderHands:
        return {countDigits(-left), CardWording::tr("since %1").arg(clockTime(*card.countTo, now, manner)),
                countsSeconds(-left)};
    case CountKind::Late:
        return {spanWords(-left), CardWording::tr("closed %1").arg(clockTime(*card.countTo, now, manner)),
                -left < std::chrono::minutes{1}};
    case CountKind::Counted:
        return {countDigits(left), CardWording::tr("in place by %1").arg(clockTime(*card.countTo, now, manner)),
                countsSeconds(left)};
    case CountKind::StartBy:
    case CountKind::Nothing:
        break;
    }
    return {};
}

QString actWords(const bench::CardAct& act)
{
    if (!act.words.empty()) {
        return text(act.words);
    }
    switch (act.kind) {
    case ActKind::HandsOnIt:
        return CardWording::tr("Hands on it");
    case ActKind::Begin:
        return CardWording::tr("Begun");
    case ActKind::Finish:
        return CardWording::tr("Done");
    case ActKind::Confirm:
        return CardWording::tr("Test passed");
    case ActKind::NotYet:
        return CardWording::tr("Not yet");
    case ActKind::WasInTime:
        return CardWording::tr("Was done in time");
    case ActKind::DoingLate:
        return CardWording::tr("Doing it late");
    case ActKind::NotDone:
        return CardWording::tr("Not done");
    case ActKind::AskHazard:
        return CardWording::tr("Hazard: see why");
    case ActKind::HandOver:
        return CardWording::tr("Hand it over");
    case ActKind::EndHold:
        return CardWording::tr("Go on with it");
    case ActKind::SendBack:
        return CardWording::tr("Cut back");
    }
    return {};
}

QString cardActWords(const bench::Card& card)
{
    if (!card.act.empty()) {
        return text(card.act);
    }
    return card.standing == Standing::Waiting ? CardWording::tr("Rest before it is handed over")
                                              : CardWording::tr("Ready to be handed over");
}

QString repetitionWords(const bench::Card& card)
{
    return card.repetitions > 1 ? CardWording::tr("%1 of %2").arg(card.stage.repetition).arg(card.repetitions)
                                : QString();
}

QString standingWords(Standing standing)
{
    switch (standing) {
    case Standing::DoNow:
        return CardWording::tr("do this now");
    case Standing::Open:
        return CardWording::tr("open");
    case Standing::Past:
        return CardWording::tr("past its close");
    case Standing::UnderHands:
        return CardWording::tr("under your hands");
    case Standing::Stopped:
        return CardWording::tr("stopped for now");
    case Standing::Stalled:
        return CardWording::tr("stalled");
    case Standing::Waiting:
        return CardWording::tr("waiting");
    case Standing::Free:
        return CardWording::tr("free to be worked on");
    case Standing::OnHold:
        return CardWording::tr("on hold");
    case Standing::Ready:
        return CardWording::tr("ready to hand over");
    }
    return {};
}

bool reasonIsGrave(const bench::Reason& reason)
{
    return reason.kind == ReasonKind::Hazard || reason.kind == ReasonKind::HeatOver ||
           reason.kind == ReasonKind::Stalled || reason.kind == ReasonKind::TwoNeedHands ||
           reason.kind == ReasonKind::Clashes;
}

namespace {

QString soonerWords(const bench::Reason& reason, const Manner& manner)
{
    const QString sooner = CardWording::tr("%1 sooner").arg(spanWords(reason.span.value_or(Span{0})));
    return reason.temperature
               ? CardWording::tr("%1: it is %2").arg(sooner, temperatureWords(*reason.temperature, manner))
               : sooner;
}

QString stalledWords(const bench::Reason& reason, const Manner& manner)
{
    return reason.temperature
               ? CardWording::tr("Stalled at %1: check by touch").arg(temperatureWords(*reason.temperature, manner))
               : CardWording::tr("Stalled: check by touch");
}

QString hazardReason(const bench::Reason& reason, Instant now, const Manner& manner)
{
    const QString said = text(reason.text);
    if (!reason.until) {
        return said;
    }
    const QString until = CardWording::tr("until %1").arg(clockTime(*reason.until, now, manner));
    const auto colon = said.indexOf(QLatin1Char(':'));
    return colon < 0 ? CardWording::tr("%1 %2").arg(said, until)
                     : CardWording::tr("%1 %2:%3").arg(said.left(colon), until, said.mid(colon + 1));
}

QString chainWords(const bench::Reason& reason, const Names& names)
{
    const QString act = nameIn(names.acts, std::pair(reason.piece, reason.stage));
    const QString piece = nameIn(names.pieces, reason.piece);
    return act.isEmpty() ? CardWording::tr("then the %1").arg(piece)
                         : CardWording::tr("then %1: %2").arg(piece, act.left(1).toLower() + act.mid(1));
}

/// "would clash: celadon dish, dust the gold, closes 14:04"
QString clashWords(const bench::Reason& reason, const Names& names, Instant now, const Manner& manner)
{
    const QString piece = nameIn(names.pieces, reason.piece);
    if (piece.isEmpty() || !reason.until) {
        return CardWording::tr("does not fit now: a window would close meanwhile");
    }
    const QString act = nameIn(names.acts, std::pair(reason.piece, reason.stage));
    const QString closes = clockTime(*reason.until, now, manner);
    return act.isEmpty() ? CardWording::tr("would clash: %1 closes %2").arg(piece, closes)
                         : CardWording::tr("would clash: %1, %2, closes %3")
                               .arg(piece, act.left(1).toLower() + act.mid(1), closes);
}

QString unsureWords(const bench::Reason& reason, const Names& names)
{
    const QString piece = nameIn(names.pieces, reason.piece);
    return piece.isEmpty() ? CardWording::tr("unsure whether it fits")
                           : CardWording::tr("unsure whether it fits beside %1").arg(piece);
}

QString placeOrHere(const bench::Reason& reason, const Names& names)
{
    const QString place = nameIn(names.places, reason.place);
    return place.isEmpty() ? CardWording::tr("this place") : place;
}

} // namespace

QString reasonWords(const bench::Reason& reason, const Names& names, Instant now, const Manner& manner)
{
    switch (reason.kind) {
    case ReasonKind::Hazard:
        return hazardReason(reason, now, manner);
    case ReasonKind::MissCosts: {
        const QString cost = missWords(reason.miss);
        return reason.text.empty() || cost.isEmpty() ? cost : CardWording::tr("%1: %2").arg(cost, text(reason.text));
    }
    case ReasonKind::Sooner:
        return soonerWords(reason, manner);
    case ReasonKind::ChainThen:
        return chainWords(reason, names);
    case ReasonKind::TwoNeedHands:
        return CardWording::tr("Two need your hands: %1 as well").arg(nameIn(names.pieces, reason.piece));
    case ReasonKind::MixLeft:
        return CardWording::tr("%1 mix: %2 left")
            .arg(nameIn(names.mixes, reason.mix), spanWords(reason.span.value_or(Span{0})));
    case ReasonKind::MixReach:
        return shareWords(reason, manner);
    case ReasonKind::TestByTouch:
        return reason.text.empty() ? CardWording::tr("test by touch") : text(reason.text);
    case ReasonKind::Stalled:
        return stalledWords(reason, manner);
    case ReasonKind::StaleReading:
        return CardWording::tr("reading of %1 is %2 old")
            .arg(placeOrHere(reason, names), spanWords(reason.span.value_or(Span{0})));
    case ReasonKind::NoReading:
        return CardWording::tr("no reading of %1: reckoned at the rule's own").arg(placeOrHere(reason, names));
    case ReasonKind::MayStay:
        return CardWording::tr("may stay longer");
    case ReasonKind::Late:
        return CardWording::tr("closed %1").arg(agoWords(reason.span.value_or(Span{0})));
    case ReasonKind::Hold:
        return reason.text.empty() ? CardWording::tr("on hold") : CardWording::tr("on hold: %1").arg(text(reason.text));
    case ReasonKind::Fits:
        return reason.until ? CardWording::tr("fits: start by %1").arg(clockTime(*reason.until, now, manner))
                            : CardWording::tr("fits");
    case ReasonKind::Clashes:
        return clashWords(reason, names, now, manner);
    case ReasonKind::NotBefore:
        return reason.until ? CardWording::tr("cannot begin before %1").arg(clockTime(*reason.until, now, manner))
                            : CardWording::tr("cannot begin now");
    case ReasonKind::UnsureIfFits:
        return unsureWords(reason, names);
    case ReasonKind::HeatOver:
        return reason.temperature ? CardWording::tr("%1 is %2: too warm for what is in it")
                                        .arg(placeOrHere(reason, names), temperatureWords(*reason.temperature, manner))
                                  : text(reason.text);
    case ReasonKind::Caution:
        return text(reason.text);
    }
    return {};
}

QString hazardWords(const bench::HazardFinding& hazard, const Names& names, Instant now, const Manner& manner)
{
    if (!hazard.hazard) {
        return {};
    }
    bench::Reason reason;
    reason.kind = ReasonKind::Hazard;
    reason.text = hazard.hazard->said.empty() ? hazard.hazard->title : hazard.hazard->said;
    reason.until = hazard.until;
    QStringList pieces;
    for (const PieceId piece : hazard.pieces) {
        pieces << nameIn(names.pieces, piece);
    }
    pieces.removeAll(QString());
    const QString line = hazardReason(reason, now, manner);
    return pieces.isEmpty() ? line : CardWording::tr("%1 (%2)").arg(line, pieces.join(QStringLiteral(", ")));
}

QStringList windowWords(const bench::Card& card, Instant now, const Manner& manner)
{
    QStringList words;
    const auto& seam = card.seam;
    if (seam.opens && *seam.opens > now && card.counts != CountKind::Opens) {
        words << rangeOfClocks(QT_TRANSLATE_NOOP("CardWording", "opens %1"),
                               QT_TRANSLATE_NOOP("CardWording", "opens about %1 to %2"), *seam.opens,
                               seam.opensAtLatest, now, manner);
    }
    if (seam.latestStart && card.counts != CountKind::StartBy && *seam.latestStart > now) {
        words << CardWording::tr("start by %1").arg(clockTime(*seam.latestStart, now, manner));
    }
    if (seam.closes && card.counts != CountKind::Late && card.counts != CountKind::UnderHands &&
        card.counts != CountKind::Counted) {
        words << (*seam.closes >= now ? CardWording::tr("closes %1") : CardWording::tr("closed %1"))
                     .arg(clockTime(*seam.closes, now, manner));
    }
    if (seam.lost && seam.closes && *seam.closes<now&& * seam.lost> now) {
        words << CardWording::tr("test by touch until %1").arg(clockTime(*seam.lost, now, manner));
    }
    return words;
}

QString cardSentence(const bench::Card& card, const Names& names, Instant now, const Manner& manner)
{
    const CountWords count = countWords(card, now, manner);
    QStringList parts{cardActWords(card),   repetitionWords(card),    standingWords(card.standing),
                      text(card.benchName), numberWords(card.number), text(card.ownerName),
                      text(card.placeName)};
    if (!count.below.isEmpty()) {
        parts << CardWording::tr("%1, %2").arg(count.digits, count.below);
    }
    parts << windowWords(card, now, manner);
    for (const auto& reason : card.reasons) {
        parts << reasonWords(reason, names, now, manner);
    }
    for (QString& part : parts) { // a caution is a sentence already: no second stop is read out
        part = part.trimmed();
        while (part.endsWith(QLatin1Char('.'))) {
            part.chop(1);
        }
    }
    parts.removeAll(QString());
    return parts.join(QStringLiteral(". "));
}

} // namespace mend::service
