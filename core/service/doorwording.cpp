#include "core/service/doorwording.h"

#include "core/base/currency.h"

#include <QCoreApplication>

namespace mend::service {

using bench::What;

namespace {

// What a translator finds these words under.
class DoorWords {
    Q_DECLARE_TR_FUNCTIONS(DoorWords)
};

QString wayWords(const std::string& how)
{
    return how == "phone"            ? DoorWords::tr("by phone")
           : how == "mail"           ? DoorWords::tr("by e-mail")
           : how == "letter"         ? DoorWords::tr("by letter")
           : how == "recordedLetter" ? DoorWords::tr("by recorded letter")
           : how == "inPerson"       ? DoorWords::tr("in person")
                                     : text(how);
}

QString countedWords(const bench::Event& event)
{
    const auto count = static_cast<int>(event.amount.value_or(0));
    return event.word == "fragmentsIn"     ? DoorWords::tr("Fragments counted in: %1").arg(count)
           : event.word == "fragmentsOut"  ? DoorWords::tr("Fragments counted out: %1").arg(count)
           : event.word == "accessoriesIn" ? DoorWords::tr("Accessories counted in: %1").arg(count)
                                           : DoorWords::tr("Accessories counted out: %1").arg(count);
}

QString came(const std::string& reason)
{
    return reason == "joinFailed"      ? DoorWords::tr("Came back: a join gave way")
           : reason == "brokenAnew"    ? DoorWords::tr("Came back: broken anew")
           : reason == "fragmentFound" ? DoorWords::tr("Came back: a fragment was found")
                                       : DoorWords::tr("Came back");
}

/// One sentence for one piece, another for several, of which a language may have any number.
QString countWords(std::size_t count, const char* one, const char* several)
{
    return count == 0   ? QString()
           : count == 1 ? DoorWords::tr(one)
                        : DoorWords::tr(several, nullptr, static_cast<int>(count));
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
    return DoorWords::tr("%1 %2").arg(isNegative ? manner.locale.negativeSign() + whole : whole,
                                      text(money.currency()));
}

QString markWords(record::MarkKind kind)
{
    switch (kind) {
    case record::MarkKind::Chip:
        return DoorWords::tr("chip");
    case record::MarkKind::Crack:
        return DoorWords::tr("crack");
    case record::MarkKind::Loss:
        return DoorWords::tr("loss");
    case record::MarkKind::OldMend:
        return DoorWords::tr("old mend");
    case record::MarkKind::Stain:
        return DoorWords::tr("stain");
    }
    return {};
}

QDate dateOf(CivilDay day)
{
    return {static_cast<int>(day.year()), static_cast<int>(static_cast<unsigned>(day.month())),
            static_cast<int>(static_cast<unsigned>(day.day()))};
}

QString dayWords(CivilDay day, const Manner& manner)
{
    return manner.locale.toString(dateOf(day), QLocale::LongFormat);
}

QString shortDayWords(CivilDay day, const Manner& manner)
{
    return manner.locale.toString(dateOf(day), QCoreApplication::translate("Formats", "ddd d MMM"));
}

QString progressWords(const bench::PieceState& piece, const rules::RuleBook& book, Instant now,
                      const bench::DayOf& dayOf, const Manner& manner)
{
    if (piece.waitingForOwner) {
        return DoorWords::tr("waits for its owner's answer");
    }
    switch (bench::progressOf(piece, book, now)) {
    case bench::PieceProgress::Enquiry:
        return DoorWords::tr("asked about");
    case bench::PieceProgress::Received:
        return DoorWords::tr("received, nothing agreed yet");
    case bench::PieceProgress::Agreed:
        return DoorWords::tr("agreed, not begun");
    case bench::PieceProgress::InWork:
        return DoorWords::tr("on the bench");
    case bench::PieceProgress::Resting:
        break;
    case bench::PieceProgress::Ready:
        return DoorWords::tr("may be collected");
    case bench::PieceProgress::HandedOver:
        return DoorWords::tr("handed over");
    case bench::PieceProgress::ReturnedUnmended:
        return DoorWords::tr("went back unmended");
    }
    const auto from = bench::handOverFrom(piece, book);
    return from ? DoorWords::tr("resting, may be collected from %1")
                      .arg(dayWords(bench::collectableDay(from->at, dayOf), manner))
                : DoorWords::tr("resting");
}

QString doorTold(const bench::Event& event, const Manner& manner)
{
    const Money money(event.amount.value_or(0), event.word);
    switch (event.what) {
    case What::Received:
        return DoorWords::tr("Received");
    case What::CameBack:
        return came(event.word);
    case What::FaultNamed:
        return event.mix.isSet() ? DoorWords::tr("What gave way: the batch") : DoorWords::tr("What gave way: the join");
    case What::FragmentFound:
        return DoorWords::tr("Fragments found: %1").arg(event.amount.value_or(1));
    case What::MaterialRemoved:
        return DoorWords::tr("Cut out of it: %1").arg(text(event.word));
    case What::Promised: {
        const auto day = dayFrom(event.word);
        return DoorWords::tr("Promised for %1").arg(day ? dayWords(*day, manner) : text(event.word));
    }
    case What::PriceAgreed:
        return DoorWords::tr("Price agreed: %1").arg(moneyWords(money, manner));
    case What::Paid:
        return money.minorUnits() < 0 ? DoorWords::tr("Given back: %1")
                                            .arg(moneyWords(Money(-money.minorUnits(), money.currency()), manner))
                                      : DoorWords::tr("Paid: %1").arg(moneyWords(money, manner));
    case What::NoticeGiven:
        return DoorWords::tr("Notice given that it lies here unclaimed, %1").arg(wayWords(event.word));
    case What::OwnerTold:
        return DoorWords::tr("Its owner was told, %1").arg(wayWords(event.word));
    case What::Counted:
        return countedWords(event);
    case What::WaitShortened:
        return DoorWords::tr("May go before the wait is over");
    case What::ConsentGiven:
        return event.word == "drawn" ? DoorWords::tr("Consent signed on the screen")
                                     : DoorWords::tr("Consent signed on paper");
    default:
        return {};
    }
}

QString mayBeCollectedWords(const bench::CounterFacts& facts)
{
    return countWords(facts.mayBeCollected.size(), QT_TRANSLATE_NOOP("DoorWords", "1 piece may be collected"),
                      QT_TRANSLATE_N_NOOP("DoorWords", "%n pieces may be collected"));
}

QString lateWords(const bench::CounterFacts& facts)
{
    return countWords(facts.late.size(), QT_TRANSLATE_NOOP("DoorWords", "1 piece is late"),
                      QT_TRANSLATE_N_NOOP("DoorWords", "%n pieces are late"));
}

QString waitsForOwnerWords(const bench::CounterFacts& facts)
{
    return countWords(facts.waitsForOwner.size(), QT_TRANSLATE_NOOP("DoorWords", "1 piece waits for its owner"),
                      QT_TRANSLATE_N_NOOP("DoorWords", "%n pieces wait for their owners"));
}

QString toCallWords(const bench::CounterFacts& facts)
{
    return countWords(facts.toCall.size(), QT_TRANSLATE_NOOP("DoorWords", "1 owner has to be told of a later day"),
                      QT_TRANSLATE_N_NOOP("DoorWords", "%n owners have to be told of a later day"));
}

QString unclaimedWords(const bench::CounterFacts& facts)
{
    return countWords(facts.unclaimed.size(),
                      QT_TRANSLATE_NOOP("DoorWords", "1 piece lies here unclaimed: local law says what may follow"),
                      QT_TRANSLATE_N_NOOP("DoorWords", "%n pieces lie here unclaimed: local law says what may follow"));
}

QString promiseWords(const bench::PromiseJudgement& judgement, const QString& material, const Manner& manner)
{
    if (judgement.daysTooEarly == 0 || !judgement.earliest) {
        return {};
    }
    const QString day = dayWords(*judgement.earliest, manner);
    const QString when = judgement.daysTooEarly == 1
                             ? DoorWords::tr("That is a day too early")
                             : DoorWords::tr("That is %n days too early", nullptr, judgement.daysTooEarly);
    return material.isEmpty() ? DoorWords::tr("%1: the work takes until %2 at the least").arg(when, day)
                              : DoorWords::tr("%1: its %2 waits until %3 at the least").arg(when, material, day);
}

} // namespace mend::service
