#include "core/bench/boardplan.h"

#include "tests/bench/planbench.h"
#include "tests/support/rulefiles.h"

using namespace mend;
using namespace mend::bench;
using namespace mend::test;

namespace {

/// A filler whose wipe takes 4 minutes and has to be off 20 minutes after the first touch, 8 minutes on.
struct Wiping {
    TestBench bench{shippedRules(), 24.0};
    PieceId wiped;
    double now = 0;

    Wiping()
    {
        wiped = bench.add(gold, 0, 3, 6).id;
        const double ready = bench.upTo(wiped, "fillRun", 0) + 3000;
        pressIn(bench, wiped, ready, 4);
        now = ready + 8;
    }

    StandingPlan plan() const
    {
        BenchProblem made = problemAt(bench, now);
        const plan::Planned found = planned(made);
        StandingPlan plan = standingPlan(std::move(made), found.table.value_or(plan::Timetable{}), PersonId(1));
        plan.fits = fitsOf(plan.made, plan.table, plan::MayStart::Depth::Thorough);
        return plan;
    }

    Board board() const { return boardOf(bench.fold(), bench.book(), TestBench::at(now)); }

    Board told() const
    {
        Board board = this->board();
        layPlan(board, plan());
        return board;
    }
};

const Reason* said(const Board& board, PieceId piece, ReasonKind kind)
{
    for (const Card& card : board.cards) {
        for (const Reason& reason : card.reasons) {
            if (card.piece == piece && reason.kind == kind) {
                return &reason;
            }
        }
    }
    return nullptr;
}

} // namespace

TEST(BoardPlan, AStartThatFitsIsSaidTo)
{
    Wiping at;
    const PieceId other = at.bench.add(gold, 0, 0, 6).id;
    at.bench.upTo(other, "pressSet", 0); // two minutes of hands
    EXPECT_NE(said(at.told(), other, ReasonKind::Fits), nullptr);
}

/// The card's own latest start stands on it already; a figure of whole minutes beside it would only differ.
TEST(BoardPlan, ItsOwnLatestStartIsNotSaidTwice)
{
    const Wiping at;
    const Board board = at.told();
    const Reason* fits = said(board, at.wiped, ReasonKind::Fits);
    ASSERT_NE(fits, nullptr);
    EXPECT_FALSE(fits->until.has_value());
}

TEST(BoardPlan, AStartThatWouldCostAWindowNamesItAndItsClose)
{
    Wiping at;
    const PieceId other = at.bench.add(gold, 0, 0, 6).id; // to be recorded as found: 25 minutes of hands
    const Board board = at.told();
    EXPECT_EQ(said(board, other, ReasonKind::Fits), nullptr);
    const Reason* clash = said(board, other, ReasonKind::Clashes);
    ASSERT_NE(clash, nullptr);
    EXPECT_EQ(clash->piece, at.wiped);
    EXPECT_EQ(clash->stage, (StageInstance{"wipeBack", 1}));
    EXPECT_EQ(*clash->until,
              std::chrono::floor<std::chrono::minutes>(*at.bench.window(at.wiped, "wipeBack", at.now)->closes));
}

TEST(BoardPlan, NoPlanSaysNothingAndChangesNothing)
{
    Wiping at;
    at.bench.add(gold, 0, 0, 6);
    StandingPlan plan = at.plan();
    plan.verdict = StandingPlan::Verdict::NotFound;
    Board board = at.board();
    layPlan(board, plan);
    EXPECT_EQ(board, at.board());
}

/// The figure in the top line is the one on the card, to the second, though the planner counts in whole minutes.
TEST(BoardPlan, HandsAreFreeUntilTheLatestStartOfWhatCloses)
{
    const Wiping at;
    const Board board = at.told();
    ASSERT_TRUE(board.freeUntil.has_value());
    EXPECT_EQ(*board.freeUntil, *at.bench.window(at.wiped, "wipeBack", at.now)->latestStart);
    EXPECT_TRUE(board.planned);
}

/// Who else is in the house is only known from hours: what is open calls everybody.
TEST(BoardPlan, AnOpenWindowEndsEverybodysFreeTime)
{
    Wiping at;
    at.bench.roster().people.push_back({PersonId(2), "Helper"});
    EXPECT_EQ(at.told().freeUntil, at.bench.window(at.wiped, "wipeBack", at.now)->latestStart);
}

TEST(StandingPlan, KnowsTheOldStartsAgainAfterMidnight)
{
    Wiping at;
    const StandingPlan before = at.plan();
    at.now += 24 * 60;
    const BenchProblem made = problemAt(at.bench, at.now);
    ASSERT_NE(made.zero, before.made.zero);
    const auto starts = startsBefore(made, before);
    int known = 0;
    for (std::size_t i = 0; i < starts.size(); ++i) {
        const int old =
            stepOf(before.made, made.steps[i].piece, made.steps[i].stage.stage, made.steps[i].stage.repetition);
        if (old >= 0 && !made.steps[i].stage.stage.empty()) {
            ASSERT_TRUE(starts[i].has_value());
            EXPECT_EQ(made.at(*starts[i]), before.made.at(before.table.start[plan::slot(old)]));
            ++known;
        }
    }
    EXPECT_GT(known, 3);
}

TEST(StandingPlan, HoldsUntilAStartHasPassedOrAYesHasRunOut)
{
    Wiping at;
    at.bench.upTo(at.bench.add(gold, 0, 0, 6).id, "pressSet", 0);
    const StandingPlan plan = at.plan();
    const Instant until = goodUntil(plan);
    EXPECT_GT(until, plan.at());
    for (const Fit& fit : plan.fits) {
        EXPECT_TRUE(!fit.until || until <= std::max(*fit.until, plan.at()) + std::chrono::minutes(1));
    }
    EXPECT_LE(until, plan.hands.front().from + std::chrono::minutes(1));
}
