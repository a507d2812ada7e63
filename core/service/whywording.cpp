#include "core/service/cardwording.h"
#include "core/service/figurewording.h"

#include <QCoreApplication>

#include <algorithm>

namespace mend::service {

namespace {

QString whyPhrase(const char* words) { return QCoreApplication::translate("Wording", words); }

QString trustWords(cure::Trust trust)
{
    switch (trust) {
    case cure::Trust::Read:
        return whyPhrase("read");
    case cure::Trust::Stale:
        return whyPhrase("reading too old: 3 °C to the safe side");
    case cure::Trust::Reference:
        return whyPhrase("no reading: the rule's own temperature");
    }
    return {};
}

QString energyWords(cure::EnergyEnd end)
{
    switch (end) {
    case cure::EnergyEnd::Low:
        return whyPhrase("slow end of the published band");
    case cure::EnergyEnd::Typical:
        return whyPhrase("middle of the published band");
    case cure::EnergyEnd::High:
        return whyPhrase("fast end of the published band");
    }
    return {};
}

const char* figureSaid(bench::FigureOf of)
{
    switch (of) {
    case bench::FigureOf::Opens:
        return "Opens: counted from %1 (fact %2)";
    case bench::FigureOf::OpensAtLatest:
        return "Opens at the latest: counted from %1 (fact %2)";
    case bench::FigureOf::Recommended:
        return "Best from: counted from %1 (fact %2)";
    case bench::FigureOf::Closes:
        return "Closes: counted from %1 (fact %2)";
    case bench::FigureOf::Lost:
        return "Lost: counted from %1 (fact %2)";
    }
    return "";
}

} // namespace

QStringList whyWords(const bench::Reckoning& reckoning, Instant now, const Manner& manner)
{
    QStringList lines;
    lines << whyPhrase(figureSaid(reckoning.of))
                 .arg(clockTime(reckoning.origin, now, manner))
                 .arg(reckoning.event.value());
    const QString source = reckoning.source.text.empty() ? markWords(reckoning.source.mark)
                                                         : whyPhrase("%1 (%2)").arg(text(reckoning.source.text),
                                                                                    markWords(reckoning.source.mark));
    lines << whyPhrase("%1 at %2: %3")
                 .arg(spanWords(reckoning.figure), temperatureWords(reckoning.reference, manner), source);
    if (std::holds_alternative<cure::Arrhenius>(reckoning.formula)) {
        lines << whyPhrase("Warmth hastens it by the Arrhenius law, %1").arg(energyWords(reckoning.end));
    } else if (std::holds_alternative<cure::HumidBand>(reckoning.formula)) {
        lines << whyPhrase("It goes on only in warm, damp air");
    } else {
        lines << whyPhrase("It goes by the clock");
    }
    for (const auto& air : reckoning.air.steps) {
        const QString humidity = air.humidity ? whyPhrase(", %1").arg(humidityWords(*air.humidity, manner)) : QString();
        lines << whyPhrase("From %1: %2%3, %4")
                     .arg(clockTime(std::max(air.from, reckoning.origin), now, manner),
                          temperatureWords(air.temperature, manner), humidity, trustWords(air.trust));
    }
    lines << (reckoning.result ? whyPhrase("So: %1").arg(clockTime(*reckoning.result, now, manner))
                               : whyPhrase("So: stalled, no time to give"));
    return lines;
}

} // namespace mend::service
