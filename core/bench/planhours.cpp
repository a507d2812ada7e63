#include "core/bench/planhours.h"

#include <algorithm>

namespace mend::bench {

namespace {

using Ranges = std::vector<InstantRange>;

/// Cut to `within`, in order, what touches made one.
Ranges joined(Ranges ranges, InstantRange within)
{
    std::ranges::sort(ranges, {}, &InstantRange::from);
    Ranges whole;
    for (InstantRange each : ranges) {
        each = {std::max(each.from, within.from), std::min(each.to, within.to)};
        if (each.from >= each.to) {
            continue;
        }
        if (!whole.empty() && each.from <= whole.back().to) {
            whole.back().to = std::max(whole.back().to, each.to);
        } else {
            whole.push_back(each);
        }
    }
    return whole;
}

/// What is left of one stretch without `gone`, which is in order.
Ranges without(InstantRange stretch, const Ranges& gone)
{
    Ranges left;
    for (const InstantRange& each : gone) {
        if (each.to <= stretch.from || each.from >= stretch.to) {
            continue;
        }
        if (each.from > stretch.from) {
            left.push_back({stretch.from, each.from});
        }
        stretch.from = std::max(stretch.from, each.to);
    }
    if (stretch.from < stretch.to) {
        left.push_back(stretch);
    }
    return left;
}

} // namespace

Staffing staffingOf(const Roster& roster, const PlanFacts& facts, InstantRange within)
{
    Staffing staffing;
    std::vector<Ranges> hours;
    Ranges everybody;
    const auto add = [&](PersonId id, const Ranges& theirs) {
        staffing.people.push_back(id);
        hours.push_back(joined(theirs.empty() ? Ranges{within} : theirs, within));
        everybody.insert(everybody.end(), hours.back().begin(), hours.back().end());
    };
    for (const record::Person& person : roster.people) {
        const auto own = facts.hours.find(person.id);
        add(person.id, own != facts.hours.end() ? own->second : roster.openHours);
    }
    if (roster.people.empty()) {
        add(PersonId{}, roster.openHours);
    }
    staffing.open = joined(everybody, within);
    for (std::size_t i = 1; i < staffing.open.size(); ++i) {
        const Span pause = staffing.open[i].from - staffing.open[i - 1].to;
        staffing.shortestPause = std::min(staffing.shortestPause.value_or(pause), pause);
    }
    for (const InstantRange& open : staffing.open) {
        for (const Ranges& theirs : hours) {
            for (const InstantRange& away : without(open, theirs)) {
                staffing.taken.push_back({away, "away"});
            }
        }
        for (const Booking& booking : facts.bookings) {
            const InstantRange part{std::max(open.from, booking.when.from), std::min(open.to, booking.when.to)};
            if (part.from < part.to) {
                staffing.taken.push_back({part, booking.what});
            }
        }
    }
    return staffing;
}

} // namespace mend::bench
