#include "core/service/cardwording.h"
#include "core/service/figurewording.h"

#include <QCoreApplication>

#include <algorithm>

namespace mend::service {

namespace {

// What a translator finds these words under.
class WhyWords {
    Q_DECLARE_TR_FUNCTIONS(WhyWords)
};

QString trustWords(cure::Trust trust)
{
    switch (trust) {
    case cure::Trust::Read:
        return WhyWords::tr("read");
    case cure::Trust::Stale:
        return WhyWords::tr("reading too old: 3 °C to the safe side");
    case cure::Trust::Reference:
        return WhyWords::tr("no reading: the rule's own temperature");
    }
    return {};
}

QString energyWords(cure::EnergyEnd end)
{
    switch (end) {
    case cure::EnergyEnd::Low:
        return WhyWords::tr("slow end of the published band");
    case cure::EnergyEnd::Typical:
        return WhyWords::tr("middle of the published band");
    case cure::EnergyEnd::High:
        return WhyWords::tr("fast end of the published band");
    }
    return {};
}

const char* figureSaid(bench::FigureOf of)
{
    switch (of) {
    case bench::FigureOf::Opens:
        return QT_TRANSLATE_NOOP("WhyWords", "Opens: counted from %1 (fact %2)");
    case bench::FigureOf::OpensAtLatest:
        return QT_TRANSLATE_NOOP("WhyWords", "Opens at the latest: counted from %1 (fact %2)");
    case bench::FigureOf::Recommended:
        return QT_TRANSLATE_NOOP("WhyWords", "Best from: counted from %1 (fact %2)");
    case bench::FigureOf::Closes:
        return QT_TRANSLATE_NOOP("WhyWords", "Closes: counted from %1 (fact %2)");
    case bench::FigureOf::Lost:
        return QT_TRANSLATE_NOOP("WhyWords", "Lost: counted from %1 (fact %2)");
    }
    return "";
}

} // namespace

QStringList whyWords(const bench::Reckoning& reckoning, Instant now, const Manner& manner)
{
    QStringList lines;
    lines << WhyWords::tr(figureSaid(reckoning.of))
                 .arg(clockTime(reckoning.origin, now, manner))
                 .arg(reckoning.event.value());
    const QString source =
        reckoning.source.text.empty()
            ? markWords(reckoning.source.mark)
            : WhyWords::tr("%1 (%2)").arg(text(reckoning.source.text), markWords(reckoning.source.mark));
    lines << WhyWords::tr("%1 at %2: %3")
                 .arg(spanWords(reckoning.figure), temperatureWords(reckoning.reference, manner), source);
    if (std::holds_alternative<cure::Arrhenius>(reckoning.formula)) {
        lines << WhyWords::tr("Warmth hastens it by the Arrhenius law, %1").arg(energyWords(reckoning.end));
    } else if (std::holds_alternative<cure::HumidBand>(reckoning.formula)) {
        lines << WhyWords::tr("It goes on only in warm, damp air");
    } else {
        lines << WhyWords::tr("It goes by the clock");
    }
    for (const auto& air : reckoning.air.steps) {
        const QString humidity =
            air.humidity ? WhyWords::tr(", %1").arg(humidityWords(*air.humidity, manner)) : QString();
        lines << WhyWords::tr("From %1: %2%3, %4")
                     .arg(clockTime(std::max(air.from, reckoning.origin), now, manner),
                          temperatureWords(air.temperature, manner), humidity, trustWords(air.trust));
    }
    lines << (reckoning.result ? WhyWords::tr("So: %1").arg(clockTime(*reckoning.result, now, manner))
                               : WhyWords::tr("So: stalled, no time to give"));
    return lines;
}

} // namespace mend::service
