#include "core/bench/state.h"

#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

#include <random>

using namespace mend;
using namespace mend::bench;
using namespace mend::test;
using namespace std::chrono;

namespace {

/// A gold seam filled at minute 100 and wiped back at minute 110.
struct Wiped {
    Wiped() : bench(shippedRules(), 24)
    {
        piece = bench.add("goldLacquerSeam").id;
        bench.upTo(piece, "fillRun", 1);
        filled = bench.done(piece, "fillRun", 100);
        wiped = bench.done(piece, "wipeBack", 110);
    }
    const StageRecord* told(const BenchFold& fold, const std::string& key) const
    {
        return fold.piece(piece)->record({key, 1});
    }
    TestBench bench;
    PieceId piece;
    EventId filled;
    EventId wiped;
};

double lastBefore(const cure::PlaceRecord& record, double minute)
{
    double found = 0;
    for (const cure::Reading& reading : record.readings) {
        if (reading.at <= TestBench::at(minute)) {
            found = reading.temperature.celsius();
        }
    }
    return found;
}

} // namespace

TEST(Fold, TakesBackWhatIsVoided)
{
    Wiped bench;
    bench.bench.voidEvent(bench.wiped, 111);
    EXPECT_EQ(bench.told(bench.bench.fold(), "wipeBack"), nullptr);
    EXPECT_TRUE(bench.bench.window(bench.piece, "wipeBack", 112).has_value());
}

TEST(Fold, MovesAFactToAnotherTimeAndPiece)
{
    Wiped bench;
    Event retold = bench.bench.event(What::Retold, 112);
    retold.target = bench.wiped;
    retold.happened = TestBench::at(107);
    const EventId telling = bench.bench.tell(retold);
    EXPECT_EQ(bench.told(bench.bench.fold(), "wipeBack")->lastTouch, TestBench::at(107));
    bench.bench.voidEvent(telling, 113);
    EXPECT_EQ(bench.told(bench.bench.fold(), "wipeBack")->lastTouch, TestBench::at(110));

    const PieceId other = bench.bench.add("goldLacquerSeam", 60).id;
    retold.piece = other;
    bench.bench.tell(retold);
    const BenchFold fold = bench.bench.fold();
    EXPECT_EQ(bench.told(fold, "wipeBack"), nullptr);
    EXPECT_TRUE(fold.piece(other)->record({"wipeBack", 1})->isDone());
}

TEST(Fold, DoneAloneBeganTheUsualMinutesBefore)
{
    const Wiped bench;
    const BenchFold fold = bench.bench.fold();
    const PieceState& piece = *fold.piece(bench.piece);
    const rules::Stage& stage = *procedureOf(piece, bench.bench.book())->find("wipeBack");
    EXPECT_EQ(bench.told(fold, "wipeBack")->firstTouch, TestBench::at(110) - handsOn(stage, piece, bench.bench.book()));
}

TEST(Fold, OrdersByWhenItHappenedNotByWhenItWasTold)
{
    Wiped bench;
    const BenchFold inOrder = bench.bench.fold();
    std::mt19937 random(7);
    for (int round = 0; round < 50; ++round) {
        std::shuffle(bench.bench.events().begin(), bench.bench.events().end(), random);
        ASSERT_EQ(bench.bench.fold(), inOrder);
    }
}

TEST(Fold, SendingBackAStageForgetsItAndAllAfter)
{
    Wiped bench;
    bench.bench.stage(What::SentBack, bench.piece, "fillRun", 120);
    const BenchFold fold = bench.bench.fold();
    EXPECT_EQ(bench.told(fold, "fillRun"), nullptr);
    EXPECT_EQ(bench.told(fold, "wipeBack"), nullptr);
    EXPECT_NE(bench.told(fold, "scrapeAndKey"), nullptr);
}

TEST(Fold, KeepsElapsedTimeWhenTheClockIsSet)
{
    Wiped bench;
    const auto before = bench.bench.window(bench.piece, "cureFill", 111);
    ASSERT_TRUE(before);
    Event step = bench.bench.event(What::ClockStepped, 111);
    step.happened = step.recorded = TestBench::at(111) + hours(1);
    step.amount = Span(hours(1)).count();
    bench.bench.tell(step);
    const auto after = bench.bench.window(bench.piece, "cureFill", 171);
    ASSERT_TRUE(after);
    EXPECT_EQ(*after->opens - TestBench::at(171), *before->opens - TestBench::at(111));
}

TEST(Fold, AClockThatWasEvidentlyWrongMovesOnlyItsOwnBoot)
{
    TestBench bench(shippedRules(), 24);
    bench.tell(bench.event(What::Noted, 1000));
    Event early = bench.event(What::Noted, 0);
    early.happened = early.recorded = Instant(hours(5)); // a clock that woke in 1970
    early.boot = {"second", minutes(3)};
    bench.tell(early);
    Event step = bench.event(What::ClockStepped, 2000);
    step.boot = {"second", minutes(4)};
    step.amount = (step.recorded - (Instant(hours(5)) + minutes(1))).count();
    bench.tell(step);
    int seen = 0;
    for (const Event& event : effective(bench.events())) {
        if (event.what == What::Noted) {
            const bool ofThisBoot = event.boot.bootId == "second";
            EXPECT_EQ(event.happened, ofThisBoot ? TestBench::at(2000) - minutes(1) : TestBench::at(1000));
            ++seen;
        }
    }
    EXPECT_EQ(seen, 2);
}

TEST(Fold, CreditsAGapToTheSafeSideUntilItIsTold)
{
    TestBench bench(shippedRules(), 20);
    bench.read(TestBench::cabinet, 43, 20, 0);
    Event gap = bench.event(What::GapAnswered, 300);
    gap.place = TestBench::cabinet;
    gap.from = TestBench::at(100);
    gap.word = "unknown";
    bench.tell(gap);
    PlaceAir air = bench.fold().air.at(TestBench::cabinet);
    EXPECT_EQ(lastBefore(air.forWaits, 200), 20);
    EXPECT_EQ(lastBefore(air.forClosings, 200), 43);
    EXPECT_EQ(lastBefore(air.forWaits, 301), 43);

    gap.word = "stayedOn";
    gap.recorded = TestBench::at(302);
    bench.tell(gap);
    air = bench.fold().air.at(TestBench::cabinet);
    EXPECT_EQ(lastBefore(air.forWaits, 200), 43);

    gap.word = "wentOff";
    gap.recorded = TestBench::at(303);
    bench.tell(gap);
    air = bench.fold().air.at(TestBench::cabinet);
    EXPECT_EQ(lastBefore(air.forClosings, 200), 20);
}

TEST(Fold, GivesWaitsTheLowestAndClosingsTheHighestOfANight)
{
    TestBench bench(shippedRules(), 20);
    Event night = bench.event(What::GapAnswered, 15 * 60);
    night.place = TestBench::benchPlace;
    night.from = TestBench::at(60);
    night.word = "between";
    night.temperature = Temperature::fromCelsius(12);
    night.amount = Temperature::fromCelsius(21.5).centidegrees();
    bench.tell(night);
    const PlaceAir air = bench.fold().air.at(TestBench::benchPlace);
    EXPECT_EQ(lastBefore(air.forWaits, 59), 20);
    EXPECT_EQ(lastBefore(air.forClosings, 59), 20);
    for (const double minute : {60.0, 400.0, 899.0, 901.0}) {
        EXPECT_EQ(lastBefore(air.forWaits, minute), 12) << minute;
        EXPECT_EQ(lastBefore(air.forClosings, minute), 21.5) << minute;
    }
    for (std::size_t i = 1; i < air.forWaits.readings.size(); ++i) {
        EXPECT_LE(air.forWaits.readings[i].at - air.forWaits.readings[i - 1].at, air.forWaits.maxAge)
            << "a night that was measured does not age";
    }
}

TEST(Fold, WhatIsHandedOverIsNoLongerInHand)
{
    Wiped bench;
    Event given = bench.bench.event(What::HandedOver, 200);
    given.piece = bench.piece;
    const EventId id = bench.bench.tell(given);
    EXPECT_EQ(bench.bench.fold().piece(bench.piece), nullptr);
    bench.bench.voidEvent(id, 201);
    EXPECT_NE(bench.bench.fold().piece(bench.piece), nullptr);
}

TEST(Fold, AMixKnowsWhatItWentOn)
{
    TestBench bench(shippedRules(), 24);
    const PieceId piece = bench.add("goldLacquerSeam").id;
    bench.upTo(piece, "fillRun", 1);
    const MixId mix = bench.mix("fillerPaste", 90);
    bench.done(piece, "fillRun", 95, 1, mix);
    const BenchFold fold = bench.fold();
    ASSERT_TRUE(fold.mixes.contains(mix));
    EXPECT_EQ(fold.mixes.at(mix).on, std::vector{piece});
    EXPECT_TRUE(fold.mixes.at(mix).isAlive());
}

namespace {
Event answerAt(const TestBench& bench, const std::string& word, double minute)
{
    Event answered = bench.event(What::AlertAnswered, minute);
    answered.word = word;
    return answered;
}
} // namespace

TEST(Fold, AnswersTakenInAreAsFoldedAnew)
{
    TestBench bench(shippedRules(), 24);
    bench.tell(answerAt(bench, "1/wipeBack#1/closes@3|shown", 50));
    BenchFold live = bench.fold();
    const std::vector<Event> more{answerAt(bench, "2/wipeBack#1/closes@4|shown", 50),
                                  answerAt(bench, "1/wipeBack#1/closes@3|handsOn", 52),
                                  answerAt(bench, "3/wipeBack#1/closes@5|heard", 52)};
    for (const Event& event : more) {
        bench.tell(event);
    }
    ASSERT_TRUE(addAnswers(live, more));
    EXPECT_EQ(live, bench.fold());
    EXPECT_EQ(live.answers.size(), 3U);
}

TEST(Fold, AnswersToldOutOfTheirOrderAreLeftToTheWholeFold)
{
    TestBench bench(shippedRules(), 24);
    bench.tell(answerAt(bench, "1/wipeBack#1/closes@3|handsOn", 50));
    BenchFold live = bench.fold();
    const BenchFold before = live;
    EXPECT_FALSE(addAnswers(live, std::vector{answerAt(bench, "1/wipeBack#1/closes@3|shown", 49)}));
    EXPECT_FALSE(addAnswers(
        live, std::vector{answerAt(bench, "2/wipeBack#1/closes@4|shown", 51), bench.event(What::AwayBegun, 52)}));
    EXPECT_EQ(live, before) << "nothing by halves";
}
