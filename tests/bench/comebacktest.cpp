// A piece that comes back keeps what was put into it, and nothing else.
#include "core/bench/card.h"
#include "core/bench/handover.h"
#include "core/bench/state.h"

#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::bench;
using namespace mend::test;

namespace {

/// A gold seam mended, handed over and brought back after thirty days.
struct CameBack {
    CameBack() : bench(shippedRules(), 24)
    {
        piece = bench.add("goldLacquerSeam").id;
        end = bench.upTo(piece, "no stage: all of them", 1);
        tell(What::HandedOver, end + 20'000);
    }
    EventId tell(What what, double minute, const std::string& word = {})
    {
        Event event = bench.event(what, minute);
        event.piece = piece;
        event.word = word;
        event.place = TestBench::benchPlace;
        return bench.tell(event);
    }
    EventId agree(double minute)
    {
        Event event = bench.event(What::Agreed, minute);
        event.piece = piece;
        event.rules = bench.book().procedure("goldLacquerSeam")->hash;
        return bench.tell(event);
    }
    TestBench bench;
    PieceId piece;
    double end = 0;
    static constexpr double later = 60.0 * 24 * 30;
};

} // namespace

TEST(ComeBack, BeginsANewVisitWithNoStageDone)
{
    CameBack back;
    EXPECT_EQ(back.bench.fold().piece(back.piece), nullptr) << "handed over";
    back.tell(What::CameBack, CameBack::later, "joinFailed");
    const BenchFold fold = back.bench.fold();
    const PieceState* state = fold.piece(back.piece);
    ASSERT_NE(state, nullptr);
    EXPECT_EQ(state->visit, 2);
    EXPECT_TRUE(state->stages.empty());
    EXPECT_FALSE(state->agreed);
    EXPECT_EQ(progressOf(*state, back.bench.book(), TestBench::at(CameBack::later)), PieceProgress::Received);
}

TEST(ComeBack, KeepsWhatWasPutInWithItsDates)
{
    CameBack back;
    const auto before = materialsPutIn(
        *fold({back.bench.roster()}, std::vector<Event>(back.bench.events().begin(), back.bench.events().end() - 1),
              back.bench.book())
             .piece(back.piece),
        back.bench.book());
    ASSERT_FALSE(before.empty());
    back.tell(What::CameBack, CameBack::later);
    const BenchFold folded = back.bench.fold();
    EXPECT_EQ(folded.piece(back.piece)->earlier, before);
    back.tell(What::MaterialRemoved, CameBack::later + 1, before.front().material);
    const BenchFold cut = back.bench.fold();
    EXPECT_EQ(cut.piece(back.piece)->earlier.size(), before.size() - 1) << "cut out again";
}

TEST(ComeBack, LimitsHeatByTheJoinsOfTheVisitBefore)
{
    CameBack back;
    back.tell(What::CameBack, CameBack::later);
    back.agree(CameBack::later + 1);
    const BenchFold fold = back.bench.fold();
    const Board board = boardOf(fold, back.bench.book(), TestBench::at(CameBack::later + 2));
    const BenchFold without = [&] {
        BenchFold changed = fold;
        changed.pieces.at(back.piece).earlier.clear();
        return changed;
    }();
    // In a cabinet hotter than any join bears, the standing notice names this piece only for its old joins.
    const auto hot = [&](BenchFold bench) {
        PieceState& piece = bench.pieces.at(back.piece);
        piece.stays.push_back({TestBench::at(CameBack::later + 2), TestBench::cabinet});
        bench.air[TestBench::cabinet].forWaits.readings.push_back(
            {TestBench::at(CameBack::later + 2), Temperature::fromCelsius(140), {}});
        bench.air[TestBench::cabinet].forClosings = bench.air[TestBench::cabinet].forWaits;
        return boardOf(bench, back.bench.book(), TestBench::at(CameBack::later + 3)).standing.size();
    };
    EXPECT_GT(hot(fold), hot(without));
}

TEST(ComeBack, OffersNoStageBeforeItIsAgreed)
{
    CameBack back;
    back.tell(What::CameBack, CameBack::later);
    EXPECT_TRUE(boardOf(back.bench.fold(), back.bench.book(), TestBench::at(CameBack::later + 1)).cards.empty());
    EXPECT_TRUE(back.bench.windows(CameBack::later + 1).empty());
    back.agree(CameBack::later + 5);
    EXPECT_FALSE(back.bench.windows(CameBack::later + 6).empty());
    EXPECT_EQ(boardOf(back.bench.fold(), back.bench.book(), TestBench::at(CameBack::later + 6)).cards.size(), 1U);
}

TEST(ComeBack, IsTakenBackLikeAnyFact)
{
    CameBack back;
    const EventId came = back.tell(What::CameBack, CameBack::later);
    ASSERT_NE(back.bench.fold().piece(back.piece), nullptr);
    back.bench.voidEvent(came, CameBack::later + 1);
    EXPECT_EQ(back.bench.fold().piece(back.piece), nullptr) << "it is with its owner";
}

TEST(Received, IsInTheHouseAndNotYetAgreed)
{
    TestBench bench(shippedRules(), 24);
    const PieceId piece = bench.add("goldLacquerSeam").id;
    bench.events().back().what = What::Received;
    EXPECT_TRUE(bench.windows(5).empty());
    EXPECT_EQ(progressOf(*bench.fold().piece(piece), bench.book(), TestBench::at(5)), PieceProgress::Received);
    Event agreed = bench.event(What::Agreed, 10);
    agreed.piece = piece;
    agreed.rules = bench.book().procedure("goldLacquerSeam")->hash;
    bench.tell(agreed);
    EXPECT_EQ(bench.fold().piece(piece)->rules, agreed.rules);
    EXPECT_EQ(bench.fold().piece(piece)->receivedAt, TestBench::at(0));
    EXPECT_FALSE(bench.windows(11).empty());
}
