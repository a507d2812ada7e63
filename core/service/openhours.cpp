#include "core/service/openhours.h"

#include <QDateTime>

namespace mend::service {

using std::chrono::days;
using std::chrono::minutes;
using std::chrono::seconds;
using std::chrono::sys_days;
using std::chrono::year_month_day;

namespace {

seconds offsetAt(const QTimeZone& zone, Instant at)
{
    return seconds(zone.offsetFromUtc(QDateTime::fromMSecsSinceEpoch(at.time_since_epoch().count(), Qt::UTC)));
}

/// Where the offset changes between two instants that have different ones.
Instant jumpBetween(const QTimeZone& zone, Instant before, Instant after)
{
    const seconds old = offsetAt(zone, before);
    while (after - before > Span{1}) {
        const Instant middle = before + (after - before) / 2;
        (offsetAt(zone, middle) == old ? before : after) = middle;
    }
    return after;
}

} // namespace

Instant wallTime(year_month_day day, minutes sinceMidnight, const QTimeZone& zone, Twice twice)
{
    // What the wall shows, as if it were UTC; the offsets a day to either side are the two it may stand under.
    const Instant shown = sys_days(day) + sinceMidnight;
    const seconds earlier = offsetAt(zone, shown - days(1));
    const seconds later = offsetAt(zone, shown + days(1));
    const Instant byEarlier = shown - earlier;
    const Instant byLater = shown - later;
    const bool holdsEarlier = offsetAt(zone, byEarlier) == earlier;
    const bool holdsLater = offsetAt(zone, byLater) == later;
    if (holdsEarlier && holdsLater) {
        return twice == Twice::First ? std::min(byEarlier, byLater) : std::max(byEarlier, byLater);
    }
    if (holdsEarlier || holdsLater) {
        return holdsEarlier ? byEarlier : byLater;
    }
    return jumpBetween(zone, shown - days(1) - earlier, shown + days(1) - later);
}

year_month_day localDay(Instant at, const QTimeZone& zone)
{
    return year_month_day(std::chrono::floor<days>(at + offsetAt(zone, at)));
}

std::vector<InstantRange> openHours(const record::Hours& hours, const QTimeZone& zone, Instant from, Instant until)
{
    std::vector<InstantRange> open;
    const sys_days last(localDay(until, zone));
    for (sys_days day(localDay(from, zone)); day <= last; day += days(1)) {
        for (const record::DayPart& part : hours.on(day)) {
            const InstantRange range{wallTime(day, part.from, zone, Twice::First),
                                     wallTime(day, part.to, zone, Twice::Second)};
            if (range.from >= range.to) {
                continue; // the whole part was jumped over
            }
            if (!open.empty() && range.from <= open.back().to) {
                open.back().to = std::max(open.back().to, range.to);
            } else {
                open.push_back(range);
            }
        }
    }
    return open;
}

} // namespace mend::service
