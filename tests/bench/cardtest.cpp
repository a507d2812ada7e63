#include "core/bench/card.h"

#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::bench;
using namespace mend::test;

namespace {

/// A gold seam filled from minute 100 to 103 and not yet wiped.
struct Filler {
    explicit Filler(double celsius = 24) : bench(shippedRules(), celsius)
    {
        piece = bench.add("goldLacquerSeam").id;
        bench.upTo(piece, "fillRun", 1);
        bench.begun(piece, "fillRun", 100);
        bench.done(piece, "fillRun", 103);
    }
    TestBench bench;
    PieceId piece;
};

bool offers(const Card& card, ActKind kind)
{
    return std::ranges::any_of(card.acts, [kind](const CardAct& act) { return act.kind == kind; });
}

bool says(const Card& card, ReasonKind kind)
{
    return std::ranges::any_of(card.reasons, [kind](const Reason& reason) { return reason.kind == kind; });
}

} // namespace

TEST(Card, ACostlyClosingIsToBeDoneNow)
{
    const Filler filler;
    EXPECT_EQ(filler.bench.card(filler.piece, 106)->standing, Standing::Open);
    const auto card = filler.bench.card(filler.piece, 115);
    ASSERT_TRUE(card);
    EXPECT_EQ(card->standing, Standing::DoNow);
    EXPECT_EQ(card->act, "Wipe back the filler");
    EXPECT_EQ(card->counts, CountKind::StartBy);
    EXPECT_EQ(card->countTo, card->window->latestStart);
    EXPECT_EQ(card->acts.front().kind, ActKind::HandsOnIt);
    EXPECT_TRUE(offers(*card, ActKind::Finish));
    EXPECT_TRUE(says(*card, ReasonKind::MissCosts));
}

TEST(Card, PastItsCloseOffersThreeAnswers)
{
    const Filler filler;
    const auto card = filler.bench.card(filler.piece, 125);
    ASSERT_TRUE(card);
    EXPECT_EQ(card->standing, Standing::Past);
    ASSERT_EQ(card->acts.size(), 3U);
    EXPECT_EQ(card->acts[0].kind, ActKind::WasInTime);
    EXPECT_EQ(card->acts[1].kind, ActKind::DoingLate);
    EXPECT_EQ(card->acts[2].kind, ActKind::NotDone);
}

TEST(Card, SaysThatHeatBroughtTheCloseForward)
{
    const Filler warm(29);
    EXPECT_TRUE(says(*warm.bench.card(warm.piece, 104), ReasonKind::Sooner));
    const Filler usual(24);
    EXPECT_FALSE(says(*usual.bench.card(usual.piece, 104), ReasonKind::Sooner));
}

TEST(Card, TheCostliestClosingStandsFirst)
{
    Filler filler;
    const PieceId other = filler.bench.add("goldLacquerSeam", 0).id;
    filler.bench.done(other, "recordAsFound", 101);
    const Board board = filler.bench.board(115);
    ASSERT_EQ(board.cards.size(), 2U);
    EXPECT_EQ(board.cards.front().piece, filler.piece);
    EXPECT_EQ(board.freeUntil, board.cards.front().window->latestStart);
}

TEST(Card, AWaitShowsWhenItEnds)
{
    Filler filler;
    filler.bench.done(filler.piece, "wipeBack", 110);
    const auto card = filler.bench.card(filler.piece, 112);
    ASSERT_TRUE(card);
    EXPECT_EQ(card->standing, Standing::Waiting);
    EXPECT_EQ(card->stage.stage, "cureFill");
    EXPECT_EQ(card->counts, CountKind::Ends);
}

TEST(Card, ATouchTestHasAnEqualNotYet)
{
    Filler filler;
    TestBench& bench = filler.bench;
    const double minute = bench.upTo(filler.piece, "dustPowder", 103) + 30;
    const auto card = bench.card(filler.piece, minute);
    ASSERT_TRUE(card);
    EXPECT_EQ(card->stage.stage, "dustPowder");
    EXPECT_TRUE(offers(*card, ActKind::Confirm));
    EXPECT_TRUE(offers(*card, ActKind::NotYet));
    bench.stage(What::NotYet, filler.piece, "dustPowder", minute);
    EXPECT_TRUE(bench.window(filler.piece, "dustPowder", minute)->askAgain.has_value());
}

TEST(Card, AsksAColdCabinetAsWarmAsTheCureWillHaveIt)
{
    // A piece held by wax lies in a cabinet that is off; the filler's coolest warm cure is 40 C (common practice, no
    // source). Before the tap the card says whom that would harm.
    Filler filler;
    filler.bench.done(filler.piece, "wipeBack", 110);
    record::Piece& held = filler.bench.add("urushiSeam");
    held.materialsInIt = {"waxOrTape"};
    const PieceId other = held.id;
    Event placed = filler.bench.event(What::Placed, 111);
    placed.piece = other;
    placed.place = TestBench::cabinet;
    filler.bench.tell(placed);
    filler.bench.read(TestBench::cabinet, 24, 40, 112);
    const auto names = [&](double minute) {
        const auto card = filler.bench.card(filler.piece, minute);
        return std::ranges::any_of(card->hazards, [&](const HazardFinding& finding) {
            return finding.hazard->key == "INC-04" && std::ranges::find(finding.pieces, other) != finding.pieces.end();
        });
    };
    EXPECT_TRUE(names(180));
    placed = filler.bench.event(What::Placed, 181);
    placed.piece = other;
    placed.place = TestBench::shelf;
    filler.bench.tell(placed);
    EXPECT_FALSE(names(182));
}

TEST(Card, HoldStopsStartsNotChemistry)
{
    Filler filler;
    Event hold = filler.bench.event(What::HoldBegun, 104);
    hold.piece = filler.piece;
    filler.bench.tell(hold);
    const auto running = filler.bench.card(filler.piece, 115);
    EXPECT_EQ(running->standing, Standing::DoNow);
    EXPECT_EQ(running->reasons.front().kind, ReasonKind::Hold);
    filler.bench.done(filler.piece, "wipeBack", 116);
    EXPECT_EQ(filler.bench.card(filler.piece, 300)->standing, Standing::OnHold);
}

TEST(Card, NextChangeIsTheFirstInstantAtWhichTheBoardDiffers)
{
    const Filler filler;
    double minute = 104;
    int steps = 0;
    for (; steps < 20; ++steps) {
        const Board board = filler.bench.board(minute);
        const auto next = nextChange(board, board.at);
        if (!next) {
            break;
        }
        ASSERT_GT(*next, board.at);
        // Between the two nothing a card says may change but the count itself.
        const Board between = filler.bench.board(minuteOf(*next) - 0.001);
        EXPECT_EQ(between.cards.front().standing, board.cards.front().standing);
        EXPECT_EQ(between.cards.front().acts, board.cards.front().acts);
        minute = minuteOf(next);
    }
    EXPECT_GE(steps, 4) << "opens, is recommended, calls, starts at the latest, closes";
    EXPECT_EQ(filler.bench.card(filler.piece, minute)->standing, Standing::Past);
}
