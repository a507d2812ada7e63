// Every figure of a window, worked out again from its "why" alone by an independent path: the rates are written
// down here once more from their published forms, and the sum is taken over the pieces of time by hand.

#include "tests/support/randombench.h"
#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace mend::bench {

namespace {

constexpr long double perMoleKelvin = 8.314462618L; // molar gas constant, CODATA 2018

long double kelvinOf(Temperature temperature)
{
    return static_cast<long double>(temperature.centidegrees()) / 100.0L + 273.15L;
}

/// exp(Ea/R (1/Tref - 1/T)) of ASTM C1074, over a bend as two factors.
long double arrheniusFactor(const cure::Arrhenius& law, long double low, long double high, Temperature to,
                            Temperature from)
{
    const auto along = [](long double energy, long double kelvin, long double reference) {
        return std::exp(energy / perMoleKelvin * (1.0L / reference - 1.0L / kelvin));
    };
    if (!law.bend) {
        return along(low, kelvinOf(to), kelvinOf(from));
    }
    const long double bend = kelvinOf(*law.bend);
    const auto fromBend = [&](Temperature at) { return along(at > *law.bend ? high : low, kelvinOf(at), bend); };
    return fromBend(to) / fromBend(from);
}

/// How fast what is reckoned goes on in air of that temperature and damp.
long double rateOf(const Reckoning& why, Temperature temperature, std::optional<Humidity> humidity)
{
    if (const auto* law = std::get_if<cure::Arrhenius>(&why.formula)) {
        const auto& band = law->energy;
        const auto& above = law->aboveBend;
        if (why.closing) { // the fast end, never slower than the clock, no upper limit
            return std::max(1.0L,
                            arrheniusFactor(*law, static_cast<long double>(band.high.count()),
                                            static_cast<long double>(above.high.count()), temperature, why.reference));
        }
        if (temperature < law->noCreditBelow) {
            return 0.0L;
        }
        const auto of = [&](const cure::EnergyBand& each) {
            return static_cast<long double>((why.end == cure::EnergyEnd::Low    ? each.low
                                             : why.end == cure::EnergyEnd::High ? each.high
                                                                                : each.typical)
                                                .count());
        };
        return arrheniusFactor(*law, of(band), of(above), std::min(temperature, law->noExtraAbove), why.reference);
    }
    if (const auto* band = std::get_if<cure::HumidBand>(&why.formula); band && !why.closing) {
        const bool inside = temperature >= band->coldest && temperature <= band->warmest && humidity &&
                            *humidity >= band->driest && *humidity <= band->dampest;
        return inside ? 1.0L : 0.0L;
    }
    return 1.0L;
}

const cure::Air& airAt(const Reckoning& why, Instant at)
{
    const cure::Air* found = &why.air.steps.front();
    for (const cure::Air& step : why.air.steps) {
        if (step.from <= at) {
            found = &step;
        }
    }
    return *found;
}

/// The coolest air of the last `warmThrough`, by looking at every step that reaches into it.
Temperature feltAt(const Reckoning& why, Instant at)
{
    Temperature coolest = airAt(why, at - why.warmThrough).temperature;
    for (const cure::Air& step : why.air.steps) {
        if (step.from > at - why.warmThrough && step.from <= at) {
            coolest = std::min(coolest, step.temperature);
        }
    }
    return coolest;
}

/// When the figure is served or used up; empty where it never is.
std::optional<Instant> resultOf(const Reckoning& why)
{
    std::set<Instant> edges;
    for (const cure::Air& step : why.air.steps) {
        edges.insert(step.from);
        edges.insert(step.from + why.warmThrough);
    }
    long double left = static_cast<long double>(why.figure.count());
    Instant at = why.origin;
    while (left > 0.0L) {
        const long double rate = rateOf(why, feltAt(why, at), airAt(why, at).humidity);
        const auto edge = edges.upper_bound(at);
        if (rate < 1e-6L && edge == edges.end()) {
            return std::nullopt;
        }
        const long double takes = rate < 1e-6L ? 1e18L : left / rate;
        if (edge == edges.end() || takes <= static_cast<long double>((*edge - at).count())) {
            return at + Span{static_cast<Span::rep>(std::llround(takes))};
        }
        left -= static_cast<long double>((*edge - at).count()) * rate;
        at = *edge;
    }
    return at;
}

bool agree(std::optional<Instant> one, std::optional<Instant> other)
{
    return one.has_value() == other.has_value() && (!one || std::chrono::abs(*one - *other) <= std::chrono::seconds(1));
}

std::string shown(std::optional<Instant> at) { return at ? toRfc3339(*at) : "never"; }

/// The opening and the close of a window, from what its list says and from nothing else.
std::optional<Instant> opensFrom(const std::vector<Reckoning>& list)
{
    std::optional<Instant> opens;
    for (const Reckoning& why : list) {
        if (!why.closing) {
            const auto result = resultOf(why);
            if (!result) {
                return std::nullopt;
            }
            opens = std::max(opens.value_or(*result), *result);
        }
    }
    return opens;
}

std::optional<Instant> closesFrom(const std::vector<Reckoning>& list)
{
    std::optional<Instant> closes;
    for (const Reckoning& why : list) {
        if (why.closing) {
            const auto result = resultOf(why);
            closes = result && closes ? std::min(*closes, *result) : result;
        }
    }
    return closes;
}

/// What the list of other figures says of one of them: the latest of the slow ends, the only one of the others.
std::optional<Instant> figureFrom(const std::vector<Reckoning>& list, FigureOf of)
{
    std::optional<Instant> figure;
    for (const Reckoning& why : list) {
        if (const auto result = why.of == of ? resultOf(why) : std::nullopt) {
            figure = std::max(figure.value_or(*result), *result);
        }
    }
    return figure;
}

/// Windows with something to explain, gathered from benches at which somebody taps at random.
std::vector<Window> gather(std::size_t atLeast, bool everyWindow = false)
{
    static const rules::RuleBook book = test::shippedRules();
    std::vector<Window> windows;
    for (unsigned seed = 1; windows.size() < atLeast; ++seed) {
        test::RandomBench random(seed, book, 5);
        for (int step = 0; step < 60; ++step) {
            random.step();
            if (step % 6 != 5) {
                continue;
            }
            const Board board = random.board();
            if (everyWindow) {
                std::ranges::copy_if(board.windows, std::back_inserter(windows),
                                     [](const Window& window) { return !window.why.empty(); });
                continue;
            }
            for (const Card& card : board.cards) {
                if (card.window && !card.window->why.empty()) {
                    windows.push_back(*card.window);
                }
            }
        }
    }
    return windows;
}

} // namespace

TEST(Why, AloneGivesEveryFigureOnACardToTheSecond)
{
    constexpr std::size_t wanted = 1000;
    std::size_t openings = 0;
    std::size_t closings = 0;
    std::size_t stalls = 0;
    std::set<std::string> laws;
    for (const Window& window : gather(wanted)) {
        for (const Reckoning& why : window.why) {
            ASSERT_TRUE(agree(resultOf(why), why.result))
                << window.stage.stage << ": " << shown(resultOf(why)) << " against " << shown(why.result);
            laws.insert(why.law);
        }
        const bool hasOpening = std::ranges::any_of(window.why, [](const Reckoning& why) { return !why.closing; });
        if (hasOpening) {
            ASSERT_EQ(window.stalled, !opensFrom(window.why)) << window.stage.stage;
            ASSERT_TRUE(agree(opensFrom(window.why), window.opens)) << window.stage.stage;
        }
        ASSERT_TRUE(agree(closesFrom(window.why), window.closes))
            << window.stage.stage << " closes " << shown(window.closes) << ", its why says "
            << shown(closesFrom(window.why));
        if (window.closes && window.chain.empty()) {
            ASSERT_TRUE(agree(*closesFrom(window.why) - window.handsOn, window.latestStart));
        }
        openings += hasOpening ? 1 : 0;
        closings += window.closes ? 1 : 0;
        stalls += window.stalled ? 1 : 0;
    }
    // What was looked at is worth something only if it holds some of each.
    EXPECT_GE(openings, 300U);
    EXPECT_GE(closings, 60U);
    EXPECT_GE(stalls, 20U);
    EXPECT_GE(laws.size(), 4U);
}

TEST(Why, OfWhatIsLostIsKeptOnceItsCloseIsKnown)
{
    // Raw lacquer glue: 60 min from mixing, lost after 120 (common practice, no source).
    test::TestBench bench(test::shippedRules());
    const PieceId piece = bench.add("urushiSeam").id;
    bench.upTo(piece, "glueUrushi", 1);
    const MixId mix = bench.mix("urushiGlue", 5000);
    bench.begun(piece, "glueUrushi", 5001, 1, mix);
    const auto window = bench.window(piece, "glueUrushi", 5002);
    ASSERT_TRUE(window && window->lost);
    EXPECT_DOUBLE_EQ(test::minuteOf(window->lost), 5120);
    EXPECT_TRUE(agree(figureFrom(window->whyElse, FigureOf::Lost), window->lost));
}

TEST(Why, AloneGivesTheSlowEndWhatIsRecommendedAndWhenItIsLost)
{
    std::size_t ranges = 0;
    std::size_t recommended = 0;
    for (const Window& window : gather(4000, true)) {
        for (const Reckoning& why : window.whyElse) {
            ASSERT_TRUE(agree(resultOf(why), why.result))
                << window.stage.stage << ": " << shown(resultOf(why)) << " against " << shown(why.result);
        }
        ASSERT_TRUE(agree(figureFrom(window.whyElse, FigureOf::Recommended), window.recommended)) << window.stage.stage;
        ASSERT_TRUE(agree(figureFrom(window.whyElse, FigureOf::Lost), window.lost)) << window.stage.stage;
        if (window.opens && opensFrom(window.why)) {
            const auto slow = figureFrom(window.whyElse, FigureOf::OpensAtLatest);
            ASSERT_TRUE(agree(std::max(slow.value_or(*window.opens), *window.opens), window.opensAtLatest))
                << window.stage.stage << " opens at the latest " << shown(window.opensAtLatest) << ", its why says "
                << shown(slow);
            ranges += slow ? 1 : 0;
        }
        recommended += window.recommended ? 1 : 0;
    }
    EXPECT_GE(ranges, 40U);
    EXPECT_GE(recommended, 10U);
}

} // namespace mend::bench
