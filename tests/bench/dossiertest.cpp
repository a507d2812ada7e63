#include "core/bench/dossier.h"

#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::bench;
using namespace mend::test;

namespace {

/// A piece at the door of a test bench.
struct AtTheDoor {
    AtTheDoor() : bench(shippedRules(), 24) { piece = bench.add("goldLacquerSeam").id; }

    EventId tell(What what, double minute, const std::string& word = {}, std::optional<std::int64_t> amount = {},
                 const std::string& note = {})
    {
        Event event = bench.event(what, minute);
        event.piece = piece;
        event.word = word;
        event.amount = amount;
        event.note = note;
        return bench.tell(event);
    }
    Dossier dossier() const { return dossierOf(piece, bench.events(), bench.book()); }

    mutable TestBench bench;
    PieceId piece;
};

} // namespace

TEST(Dossier, TellsWhatWasPromisedPaidAndCounted)
{
    AtTheDoor door;
    door.tell(What::Promised, 1, "2027-04-01");
    door.tell(What::Promised, 2, "2027-04-20");
    door.tell(What::PriceAgreed, 3, "EUR", 18'000);
    door.tell(What::Paid, 4, "EUR", 5'000);
    door.tell(What::Paid, 5, "EUR", -500);
    door.tell(What::Counted, 6, "fragmentsIn", 5);
    door.tell(What::Counted, 7, "fragmentsOut", 4);
    door.tell(What::Counted, 7, "accessoriesIn", 2);
    door.tell(What::ConsentGiven, 8, "onPaper");
    const VisitFacts visit = door.dossier().now();
    EXPECT_EQ(visit.number, 1);
    EXPECT_EQ(visit.promises.size(), 2U);
    EXPECT_EQ(dayText(visit.promise()->day), "2027-04-20");
    EXPECT_TRUE(visit.fragments.isShort());
    EXPECT_EQ(visit.accessories, (InAndOut{2, std::nullopt}));
    EXPECT_EQ(visit.consentHow, "onPaper");
    const Owed owed = owedFor(visit);
    EXPECT_EQ(owed.paid, Money(4'500, "EUR"));
    EXPECT_EQ(owed.left, Money(13'500, "EUR"));
}

TEST(Dossier, LeavesOutWhatWasTakenBackAndMovesWhatWasToldAnew)
{
    AtTheDoor door;
    const EventId first = door.tell(What::Promised, 1, "2027-04-01");
    const EventId second = door.tell(What::Promised, 2, "2027-04-20");
    door.bench.voidEvent(second, 3);
    EXPECT_EQ(dayText(door.dossier().now().promise()->day), "2027-04-01");
    door.bench.voidEvent(first, 4);
    EXPECT_FALSE(door.dossier().now().promise());
}

TEST(Dossier, SaysThatNobodyKnowsWhatIsOwedF49)
{
    AtTheDoor door;
    EXPECT_EQ(owedFor(door.dossier().now()), Owed{});
    door.tell(What::Paid, 1, "EUR", 5'000);
    EXPECT_FALSE(owedFor(door.dossier().now()).left) << "no price is agreed";
    door.tell(What::PriceAgreed, 2, "JPY", 18'000);
    EXPECT_FALSE(owedFor(door.dossier().now()).left) << "yen and euro are not added up";
    AtTheDoor rich;
    rich.tell(What::PriceAgreed, 1, "EUR", std::numeric_limits<std::int64_t>::min());
    rich.tell(What::Paid, 2, "EUR", std::numeric_limits<std::int64_t>::max());
    EXPECT_FALSE(owedFor(rich.dossier().now()).left) << "the sum does not fit";
}

TEST(Dossier, GivesAPieceThatComesBackANewVisit)
{
    AtTheDoor door;
    const MixId mix = door.bench.mix("fastAdhesive", 10);
    door.bench.events().back().note = "batch 7";
    Event joined = door.bench.event(What::Done, 12);
    joined.piece = door.piece;
    joined.stage = {"joinSet", 1};
    joined.mix = mix;
    door.bench.tell(joined);
    door.tell(What::HandedOver, 100, "onPaper", {}, "her brother");
    door.tell(What::CameBack, 50'000, "joinFailed");
    Event fault = door.bench.event(What::FaultNamed, 50'001);
    fault.piece = door.piece;
    fault.mix = mix;
    door.bench.tell(fault);
    door.tell(What::FragmentFound, 50'002, "", 2);
    const Dossier dossier = door.dossier();
    ASSERT_EQ(dossier.visits.size(), 2U);
    const VisitFacts& before = dossier.visits.front();
    EXPECT_EQ(before.handedOver->takenBy, "her brother");
    EXPECT_TRUE(before.isOver());
    const auto glue = std::ranges::find(before.putIn, "fastAdhesive", &PutIn::material);
    ASSERT_NE(glue, before.putIn.end());
    EXPECT_EQ(glue->batch, "batch 7");
    EXPECT_EQ(dossier.now().number, 2);
    EXPECT_EQ(dossier.now().cameFor, "joinFailed");
    EXPECT_EQ(dossier.now().faults.front().mix, mix);
    EXPECT_EQ(dossier.now().fragmentsFound, 2);
    EXPECT_FALSE(dossier.now().isOver());
}
