#include "core/cure/climate.h"

#include "tests/cure/samples.h"

#include <gtest/gtest.h>

#include <array>

using namespace mend;
using namespace mend::cure;
using namespace mend::cure::samples;

namespace {

Reading read(Span after, double degrees, std::optional<double> percent = std::nullopt)
{
    return {evening + after, celsius(degrees), percent ? std::optional(percentHumidity(*percent)) : std::nullopt};
}

Climate alone(const PlaceRecord& place, Side side, Span cameAfter = 0h)
{
    const std::array stays{Stay{evening + cameAfter, &place}};
    return climateAlong(stays, side, celsius(23));
}

} // namespace

TEST(Climate, HoldsAReadingUntilTheNext)
{
    const PlaceRecord bench{{read(-1h, 20, 50), read(2h, 26)}, 4h};
    const Climate climate = alone(bench, Side::Wait);
    const Air first{evening, celsius(20), percentHumidity(50), Trust::Read};
    EXPECT_EQ(climate.steps.front(), first);
    EXPECT_EQ(climate.at(evening + 2h - 1ms), first);
    EXPECT_EQ(climate.at(evening + 2h).temperature, celsius(26));
    EXPECT_EQ(climate.at(evening + 2h).humidity, std::nullopt);
}

// 3 degrees to the safe side: common practice, no source.
TEST(Climate, TakesThreeDegreesOffAnOldReadingForAWait)
{
    const PlaceRecord bench{{read(0h, 23, 70)}, 4h};
    const Climate climate = alone(bench, Side::Wait);
    EXPECT_EQ(climate.at(evening + 4h - 1ms).trust, Trust::Read);
    EXPECT_EQ(climate.at(evening + 4h), (Air{evening + 4h, celsius(20), std::nullopt, Trust::Stale}));
}

TEST(Climate, PutsThreeDegreesOnAnOldReadingForAClosing)
{
    const PlaceRecord bench{{read(0h, 23, 70)}, 4h};
    EXPECT_EQ(alone(bench, Side::Closing).at(evening + 5h),
              (Air{evening + 4h, celsius(26), percentHumidity(70), Trust::Stale}));
}

TEST(Climate, KnowsThatAReadingWasAlreadyOldWhenThePieceCame)
{
    const PlaceRecord bench{{read(-5h, 23)}, 4h};
    const Climate climate = alone(bench, Side::Wait);
    ASSERT_EQ(climate.steps.size(), 1U);
    EXPECT_EQ(climate.steps[0], (Air{evening, celsius(20), std::nullopt, Trust::Stale}));
}

TEST(Climate, UsesTheReferenceAndSaysSoBeforeTheFirstReading)
{
    const PlaceRecord bench{{read(30min, 31, 40)}, 4h};
    for (const Side side : {Side::Wait, Side::Closing}) {
        const Climate climate = alone(bench, side);
        EXPECT_EQ(climate.at(evening), (Air{evening, celsius(23), std::nullopt, Trust::Reference}));
        EXPECT_EQ(climate.at(evening + 30min).trust, Trust::Read);
        EXPECT_EQ(climate.at(evening + 30min).temperature, celsius(31));
    }
}

TEST(Climate, UsesTheReferenceWhereNothingIsEverRead)
{
    const PlaceRecord unread;
    EXPECT_EQ(alone(unread, Side::Closing).at(evening + 48h).trust, Trust::Reference);
    const std::array nowhere{Stay{evening, nullptr}};
    EXPECT_EQ(climateAlong(nowhere, Side::Wait, celsius(24)).at(evening),
              (Air{evening, celsius(24), std::nullopt, Trust::Reference}));
}

TEST(Climate, ChangesWithThePlaceFromTheMoveOn)
{
    const PlaceRecord bench{{read(-1h, 21), read(2h, 19)}, 4h};
    const PlaceRecord cabinet{{read(-3h, 45), read(3h, 43)}, 24h};
    const std::array stays{Stay{evening, &bench}, Stay{evening + 1h, &cabinet}};
    const Climate climate = climateAlong(stays, Side::Wait, celsius(23));
    EXPECT_EQ(climate.at(evening + 1h - 1ms).temperature, celsius(21));
    EXPECT_EQ(climate.at(evening + 1h), (Air{evening + 1h, celsius(45), std::nullopt, Trust::Read}));
    EXPECT_EQ(climate.at(evening + 2h).temperature, celsius(45)) << "the bench is read, the piece is not there";
    EXPECT_EQ(climate.at(evening + 3h).temperature, celsius(43));
}

TEST(Climate, TakesTheLaterOfTwoFactsAtOneInstant)
{
    const PlaceRecord bench{{read(0h, 21), read(0h, 22)}, 4h};
    const PlaceRecord cabinet{{read(0h, 40)}, 24h};
    EXPECT_EQ(alone(bench, Side::Wait).at(evening).temperature, celsius(22));
    const std::array stays{Stay{evening, &bench}, Stay{evening, &cabinet}};
    const Climate climate = climateAlong(stays, Side::Wait, celsius(23));
    EXPECT_EQ(climate.steps.front().temperature, celsius(40));
}

TEST(Climate, GivesItsFirstStepForAnythingEarlier)
{
    EXPECT_EQ(steady(celsius(18)).at(evening - 9h).temperature, celsius(18));
}

TEST(Climate, CanBeKeptAsItIsNow)
{
    const PlaceRecord box{{read(0h, 24, 75)}, 24h};
    const Climate known = alone(box, Side::Wait);
    EXPECT_EQ(known.at(evening + 100h).trust, Trust::Stale);
    EXPECT_EQ(keptAsAt(known, evening + 1h).at(evening + 100h),
              (Air{evening, celsius(24), percentHumidity(75), Trust::Read}));
    EXPECT_EQ(keptAsAt(known, evening + 24h), known) << "what is stale by now stays stale";
    EXPECT_EQ(keptAsAt(known, evening - 1h).steps.size(), 1U);
}

// Looked up afresh at random instants by the words of the rule: the last reading of the place where
// the piece lies, whole while young, to the safe side when old, the reference when there is none.
TEST(Climate, AgreesWithTheRuleLookedUpInstantByInstant)
{
    Random random(20'260'102);
    for (int run = 0; run < 10'000; ++run) {
        std::vector<PlaceRecord> places(static_cast<std::size_t>(between(random, 1, 3)));
        for (PlaceRecord& place : places) {
            place.maxAge = Span{between(random, 1, 300)};
            Instant at = evening - Span{between(random, 0, 500)};
            for (auto left = between(random, 0, 6); left > 0; --left) {
                place.readings.push_back({at, anyTemperature(random), percentHumidity(60)});
                at += Span{between(random, 0, 400)};
            }
        }
        std::vector<Stay> stays;
        Instant from = evening;
        for (auto left = between(random, 1, 4); left > 0; --left) {
            const auto which = static_cast<std::size_t>(between(random, 0, static_cast<std::int64_t>(places.size())));
            stays.push_back({from, which == places.size() ? nullptr : &places[which]});
            from += Span{between(random, 0, 500)};
        }
        const Side side = oneIn(random, 2) ? Side::Wait : Side::Closing;
        const Climate climate = climateAlong(stays, side, celsius(23));
        for (std::size_t i = 1; i < climate.steps.size(); ++i) {
            ASSERT_LT(climate.steps[i - 1].from, climate.steps[i].from) << "run " << run;
        }
        for (int look = 0; look < 20; ++look) {
            const Instant at = evening + Span{between(random, 0, 2500)};
            const auto stay = std::find_if(stays.rbegin(), stays.rend(), [&](const Stay& s) { return s.from <= at; });
            Temperature temperature = celsius(23);
            Trust trust = Trust::Reference;
            if (stay->place != nullptr) {
                for (const Reading& reading : stay->place->readings) {
                    if (reading.at <= at) {
                        const bool young = at - reading.at < stay->place->maxAge;
                        trust = young ? Trust::Read : Trust::Stale;
                        const double lean = young ? 0.0 : side == Side::Wait ? -3.0 : 3.0;
                        temperature = reading.temperature + degreesApart(lean);
                    }
                }
            }
            ASSERT_EQ(climate.at(at).temperature, temperature) << "run " << run;
            ASSERT_EQ(climate.at(at).trust, trust) << "run " << run;
            const bool damp = trust == Trust::Read || (trust == Trust::Stale && side == Side::Closing);
            ASSERT_EQ(climate.at(at).humidity.has_value(), damp) << "run " << run;
        }
    }
}
