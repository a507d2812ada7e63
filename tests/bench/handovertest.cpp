#include "core/bench/handover.h"

#include "core/bench/card.h"
#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::bench;
using namespace mend::test;

TEST(HandOver, WaitsForTheSlowestMaterial)
{
    // Epoxy 7 days, lacquer 7 days after their own last stage (common practice, no source).
    TestBench bench(shippedRules(), 24);
    const PieceId piece = bench.add("goldLacquerSeam").id;
    const double end = bench.upTo(piece, "no stage: all of them", 1);
    const BenchFold fold = bench.fold();
    ASSERT_TRUE(isMended(*fold.piece(piece), bench.book()));
    const auto from = handOverFrom(*fold.piece(piece), bench.book());
    ASSERT_TRUE(from);
    EXPECT_GT(from->at, TestBench::at(end) + std::chrono::days(6));
    EXPECT_FALSE(from->material.empty());
    EXPECT_EQ(progressOf(*fold.piece(piece), bench.book(), from->at - Span{1}), PieceProgress::Resting);
    EXPECT_EQ(progressOf(*fold.piece(piece), bench.book(), from->at), PieceProgress::Ready);
    const Card ready = boardOf(fold, bench.book(), from->at).cards.front();
    EXPECT_EQ(ready.standing, Standing::Ready);
    EXPECT_EQ(ready.acts.front().kind, ActKind::HandOver);
    EXPECT_DOUBLE_EQ(ready.mended, 1.0);
}

TEST(HandOver, IsNotSpokenOfWhileStagesAreToDo)
{
    TestBench bench(shippedRules(), 24);
    const PieceId piece = bench.add("goldLacquerSeam").id;
    EXPECT_EQ(progressOf(*bench.fold().piece(piece), bench.book(), TestBench::at(1)), PieceProgress::Agreed);
    bench.done(piece, "recordAsFound", 5);
    const BenchFold fold = bench.fold();
    EXPECT_FALSE(handOverFrom(*fold.piece(piece), bench.book()).has_value());
    EXPECT_EQ(progressOf(*fold.piece(piece), bench.book(), TestBench::at(6)), PieceProgress::InWork);
    EXPECT_LT(mendedShare(*fold.piece(piece), bench.book()), 0.2);
}
