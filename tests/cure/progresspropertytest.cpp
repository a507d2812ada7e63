#include "core/cure/progress.h"

#include "tests/cure/samples.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::cure;
using namespace mend::cure::samples;

// What must hold for any air, any law and any instants: 10,000 cases each, always the same ones.

namespace {

constexpr int cases = 10'000;

struct Case {
    Law law;
    EnergyEnd end;
    Temperature reference;
    Climate climate;
    Instant from;
    Span span;
    Span warmThrough;
};

Case anyCase(Random& random, const Law& law)
{
    return {law,
            anyEnd(random),
            anyTemperature(random, 15, 30),
            anyClimate(random),
            evening + Span{between(random, 0, hours(24).count())},
            Span{between(random, 0, hours(36).count())},
            anyWarmThrough(random)};
}

Span served(const Case& c, Instant from, Instant until)
{
    return progress(c.law, c.end, c.reference, c.climate, from, until, c.warmThrough).served;
}

std::optional<WaitForecast> forecast(const Case& c)
{
    return forecastWait(c.span, c.law, c.reference, c.climate, c.from, c.warmThrough);
}

/// The same air, each step warmer by up to five degrees.
Climate warmed(Random& random, Climate climate)
{
    for (Air& air : climate.steps) {
        air.temperature = air.temperature + TemperatureStep::fromCount(between(random, 0, 500));
    }
    return climate;
}

Climate shifted(Climate climate, Span by)
{
    for (Air& air : climate.steps) {
        air.from += by;
    }
    return climate;
}

} // namespace

TEST(ProgressProperty, SplittingTheTimeChangesNothing)
{
    Random random(20'260'201);
    for (int i = 0; i < cases; ++i) {
        const Case c = anyCase(random, anyLaw(random));
        const Instant until = c.from + c.span;
        const Instant cut = c.from + Span{between(random, 0, c.span.count())};
        const Span parts = served(c, c.from, cut) + served(c, cut, until);
        const Span whole = served(c, c.from, until);
        // Each part is rounded down, so together they may miss one millisecond and never gain one.
        ASSERT_LE(parts, whole) << "case " << i;
        ASSERT_GE(parts + Span{1}, whole) << "case " << i;
    }
}

TEST(ProgressProperty, AReadingThatChangesNothingChangesNothing)
{
    Random random(20'260'202);
    for (int i = 0; i < cases; ++i) {
        Case c = anyCase(random, anyLaw(random));
        const Span before = served(c, c.from, c.from + c.span);
        const auto forecastBefore = forecast(c);
        const Instant closeBefore = forecastClose(c.span, c.law, c.reference, c.climate, c.from);
        const Instant at = c.climate.steps.front().from + Span{between(random, 0, hours(48).count())};
        Air again = c.climate.at(at);
        again.from = at;
        const auto next = std::ranges::upper_bound(c.climate.steps, at, {}, &Air::from);
        c.climate.steps.insert(next, again);
        ASSERT_EQ(served(c, c.from, c.from + c.span), before) << "case " << i;
        ASSERT_EQ(forecast(c), forecastBefore) << "case " << i;
        ASSERT_EQ(forecastClose(c.span, c.law, c.reference, c.climate, c.from), closeBefore) << "case " << i;
    }
}

TEST(ProgressProperty, WarmerIsNeverLater)
{
    Random random(20'260'203);
    int compared = 0;
    for (int i = 0; i < cases; ++i) {
        Case c = anyCase(random, anyArrhenius(random));
        const auto cool = forecast(c);
        const Instant coolClose = forecastClose(c.span, c.law, c.reference, c.climate, c.from);
        c.climate = warmed(random, c.climate);
        const auto warm = forecast(c);
        ASSERT_LE(forecastClose(c.span, c.law, c.reference, c.climate, c.from), coolClose) << "case " << i;
        if (cool) {
            ++compared;
            ASSERT_TRUE(warm) << "case " << i;
            ASSERT_LE(warm->early, cool->early) << "case " << i;
            ASSERT_LE(warm->typical, cool->typical) << "case " << i;
            ASSERT_LE(warm->late, cool->late) << "case " << i;
        }
    }
    EXPECT_GT(compared, cases / 2);
}

TEST(ProgressProperty, CoolerNeverShortensAWaitNorStretchesAClosing)
{
    Random random(20'260'204);
    int compared = 0;
    for (int i = 0; i < cases; ++i) {
        Case c = anyCase(random, anyArrhenius(random));
        const auto before = forecast(c);
        const Span servedBefore = served(c, c.from, c.from + c.span);
        const TemperatureStep colder = TemperatureStep::fromCount(between(random, 1, 1500));
        for (Air& air : c.climate.steps) {
            air.temperature = air.temperature - colder;
        }
        const auto after = forecast(c);
        ASSERT_LE(served(c, c.from, c.from + c.span), servedBefore) << "case " << i;
        ASSERT_LE(forecastClose(c.span, c.law, c.reference, c.climate, c.from), c.from + c.span) << "case " << i;
        if (before && after) {
            ++compared;
            ASSERT_GE(after->early, before->early) << "case " << i;
            ASSERT_GE(after->typical, before->typical) << "case " << i;
            ASSERT_GE(after->late, before->late) << "case " << i;
        } else {
            ASSERT_FALSE(after) << "case " << i << ": the cold ended a stall";
        }
    }
    EXPECT_GT(compared, cases / 4);
}

TEST(ProgressProperty, AClosingIsNeverAfterTheClockSaysSo)
{
    Random random(20'260'205);
    int sooner = 0;
    for (int i = 0; i < cases; ++i) {
        const Case c = anyCase(random, anyLaw(random));
        const Instant close = forecastClose(c.span, c.law, c.reference, c.climate, c.from);
        ASSERT_GE(close, c.from) << "case " << i;
        ASSERT_LE(close, c.from + c.span) << "case " << i;
        sooner += close < c.from + c.span ? 1 : 0;
    }
    EXPECT_GT(sooner, cases / 4);
}

TEST(ProgressProperty, TimeIsTimeAtTheReference)
{
    Random random(20'260'206);
    for (int i = 0; i < cases; ++i) {
        Arrhenius law = anyArrhenius(random);
        Case c = anyCase(random, law);
        law.noCreditBelow = c.reference;
        law.noExtraAbove = std::max(law.noExtraAbove, c.reference);
        c.law = law;
        for (Air& air : c.climate.steps) {
            air.temperature = c.reference;
        }
        const Instant until = c.from + c.span;
        ASSERT_EQ(served(c, c.from, until), c.span) << "case " << i;
        ASSERT_EQ(forecast(c), (WaitForecast{until, until, until})) << "case " << i;
        ASSERT_EQ(forecastClose(c.span, c.law, c.reference, c.climate, c.from), until) << "case " << i;
    }
}

TEST(ProgressProperty, TheSameDayLaterGivesTheSameLater)
{
    Random random(20'260'207);
    for (int i = 0; i < cases; ++i) {
        const Case c = anyCase(random, anyLaw(random));
        const Span by{between(random, -hours(9'000).count(), hours(9'000).count())};
        Case later = c;
        later.from += by;
        later.climate = shifted(c.climate, by);
        ASSERT_EQ(served(later, later.from, later.from + c.span), served(c, c.from, c.from + c.span)) << "case " << i;
        const auto then = forecast(c);
        const auto moved = forecast(later);
        ASSERT_EQ(moved.has_value(), then.has_value()) << "case " << i;
        if (then) {
            ASSERT_EQ(*moved, (WaitForecast{then->early + by, then->typical + by, then->late + by, then->lateEnd}))
                << "case " << i;
        }
        ASSERT_EQ(forecastClose(c.span, c.law, c.reference, later.climate, later.from),
                  forecastClose(c.span, c.law, c.reference, c.climate, c.from) + by)
            << "case " << i;
    }
}

TEST(ProgressProperty, AForecastIsTheFirstMillisecondThatServes)
{
    Random random(20'260'208);
    int met = 0;
    for (int i = 0; i < cases; ++i) {
        Case c = anyCase(random, anyLaw(random));
        c.span += Span{1};
        const auto found = forecast(c);
        if (!found) {
            continue;
        }
        ++met;
        c.end = EnergyEnd::Typical;
        ASSERT_GE(served(c, c.from, found->typical), c.span) << "case " << i;
        ASSERT_LT(served(c, c.from, found->typical - Span{1}), c.span) << "case " << i;
        int reachedEarly = 0;
        for (const EnergyEnd end : {EnergyEnd::Low, EnergyEnd::Typical, EnergyEnd::High}) {
            c.end = end;
            ASSERT_GE(served(c, c.from, found->late), c.span) << "case " << i << ": every end is there by the late one";
            ASSERT_LT(served(c, c.from, found->early - Span{1}), c.span) << "case " << i;
            reachedEarly += served(c, c.from, found->early) >= c.span ? 1 : 0;
        }
        ASSERT_GE(reachedEarly, 1) << "case " << i;
    }
    EXPECT_GT(met, cases / 2);
}

TEST(ProgressProperty, ALateForecastIsEmptyOnlyWhereTheLastAirStalls)
{
    Random random(20'260'209);
    int stalls = 0;
    for (int i = 0; i < cases; ++i) {
        const Case c = anyCase(random, anyLaw(random));
        if (!forecast(c)) {
            ++stalls;
            const Progress end =
                progress(c.law, c.end, c.reference, c.climate, c.from, c.from + hours(1'000), c.warmThrough);
            ASSERT_TRUE(end.stalled) << "case " << i;
        }
    }
    EXPECT_GT(stalls, cases / 20);
}
