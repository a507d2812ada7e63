#include "core/bench/boardmoves.h"

#include "core/rules/figurelist.h"
#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::bench;
using namespace mend::test;
using std::chrono::minutes;

namespace {

/// A gold seam with filler in since minute 100: its wipe has to be done in time.
struct SeamWithFiller {
    SeamWithFiller() : bench(shippedRules(), 24)
    {
        piece = bench.add("goldLacquerSeam").id;
        other = bench.add("urushiSeam").id;
        bench.upTo(piece, "fillRun", 1);
        const MixId mix = bench.mix("fillerPaste", 98);
        bench.done(piece, "fillRun", 100, 1, mix);
    }
    Board board() { return boardOf(fold(bench.roster(), bench.events(), bench.book()), bench.book(), now); }
    const rules::Procedure& procedure() { return *bench.book().procedure("goldLacquerSeam"); }
    rules::Procedure withWipeCloseLaterBy(Span step)
    {
        rules::Procedure edited = procedure();
        for (rules::Stage& stage : edited.stages) {
            if (stage.key == "wipeBack") {
                for (rules::Lag& lag : stage.closes) {
                    lag.span.value += step;
                }
            }
        }
        return edited;
    }
    TestBench bench;
    PieceId piece;
    PieceId other;
    const Instant now = TestBench::at(101);
};

const WindowMove* moveOf(const std::vector<WindowMove>& moves, const char* stage)
{
    const auto found = std::ranges::find_if(moves, [&](const WindowMove& move) { return move.stage.stage == stage; });
    return found == moves.end() ? nullptr : &*found;
}

} // namespace

TEST(BoardMoves, SayNothingWhereNothingMoves)
{
    SeamWithFiller filled;
    EXPECT_TRUE(windowMoves(filled.board(), filled.board()).empty());
}

TEST(BoardMoves, AnEditedCloseMovesTheOpenWindowByAsMuch)
{
    SeamWithFiller filled;
    const auto under =
        piecesUnder(fold(filled.bench.roster(), filled.bench.events(), filled.bench.book()), "goldLacquerSeam");
    EXPECT_EQ(under, std::vector<PieceId>{filled.piece});
    const Board after = boardIfAdopted(filled.bench.roster(), filled.bench.events(), filled.bench.book(),
                                       filled.withWipeCloseLaterBy(-minutes(2)), under, filled.now);
    const auto moves = windowMoves(filled.board(), after);
    const WindowMove* wipe = moveOf(moves, "wipeBack");
    ASSERT_TRUE(wipe);
    ASSERT_TRUE(wipe->before && wipe->after && wipe->before->closes && wipe->after->closes);
    // A degree above the reference the close comes a little sooner than by the rule's own figure.
    const Span sooner = *wipe->before->closes - *wipe->after->closes;
    EXPECT_GT(sooner, minutes(1));
    EXPECT_LE(sooner, minutes(2));
    for (const WindowMove& move : moves) {
        EXPECT_EQ(move.piece, filled.piece) << "only pieces that adopt it move";
    }
}

TEST(BoardMoves, ARevisionThatNobodyAdoptsMovesNothing)
{
    SeamWithFiller filled;
    const Board after = boardIfAdopted(filled.bench.roster(), filled.bench.events(), filled.bench.book(),
                                       filled.withWipeCloseLaterBy(-minutes(2)), {}, filled.now);
    EXPECT_TRUE(windowMoves(filled.board(), after).empty());
}

TEST(BoardMoves, TellWhatIsGoneAndWhatIsNew)
{
    SeamWithFiller filled;
    const Board before = filled.board();
    filled.bench.done(filled.piece, "wipeBack", 101);
    const auto moves = windowMoves(before, filled.board());
    const WindowMove* wipe = moveOf(moves, "wipeBack");
    ASSERT_TRUE(wipe);
    EXPECT_TRUE(wipe->before);
    EXPECT_FALSE(wipe->after);
    EXPECT_TRUE(std::ranges::any_of(moves, [](const WindowMove& move) { return !move.before && move.after; }));
}

TEST(BoardMoves, OneEventForEachPieceAdoptsARevision)
{
    const std::vector<PieceId> pieces{PieceId(3), PieceId(5)};
    const Hand hand{{TestBench::at(7), {"boot", std::chrono::hours(1)}}, PersonId(2)};
    const auto events = adoptions(pieces, "hash", hand);
    ASSERT_EQ(events.size(), 2U);
    EXPECT_EQ(events[1].what, What::RulesAdopted);
    EXPECT_EQ(events[1].piece, PieceId(5));
    EXPECT_EQ(events[1].rules, "hash");
    EXPECT_EQ(events[1].happened, TestBench::at(7));
    EXPECT_EQ(events[1].person, PersonId(2));
}
