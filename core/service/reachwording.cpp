#include "core/service/reachwording.h"

#include <QCoreApplication>

#include <cmath>

namespace mend::service {

namespace {

// What a translator finds these words under.
class ReachWords {
    Q_DECLARE_TR_FUNCTIONS(ReachWords)
};

constexpr double centimetresInInch = 2.54;

/// "at 26 °C", or that nobody has read the bench.
QString heatWords(const std::optional<Temperature>& temperature, const Manner& manner)
{
    return temperature ? ReachWords::tr("at %1").arg(temperatureWords(*temperature, manner))
                       : ReachWords::tr("bench not read yet");
}

/// "7 cm of chip", "25 cm of seam", both, or how many joins.
QString amountWords(Length chip, Length seam, int joins, const Manner& manner)
{
    QStringList parts;
    if (chip > Length{}) {
        parts << ReachWords::tr("%1 of chip").arg(runWords(chip, manner));
    }
    if (seam > Length{}) {
        parts << ReachWords::tr("%1 of seam").arg(runWords(seam, manner));
    }
    if (joins > 0) {
        parts = QStringList{joins == 1 ? ReachWords::tr("1 join") : ReachWords::tr("%n joins", nullptr, joins)};
    }
    return parts.join(ReachWords::tr(" and "));
}

/// Seconds, as they are counted: 75 s is not a minute.
QString secondsWords(Span span)
{
    return span < std::chrono::minutes(3)
               ? ReachWords::tr("%1 s").arg(std::chrono::floor<std::chrono::seconds>(span).count())
               : spanWords(span);
}

QString listed(const std::vector<PieceId>& pieces, const Names& names)
{
    QStringList said;
    for (const PieceId piece : pieces) {
        const auto found = names.pieces.find(piece);
        said << (found == names.pieces.end() ? QString() : isolated(found->second));
    }
    said.removeAll(QString());
    const QString last = said.size() > 1 ? said.takeLast() : QString();
    const QString first = said.join(QStringLiteral(", "));
    return last.isEmpty() ? first : ReachWords::tr("%1 and %2").arg(first, last);
}

QString countedWords(const bench::CountedReach& counted, const std::optional<Temperature>& temperature,
                     const Manner& manner)
{
    if (!counted.isHot) {
        return ReachWords::tr("in place %1 after mixing begins (%2)")
            .arg(secondsWords(counted.goalNow), heatWords(temperature, manner));
    }
    const QString joins = counted.joinsNow == 1 ? ReachWords::tr("1 join from one mix")
                                                : ReachWords::tr("%n joins from one mix", nullptr, counted.joinsNow);
    return ReachWords::tr("only %1 %2: %3. %4")
        .arg(secondsWords(counted.goalNow), heatWords(temperature, manner), text(counted.advice), joins);
}

/// ", then wipe": what has to fit in as well.
QString thenWords(const bench::Reach& reach)
{
    return reach.finish.empty() ? QString() : ReachWords::tr(", then %1").arg(text(reach.finish).toLower());
}

/// "a run is at most 7 cm of chip or 25 cm of seam"
QString oneRunWords(const bench::Reach& reach, const Manner& manner)
{
    QStringList ways;
    if (reach.chipInOne) {
        ways << ReachWords::tr("%1 of chip").arg(runWords(*reach.chipInOne, manner));
    }
    if (reach.seamInOne) {
        ways << ReachWords::tr("%1 of seam").arg(runWords(*reach.seamInOne, manner));
    }
    if (ways.isEmpty()) {
        return {};
    }
    const QString most = ways.join(ReachWords::tr(" or "));
    return ReachWords::tr("one run is %1 at most").arg(most) + thenWords(reach);
}

} // namespace

QString runWords(Length length, const Manner& manner)
{
    if (manner.inches) {
        const double inches = std::floor(inCentimetres(length) / centimetresInInch * 10.0) / 10.0;
        return ReachWords::tr("%1 in").arg(manner.locale.toString(inches, 'f', 1));
    }
    const double exact = inCentimetres(length);
    if (exact < 3.0) {
        return ReachWords::tr("%1 cm").arg(manner.locale.toString(std::floor(exact * 2.0) / 2.0, 'g', 2));
    }
    return ReachWords::tr("%1 cm").arg(static_cast<int>(std::floor(exact)));
}

QString reachShort(const bench::Reach& reach, const Manner& manner)
{
    if (reach.counted) {
        return ReachWords::tr("place in %1").arg(secondsWords(reach.counted->goalNow));
    }
    if (reach.chipInOne) {
        return ReachWords::tr("%1 of chip").arg(runWords(*reach.chipInOne, manner));
    }
    if (reach.seamInOne) {
        return ReachWords::tr("%1 of seam").arg(runWords(*reach.seamInOne, manner));
    }
    return reach.life ? ReachWords::tr("lasts %1").arg(spanWords(*reach.life)) : QString();
}

QString reachWords(const bench::Reach& reach, const Names& names, const Manner& manner)
{
    if (reach.counted) {
        return countedWords(*reach.counted, reach.temperature, manner);
    }
    QStringList sentences;
    if (!reach.shares.empty()) {
        std::vector<PieceId> pieces;
        Length chip;
        Length seam;
        int joins = 0;
        for (const bench::ReachShare& share : reach.shares) {
            pieces.push_back(share.piece);
            chip += share.chip;
            seam += share.seam;
            joins += share.joins;
        }
        const QString amount = amountWords(chip, seam, joins, manner);
        QString line =
            ReachWords::tr("%1 one pair of hands: %2").arg(heatWords(reach.temperature, manner), listed(pieces, names));
        line += amount.isEmpty() ? QString() : ReachWords::tr(", %1").arg(amount);
        line += thenWords(reach);
        sentences << line;
    } else if (const QString run = oneRunWords(reach, manner); !run.isEmpty()) {
        sentences << ReachWords::tr("%1 %2").arg(heatWords(reach.temperature, manner), run);
    }
    if (!reach.nextMix.empty()) {
        sentences << ReachWords::tr("%1 from the next mix").arg(listed(reach.nextMix, names));
    }
    if (sentences.isEmpty() && reach.life) {
        sentences << ReachWords::tr("%1 it lasts %2").arg(heatWords(reach.temperature, manner), spanWords(*reach.life));
    }
    return sentences.join(QStringLiteral("; "));
}

QString shareWords(const bench::Reason& reason, const Manner& manner)
{
    const QString heat = heatWords(reason.temperature, manner);
    if (!reason.share) {
        return reason.span ? ReachWords::tr("only %1 %2: %3").arg(secondsWords(*reason.span), heat, text(reason.text))
                           : text(reason.text);
    }
    const QString amount = amountWords(reason.share->chip, reason.share->seam, reason.share->joins, manner);
    return ReachWords::tr("%1 one mix does %2 of it; the rest from the next").arg(heat, amount);
}

} // namespace mend::service
