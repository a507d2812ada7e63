#include "core/service/nightwording.h"

#include <QCoreApplication>

namespace mend::service {

namespace {

// What a translator finds these words under.
class NightWords {
    Q_DECLARE_TR_FUNCTIONS(NightWords)
};

/// "Heron bowl: Wipe back the filler".
QString workOf(const bench::Window& window, const Names& names)
{
    const auto found = names.pieces.find(window.piece);
    return found == names.pieces.end() ? text(window.act)
                                       : NightWords::tr("%1: %2").arg(isolated(found->second), text(window.act));
}

QString waitOf(const bench::Window& window, const Names& names, Instant now, const Manner& manner)
{
    if (window.stalled || !window.opens) {
        return NightWords::tr("%1, stalled: it makes no progress where it lies").arg(workOf(window, names));
    }
    const QString from = clockTime(*window.opens, now, manner);
    const QString to = clockTime(window.opensAtLatest.value_or(*window.opens), now, manner);
    return from == to ? NightWords::tr("%1, from %2").arg(workOf(window, names), from)
                      : NightWords::tr("%1, about %2 to %3").arg(workOf(window, names), from, to);
}

} // namespace

QStringList nightWords(const bench::NightAhead& night, const Names& names, Instant now, const Manner& manner)
{
    QStringList lines;
    const QString morning = clockTime(night.morning, now, manner);
    for (const bench::Window& window : night.closesAlone) {
        lines << NightWords::tr("Before you go: %1, start by %2 (%3)")
                     .arg(workOf(window, names), clockTime(*window.latestStart, now, manner), missWords(window.miss));
    }
    for (const bench::Window& wait : night.notCured) {
        lines << NightWords::tr("Not cured by %1: %2").arg(morning, waitOf(wait, names, now, manner));
    }
    for (const bench::Window& wait : night.overByMorning) {
        lines << NightWords::tr("Ready by %1: %2").arg(morning, waitOf(wait, names, now, manner));
    }
    QStringList on;
    for (const PlaceId place : night.staysOn) {
        const auto found = names.places.find(place);
        on << (found == names.places.end() ? QString() : isolated(found->second));
    }
    on.removeAll(QString());
    if (!on.isEmpty()) {
        lines << NightWords::tr("Has to stay on: %1").arg(on.join(QStringLiteral(", ")));
    }
    if (lines.isEmpty()) {
        lines << NightWords::tr("Nothing closes before %1 and nothing has to cure.").arg(morning);
    }
    if (!night.isTold) {
        lines << NightWords::tr("No bench hours are told for tomorrow: twelve hours are taken.");
    }
    return lines;
}

QStringList endedWords(const std::vector<bench::Window>& ended, const Names& names, Instant now, const Manner& manner)
{
    QStringList lines;
    for (const bench::Window& window : ended) {
        lines << NightWords::tr("%1, may be done since %2")
                     .arg(workOf(window, names), clockTime(*window.opens, now, manner));
    }
    return lines;
}

} // namespace mend::service
