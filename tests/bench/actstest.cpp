#include "core/bench/acts.h"

#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::bench;
using namespace mend::test;

namespace {
Hand handAt(double minute) { return {{TestBench::at(minute), {"boot", std::chrono::minutes(600)}}, PersonId(1)}; }

Tap tapOn(PieceId piece, ActKind kind, const std::string& stage)
{
    Tap tap;
    tap.piece = piece;
    tap.act = {kind, {stage, 1}, {}};
    return tap;
}
} // namespace

TEST(Acts, TheFillerTakesTheOneLivingMix)
{
    TestBench bench(shippedRules(), 24);
    const PieceId piece = bench.add("goldLacquerSeam").id;
    bench.upTo(piece, "fillRun", 1);
    const MixId mix = bench.mix("fillerPaste", 90);
    const Tap tap = tapOn(piece, ActKind::Finish, "fillRun");
    auto told = eventsOf(tap, bench.fold(), bench.book(), handAt(95));
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told.front().what, What::Done);
    EXPECT_EQ(told.front().mix, mix);
    EXPECT_EQ(told.front().rules, bench.fold().piece(piece)->rules);

    bench.mix("fillerPaste", 92);
    told = eventsOf(tap, bench.fold(), bench.book(), handAt(95));
    EXPECT_FALSE(told.front().mix.isSet()) << "with two mixes alive it has to be asked";
}

TEST(Acts, AStiffMixIsNotTaken)
{
    // Pot life 30 min at 24 C (common practice, no source).
    TestBench bench(shippedRules(), 24);
    const PieceId piece = bench.add("goldLacquerSeam").id;
    bench.upTo(piece, "fillRun", 1);
    bench.mix("fillerPaste", 60);
    const BenchFold fold = bench.fold();
    const rules::Stage& fill = *procedureOf(*fold.piece(piece), bench.book())->find("fillRun");
    EXPECT_EQ(mixesFor(fill, fold, bench.book(), TestBench::at(89)).size(), 1U);
    EXPECT_TRUE(mixesFor(fill, fold, bench.book(), TestBench::at(90)).empty());
}

TEST(Acts, IntoTheCabinetMovesThePiece)
{
    TestBench bench(shippedRules(), 24);
    const PieceId piece = bench.add("goldLacquerSeam").id;
    bench.upTo(piece, "cureFill", 1);
    const auto told = eventsOf(tapOn(piece, ActKind::Finish, "cureFill"), bench.fold(), bench.book(), handAt(200));
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told.front().place, TestBench::cabinet);
}

TEST(Acts, WasInTimeIsToldAsTheLastMomentBeforeTheClose)
{
    TestBench bench(shippedRules(), 24);
    const PieceId piece = bench.add("goldLacquerSeam").id;
    bench.upTo(piece, "fillRun", 1);
    bench.begun(piece, "fillRun", 100);
    bench.done(piece, "fillRun", 103);
    const auto told = eventsOf(tapOn(piece, ActKind::WasInTime, "wipeBack"), bench.fold(), bench.book(), handAt(125));
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told.front().what, What::Done);
    EXPECT_EQ(told.front().happened, TestBench::at(120) - Span{1});
}

TEST(Acts, WhatBuildsOnAnEventGoesWithIt)
{
    TestBench bench(shippedRules(), 24);
    const PieceId piece = bench.add("goldLacquerSeam").id;
    bench.upTo(piece, "fillRun", 1);
    const EventId filled = bench.done(piece, "fillRun", 100);
    const EventId wiped = bench.done(piece, "wipeBack", 110);
    EXPECT_EQ(builtOn(filled, bench.events()), std::vector{wiped});
    EXPECT_TRUE(builtOn(wiped, bench.events()).empty());
}

TEST(Acts, MeanNothingForAPieceThatLeft)
{
    const TestBench bench(shippedRules(), 24);
    EXPECT_TRUE(
        eventsOf(tapOn(PieceId(9), ActKind::Finish, "wipeBack"), bench.fold(), bench.book(), handAt(1)).empty());
}
