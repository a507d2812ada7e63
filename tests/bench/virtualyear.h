#pragma once

#include "core/rules/rulebook.h"

#include <cstdint>
#include <string>
#include <vector>

namespace mend::bench::test {

/// What one virtual year came to.
struct YearFigures {
    int days = 0;
    double inHand = 0; ///< pieces being worked on, averaged over the year
    int acts = 0;      ///< events told of stages
    int looks = 0;     ///< times the desk was asked
    int sleeps = 0;
    int restarts = 0;
    int clockSteps = 0;
    int unlikeAfterRestart = 0; ///< restarts after which the bench was not what it was
    // The costly windows.
    int costly = 0;        ///< all that could be alarmed
    int actedBefore = 0;   ///< begun before their first alert
    int heardInTime = 0;   ///< sounded before their latest start
    int missedAsleep = 0;  ///< latest start went by asleep; stood in the report
    int movedIntoPast = 0; ///< a fact or a reading moved the latest start behind now; sounded in the same look
    int gone = 0;          ///< taken back or withdrawn with its piece before any of these
    std::vector<std::string> unheard; ///< none of these: a fault
    // The alarms.
    int early = 0;
    int duplicates = 0;
    int alerts = 0; ///< sounding alerts, each once
    int a = 0;
    int b = 0;
    int c = 0;
    int bursts = 0; ///< bursts that announced something, with all that joined their lists
    /// Of sounding alerts. What had waited (asleep, after hours, busy hands) is read from a list after one burst: the
    /// list counts as one.
    int mostInTenMinutes = 0;
    /// Of alerts heard one by one: by a burst of their own, or by a line of their own of the voice, at most three of
    /// which follow one burst.
    int mostHeard = 0;
    int mostAnnounced = 0;      ///< every line of every list, also those that are only seen
    int floods = 0;             ///< ten-minute stretches with more than ten sounding alerts
    int chattering = 0;         ///< alerts announced three times within a minute
    double benchTenMinutes = 0; ///< how many ten-minute stretches of bench hours there were

    double shareOfA() const { return alerts > 0 ? static_cast<double>(a) / alerts : 0.0; }
    double perTenMinutes() const { return alerts / benchTenMinutes; }
};

/// Lives through a year of a studio with about eight pieces in hand from instant to instant: bench hours
/// in Central European time with its two changes, weekends, nights and naps asleep, kills, reboots, steps of the
/// clock, readings. The desk is the real one, and so are the fold, the windows and the rules.
YearFigures liveAYear(std::uint64_t seed, const rules::RuleBook& book, int days = 365);

} // namespace mend::bench::test
