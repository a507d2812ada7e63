#include "core/service/benchservice.h"

#include "tests/support/fakeclock.h"
#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::service;
using namespace mend::test;
using bench::ActKind;
using bench::What;

namespace {

/// A piece at its filler stage, served by a service whose writes are collected.
struct Served {
    Served() : source(shippedRules(), 24), clock(TestBench::at(100))
    {
        piece = source.add("goldLacquerSeam").id;
        source.upTo(piece, "fillRun", 1);
        record = {source.roster(), source.events(), EventId(static_cast<std::int64_t>(source.events().size()) + 1)};
        service = std::make_unique<BenchService>(clock, source.book(), record, [this](const auto& events) {
            kept.insert(kept.end(), events.begin(), events.end());
        });
    }
    std::vector<EventId> tap(ActKind kind, const std::string& stage)
    {
        bench::Tap tap;
        tap.piece = piece;
        tap.act = {kind, {stage, 1}, {}};
        return service->tap(tap);
    }
    bool isDone(const std::string& stage) const
    {
        const bench::StageRecord* told = service->bench().piece(piece)->record({stage, 1});
        return told && told->isDone();
    }
    TestBench source;
    FakeClock clock;
    PieceId piece;
    BenchRecord record;
    std::vector<bench::Event> kept;
    std::unique_ptr<BenchService> service;
};

} // namespace

TEST(BenchService, KnowsATapBeforeItIsStored)
{
    Served served;
    const auto ids = served.tap(ActKind::Finish, "fillRun");
    ASSERT_EQ(ids.size(), 1U);
    EXPECT_TRUE(served.isDone("fillRun"));
    EXPECT_TRUE(served.service->notStoredYet().contains(served.piece));
    ASSERT_EQ(served.kept.size(), 1U);
    EXPECT_EQ(served.kept.front().id, ids.front());
    served.service->stored(ids);
    EXPECT_TRUE(served.service->notStoredYet().empty());
}

TEST(BenchService, NumbersEventsOnInOrder)
{
    Served served;
    served.tap(ActKind::Finish, "fillRun");
    served.service->read(TestBench::benchPlace, Temperature::fromCelsius(25), std::nullopt);
    ASSERT_EQ(served.kept.size(), 2U);
    EXPECT_EQ(served.kept[0].id, served.record.next);
    EXPECT_EQ(served.kept[1].id, EventId(served.record.next.value() + 1));
}

TEST(BenchService, TakesBackForTenSeconds)
{
    Served served;
    const auto ids = served.tap(ActKind::Finish, "fillRun");
    const auto offer = served.service->undoOffer(served.clock.now().utc);
    ASSERT_TRUE(offer);
    EXPECT_EQ(offer->events, ids);
    EXPECT_TRUE(served.service->undoOffer(served.clock.now().utc + std::chrono::milliseconds(9999)));
    EXPECT_FALSE(served.service->undoOffer(served.clock.now().utc + std::chrono::seconds(10)));
    served.service->undo(offer->events);
    EXPECT_FALSE(served.isDone("fillRun"));
    EXPECT_EQ(served.kept.back().what, What::Voided);
    EXPECT_FALSE(served.service->undoOffer(served.clock.now().utc)) << "there is no redo";
}

TEST(BenchService, AMixIsNamedByTheEventThatBeganItAndTakesTheLastBatch)
{
    Served served;
    const MixId first = served.service->startMix("fillerPaste", "F-12");
    EXPECT_EQ(first.value(), served.kept.back().id.value());
    served.service->endMix(first, "thrownAway");
    const MixId second = served.service->startMix("fillerPaste");
    EXPECT_EQ(served.service->bench().mixes.at(second).batch, "F-12");
    EXPECT_FALSE(served.service->bench().mixes.at(first).isAlive());
}

TEST(BenchService, ShowsWhatAnotherTimeWouldMoveBeforeItIsKept)
{
    Served served;
    const auto ids = served.tap(ActKind::Finish, "fillRun");
    const auto closes = [&](const bench::Board& board) { return *board.cards.front().window->closes; };
    const Instant before = closes(served.service->board());
    const bench::Board board = served.service->ifRetold(ids.front(), TestBench::at(96), {});
    EXPECT_EQ(closes(board), before - std::chrono::minutes(4));
    EXPECT_EQ(closes(served.service->board()), before) << "nothing is kept yet";
    served.service->retell(ids.front(), TestBench::at(96), {});
    EXPECT_EQ(closes(served.service->board()), before - std::chrono::minutes(4));
}

TEST(BenchService, StateAfterARestartIsTheStateBefore)
{
    Served served;
    served.service->startMix("fillerPaste", "F-12");
    served.tap(ActKind::Begin, "fillRun");
    served.clock.pass(std::chrono::minutes(3));
    served.tap(ActKind::Finish, "fillRun");
    served.clock.pass(std::chrono::minutes(6));
    served.tap(ActKind::Finish, "wipeBack");
    served.service->undo(served.service->undoOffer(served.clock.now().utc)->events);
    BenchRecord again = served.record;
    again.events.insert(again.events.end(), served.kept.begin(), served.kept.end());
    const BenchService restarted(served.clock, served.source.book(), again, nullptr);
    EXPECT_EQ(restarted.bench(), served.service->bench());
    EXPECT_EQ(restarted.board().windows, served.service->board().windows);
}

TEST(BenchService, AnAnswerToAHazardIsKeptAndEndsItsState)
{
    Served served;
    served.service->tellState("flame", true);
    EXPECT_FALSE(served.service->board().states.empty());
    const rules::Hazard* hazard = served.service->book().hazard("INC-01");
    ASSERT_TRUE(hazard);
    const auto ending = std::ranges::find_if(hazard->answers, [](const auto& answer) { return !answer.ends.empty(); });
    ASSERT_NE(ending, hazard->answers.end());
    served.service->tellState(ending->ends, true);
    served.service->answerHazard(served.piece, {"wipeBack", 1}, *hazard, *ending);
    for (const bench::StateInForce& state : served.service->board().states) {
        EXPECT_NE(state.state, ending->ends);
    }
}
