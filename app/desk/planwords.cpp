#include "app/desk/planwords.h"

#include <QStringList>

namespace mend::desk {

namespace {

using plan::slot;
using plan::Strain;
using plan::WayOut;

QString clockWords(plan::Minute minute)
{
    const plan::Minute day = minute >= 0 ? minute / 1440 : -((1439 - minute) / 1440);
    const plan::Minute inDay = minute - day * 1440;
    return QStringLiteral("day %1 %2:%3")
        .arg(day)
        .arg(inDay / 60, 2, 10, QLatin1Char('0'))
        .arg(inDay % 60, 2, 10, QLatin1Char('0'));
}

QString lagWords(const plan::Problem& problem, int which)
{
    const plan::Lag& lag = problem.lags[slot(which)];
    return QStringLiteral("%1 after %2")
        .arg(QString::fromStdString(problem.steps[slot(lag.to)].id),
             QString::fromStdString(problem.steps[slot(lag.from)].id));
}

QString shutWords(const plan::Problem& problem, int which)
{
    const auto& open = problem.open;
    if (open.empty()) {
        return QStringLiteral("the bench is never open");
    }
    if (which == 0) {
        return QStringLiteral("the bench is shut until %1").arg(clockWords(open.front().from));
    }
    const QString from = clockWords(open[slot(which) - 1].to);
    return slot(which) < open.size()
               ? QStringLiteral("the bench is shut from %1 to %2").arg(from, clockWords(open[slot(which)].from))
               : QStringLiteral("the bench is shut from %1").arg(from);
}

QString strainWords(const plan::Problem& problem, const Strain& strain)
{
    const std::size_t which = slot(strain.which);
    switch (strain.kind) {
    case Strain::Kind::Window:
        return QStringLiteral("%1 at most %2 min")
            .arg(lagWords(problem, strain.which))
            .arg(problem.lags[which].most.value_or(0));
    case Strain::Kind::Minimum:
        return QStringLiteral("%1 at least %2 min").arg(lagWords(problem, strain.which)).arg(problem.lags[which].least);
    case Strain::Kind::Hands:
        return QStringLiteral("hands of %1").arg(problem.people.size());
    case Strain::Kind::Place:
        return QStringLiteral("%1: room for %2")
            .arg(QString::fromStdString(problem.resources[which].id))
            .arg(problem.resources[which].capacity);
    case Strain::Kind::Apart:
        return QStringLiteral("%1 and %2 never together")
            .arg(QString::fromStdString(problem.incompatible[which].first),
                 QString::fromStdString(problem.incompatible[which].second));
    case Strain::Kind::Hours:
        return shutWords(problem, strain.which);
    case Strain::Kind::Earliest:
        return QStringLiteral("%1 not before %2")
            .arg(QString::fromStdString(problem.steps[which].id),
                 clockWords(problem.steps[which].earliest.value_or(0)));
    case Strain::Kind::LatestEnd:
        return QStringLiteral("%1 done by %2")
            .arg(QString::fromStdString(problem.steps[which].id),
                 clockWords(problem.steps[which].latestEnd.value_or(0)));
    case Strain::Kind::Horizon:
        return QStringLiteral("all done by %1").arg(clockWords(problem.horizon));
    case Strain::Kind::Order:
        return lagWords(problem, strain.which);
    }
    return {};
}

QString wayWords(const plan::Problem& problem, const WayOut& way)
{
    const std::size_t which = slot(way.which);
    switch (way.kind) {
    case WayOut::Kind::AnotherPlace:
        return QStringLiteral("one more place: %1").arg(QString::fromStdString(problem.resources[which].id));
    case WayOut::Kind::HelpingHand:
        return QStringLiteral("another pair of hands for %1 min from %2").arg(way.minutes).arg(clockWords(way.at));
    case WayOut::Kind::StayOpen:
        return way.sooner
                   ? QStringLiteral("open at %1, %2 min sooner").arg(clockWords(way.at)).arg(way.minutes)
                   : QStringLiteral("stay open until %1, %2 min longer").arg(clockWords(way.at)).arg(way.minutes);
    case WayOut::Kind::SetAside:
        return QStringLiteral("leave %1 for another time").arg(QString::fromStdString(problem.pieces[which].id));
    case WayOut::Kind::LetLapse:
        return QStringLiteral("let the window lapse, by %2 min: %1").arg(lagWords(problem, way.which)).arg(way.minutes);
    }
    return {};
}

} // namespace

QString whyNotWords(const plan::Problem& problem, const plan::WhyNot& why)
{
    QStringList lines{QStringLiteral("there is no plan")};
    for (const plan::Conflict& conflict : why.conflicts) {
        lines << QStringLiteral("these cannot hold together:");
        for (const Strain& strain : conflict.strains) {
            lines << QStringLiteral("  ") + strainWords(problem, strain);
        }
    }
    lines << (why.waysOut.empty() ? QStringLiteral("no single change was found that helps")
                                  : QStringLiteral("each of these would help:"));
    for (const WayOut& way : why.waysOut) {
        lines << QStringLiteral("  ") + wayWords(problem, way);
    }
    return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

} // namespace mend::desk
