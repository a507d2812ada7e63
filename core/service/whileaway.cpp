#include "core/service/whileaway.h"

#include <QCoreApplication>

#include <algorithm>

namespace mend::service {

using bench::ActKind;
using bench::Alert;
using bench::AlertKind;

namespace {

// What a translator finds these words under.
class WhileAwayWords {
    Q_DECLARE_TR_FUNCTIONS(WhileAwayWords)
};

QString timeWords(const bench::MissedAlert& missed, AlertKind kind)
{
    const QString time = spanWords(missed.time);
    if (missed.savable) {
        return WhileAwayWords::tr("%1 left").arg(time);
    }
    return kind == AlertKind::Opens  ? WhileAwayWords::tr("may be done since %1").arg(time)
           : kind == AlertKind::Done ? WhileAwayWords::tr("under hands since %1").arg(time)
                                     : WhileAwayWords::tr("closed %1 ago").arg(time);
}

/// Past its close the three of the card; before it the same question in the words that are still open.
std::array<bench::CardAct, 3> answersTo(const bench::MissedAlert& missed, const Alert& alert)
{
    const auto act = [&](ActKind kind) { return bench::CardAct{kind, alert.stage, {}}; };
    const bool isPast = !missed.savable && (alert.kind == AlertKind::Closes || alert.kind == AlertKind::Closed);
    if (isPast) {
        return {act(ActKind::WasInTime), act(ActKind::DoingLate), act(ActKind::NotDone)};
    }
    const ActKind last = alert.kind == AlertKind::Opens ? ActKind::NotYet : ActKind::NotDone;
    return {act(ActKind::HandsOnIt), act(ActKind::WasInTime), act(last)};
}

} // namespace

std::vector<MissedLine> missedLines(const bench::MissedReport& report, std::span<const Alert> alerts)
{
    std::vector<MissedLine> lines;
    for (const bench::MissedAlert& missed : report.lines) {
        const auto alert = std::ranges::find(alerts, missed.key, &Alert::key);
        if (alert == alerts.end()) {
            continue;
        }
        lines.push_back({missed.key, alert->piece, text(alert->benchName), text(alert->act),
                         timeWords(missed, alert->kind), missed.savable, answersTo(missed, *alert)});
    }
    return lines;
}

} // namespace mend::service
