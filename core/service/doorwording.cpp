#include "core/service/doorwording.h"

#include "core/base/currency.h"

#include <QCoreApplication>

namespace mend::service {

using bench::What;

namespace {

QString sayDoor(const char* words, int count = -1)
{
    return QCoreApplication::translate("Door", words, nullptr, count);
}

QString wayWords(const std::string& how)
{
    return how == "phone"            ? sayDoor("by phone")
           : how == "mail"           ? sayDoor("by e-mail")
           : how == "letter"         ? sayDoor("by letter")
           : how == "recordedLetter" ? sayDoor("by recorded letter")
           : how == "inPerson"       ? sayDoor("in person")
                                     : text(how);
}

QString countedWords(const bench::Event& event)
{
    const auto count = static_cast<int>(event.amount.value_or(0));
    return event.word == "fragmentsIn"     ? sayDoor("Fragments counted in: %1").arg(count)
           : event.word == "fragmentsOut"  ? sayDoor("Fragments counted out: %1").arg(count)
           : event.word == "accessoriesIn" ? sayDoor("Accessories counted in: %1").arg(count)
                                           : sayDoor("Accessories counted out: %1").arg(count);
}

QString came(const std::string& reason)
{
    return reason == "joinFailed"      ? sayDoor("Came back: a join gave way")
           : reason == "brokenAnew"    ? sayDoor("Came back: broken anew")
           : reason == "fragmentFound" ? sayDoor("Came back: a fragment was found")
                                       : sayDoor("Came back");
}

/// One sentence for one piece, another for several: English needs no more, other languages bring their own.
QString countWords(std::size_t count, const char* one, const char* several)
{
    return count == 0 ? QString() : sayDoor(count == 1 ? one : several, static_cast<int>(count)).arg(count);
}

} // namespace

QString moneyWords(const Money& money, const Manner& manner)
{
    const int decimals = decimalsOf(money.currency()).value_or(2);
    // Digits by hand: a double would round an amount of sixteen digits.
    const QString plain = text(plainAmount(money));
    const bool isNegative = plain.startsWith(QLatin1Char('-'));
    const QString bare = isNegative ? plain.mid(1) : plain;
    const QStringList parts = bare.split(QLatin1Char('.'));
    QString whole = manner.locale.toString(parts.front().toLongLong());
    if (decimals > 0) {
        QString minor;
        for (const QChar digit : parts.back()) {
            minor += manner.locale.toString(digit.digitValue());
        }
        whole += manner.locale.decimalPoint() + minor;
    }
    return sayDoor("%1 %2").arg(isNegative ? manner.locale.negativeSign() + whole : whole, text(money.currency()));
}

QString markWords(record::MarkKind kind)
{
    switch (kind) {
    case record::MarkKind::Chip:
        return sayDoor("chip");
    case record::MarkKind::Crack:
        return sayDoor("crack");
    case record::MarkKind::Loss:
        return sayDoor("loss");
    case record::MarkKind::OldMend:
        return sayDoor("old mend");
    case record::MarkKind::Stain:
        return sayDoor("stain");
    }
    return {};
}

QString dayWords(CivilDay day, const Manner& manner)
{
    const QDate date(static_cast<int>(day.year()), static_cast<int>(static_cast<unsigned>(day.month())),
                     static_cast<int>(static_cast<unsigned>(day.day())));
    return manner.locale.toString(date, QLocale::LongFormat);
}

QString progressWords(const bench::PieceState& piece, const rules::RuleBook& book, Instant now,
                      const bench::DayOf& dayOf, const Manner& manner)
{
    if (piece.waitingForOwner) {
        return sayDoor("waits for its owner's answer");
    }
    switch (bench::progressOf(piece, book, now)) {
    case bench::PieceProgress::Enquiry:
        return sayDoor("asked about");
    case bench::PieceProgress::Received:
        return sayDoor("received, nothing agreed yet");
    case bench::PieceProgress::Agreed:
        return sayDoor("agreed, not begun");
    case bench::PieceProgress::InWork:
        return sayDoor("on the bench");
    case bench::PieceProgress::Resting:
        break;
    case bench::PieceProgress::Ready:
        return sayDoor("may be collected");
    case bench::PieceProgress::HandedOver:
        return sayDoor("handed over");
    case bench::PieceProgress::ReturnedUnmended:
        return sayDoor("went back unmended");
    }
    const auto from = bench::handOverFrom(piece, book);
    return from ? sayDoor("resting, may be collected from %1")
                      .arg(dayWords(bench::collectableDay(from->at, dayOf), manner))
                : sayDoor("resting");
}

QString doorTold(const bench::Event& event, const Manner& manner)
{
    const Money money(event.amount.value_or(0), event.word);
    switch (event.what) {
    case What::Received:
        return sayDoor("Received");
    case What::CameBack:
        return came(event.word);
    case What::FaultNamed:
        return event.mix.isSet() ? sayDoor("What gave way: the batch") : sayDoor("What gave way: the join");
    case What::FragmentFound:
        return sayDoor("Fragments found: %1").arg(event.amount.value_or(1));
    case What::MaterialRemoved:
        return sayDoor("Cut out of it: %1").arg(text(event.word));
    case What::Promised: {
        const auto day = dayFrom(event.word);
        return sayDoor("Promised for %1").arg(day ? dayWords(*day, manner) : text(event.word));
    }
    case What::PriceAgreed:
        return sayDoor("Price agreed: %1").arg(moneyWords(money, manner));
    case What::Paid:
        return money.minorUnits() < 0
                   ? sayDoor("Given back: %1").arg(moneyWords(Money(-money.minorUnits(), money.currency()), manner))
                   : sayDoor("Paid: %1").arg(moneyWords(money, manner));
    case What::NoticeGiven:
        return sayDoor("Notice given that it lies here unclaimed, %1").arg(wayWords(event.word));
    case What::OwnerTold:
        return sayDoor("Its owner was told, %1").arg(wayWords(event.word));
    case What::Counted:
        return countedWords(event);
    case What::WaitShortened:
        return sayDoor("May go before the wait is over");
    case What::ConsentGiven:
        return event.word == "drawn" ? sayDoor("Consent signed on the screen") : sayDoor("Consent signed on paper");
    default:
        return {};
    }
}

QString mayBeCollectedWords(const bench::CounterFacts& facts)
{
    return countWords(facts.mayBeCollected.size(), QT_TRANSLATE_NOOP("Door", "%1 piece may be collected"),
                      QT_TRANSLATE_NOOP("Door", "%1 pieces may be collected"));
}

QString lateWords(const bench::CounterFacts& facts)
{
    return countWords(facts.late.size(), QT_TRANSLATE_NOOP("Door", "%1 piece is late"),
                      QT_TRANSLATE_NOOP("Door", "%1 pieces are late"));
}

QString waitsForOwnerWords(const bench::CounterFacts& facts)
{
    return countWords(facts.waitsForOwner.size(), QT_TRANSLATE_NOOP("Door", "%1 piece waits for its owner"),
                      QT_TRANSLATE_NOOP("Door", "%1 pieces wait for their owners"));
}

QString toCallWords(const bench::CounterFacts& facts)
{
    return countWords(facts.toCall.size(), QT_TRANSLATE_NOOP("Door", "%1 owner has to be told of a later day"),
                      QT_TRANSLATE_NOOP("Door", "%1 owners have to be told of a later day"));
}

QString unclaimedWords(const bench::CounterFacts& facts)
{
    return countWords(facts.unclaimed.size(),
                      QT_TRANSLATE_NOOP("Door", "%1 piece lies here unclaimed: local law says what may follow"),
                      QT_TRANSLATE_NOOP("Door", "%1 pieces lie here unclaimed: local law says what may follow"));
}

QString promiseWords(const bench::PromiseJudgement& judgement, const QString& material, const Manner& manner)
{
    if (judgement.daysTooEarly == 0 || !judgement.earliest) {
        return {};
    }
    const QString day = dayWords(*judgement.earliest, manner);
    const QString when = judgement.daysTooEarly == 1 ? sayDoor("That is a day too early")
                                                     : sayDoor("That is %1 days too early").arg(judgement.daysTooEarly);
    return material.isEmpty() ? sayDoor("%1: the work takes until %2 at the least").arg(when, day)
                              : sayDoor("%1: its %2 waits until %3 at the least").arg(when, material, day);
}

} // namespace mend::service
