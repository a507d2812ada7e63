#include "tests/bench/virtualyear.h"

#include "tests/support/rulefiles.h"

#include <cstdlib>
#include <gtest/gtest.h>
#include <iostream>

// A year of one studio: 365 days, about eight pieces in hand, a mender who acts in the first half of 95 % of windows,
// sleep, steps of the clock, the two changes of summer time, kills and reboots. Limits: at most 10 % of sounding
// alerts are A, at most one in ten minutes on average, at most ten in any ten minutes, none that chatters (rates after
// ISA-18.2 / EEMUA 191 as quoted in public summaries). MEND_YEAR_SEEDS says how many, MEND_YEAR_FIRST where they begin.
namespace mend::bench::test {

namespace {

/// Twenty years where the compiler makes them quick, one where it does not.
int seeds()
{
#ifdef NDEBUG
    constexpr int usual = 20;
#else
    constexpr int usual = 1;
#endif
    const char* asked = std::getenv("MEND_YEAR_SEEDS");
    return asked ? std::atoi(asked) : usual;
}

int firstSeed()
{
    const char* asked = std::getenv("MEND_YEAR_FIRST");
    return asked ? std::atoi(asked) : 1;
}

void print(int seed, const YearFigures& year)
{
    std::cout << "year " << seed << ": " << year.inHand << " pieces in hand, " << year.looks << " looks, "
              << year.sleeps << " sleeps, " << year.restarts << " restarts, " << year.clockSteps
              << " clock steps\n  costly " << year.costly << ": begun before " << year.actedBefore << ", heard in time "
              << year.heardInTime << ", missed asleep " << year.missedAsleep << ", moved into the past "
              << year.movedIntoPast << ", gone " << year.gone << ", unheard " << year.unheard.size()
              << "\n  sounding alerts " << year.alerts << " (A " << year.a << ", B " << year.b << ", C " << year.c
              << "; A share " << year.shareOfA() << "), " << year.perTenMinutes()
              << " in ten minutes of bench hours, at most in any ten " << year.mostInTenMinutes << ", "
              << year.mostHeard << " heard one by one, " << year.mostAnnounced
              << " with every line of every list; floods " << year.floods << ", chattering " << year.chattering
              << ", early " << year.early << ", duplicates " << year.duplicates << '\n';
}

} // namespace

TEST(VirtualYear, LeavesNoCostlyWindowUnheardAndKeepsTheAlarmRates)
{
    const rules::RuleBook book = mend::test::shippedRules();
    int missedAsleep = 0;
    for (int seed = firstSeed(); seed < firstSeed() + seeds(); ++seed) {
        const YearFigures year = liveAYear(static_cast<std::uint64_t>(seed), book);
        print(seed, year);
        EXPECT_TRUE(year.unheard.empty()) << testing::PrintToString(year.unheard);
        EXPECT_EQ(year.early, 0);
        EXPECT_EQ(year.duplicates, 0);
        EXPECT_EQ(year.unlikeAfterRestart, 0);
        EXPECT_LE(year.shareOfA(), 0.10);
        EXPECT_LE(year.perTenMinutes(), 1.0);
        // A sounding alert is one that is heard for itself. What waited, and what falls due within fifteen seconds, is
        // one burst and one list: three lines are said, the rest are seen. Were its lines sounding alerts, the report
        // of a night with twelve openings would be a flood by itself, and 500 at once could never be one burst.
        EXPECT_LE(year.mostInTenMinutes, 10);
        EXPECT_LE(year.mostHeard, 10);
        EXPECT_EQ(year.chattering, 0);
        // The year must have been worth living.
        EXPECT_NEAR(year.inHand, 8.0, 1.5);
        EXPECT_GT(year.costly, 100);
        EXPECT_GT(year.heardInTime, 10);
        missedAsleep += year.missedAsleep;
        EXPECT_GT(year.restarts, 50);
        EXPECT_GT(year.sleeps, 200);
    }
    EXPECT_GT(missedAsleep, 0);
}

} // namespace mend::bench::test
