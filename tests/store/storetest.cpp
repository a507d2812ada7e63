#include "core/store/store.h"

#include "tests/store/benchmaker.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <map>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
using bench::Event;
using bench::What;

TEST(Store, GivesBackRandomEventsAsTheyWereTold)
{
    for (unsigned seed = 1; seed <= 5; ++seed) {
        const Scratch scratch;
        const auto events = EventMaker(seed).some(200);
        {
            const auto store = openOrDie(scratch / "bench.mend");
            furnish(*store);
            ASSERT_TRUE(store->append(std::span(events).first(120)).isOk());
            ASSERT_TRUE(store->append(std::span(events).subspan(120)).isOk());
        }
        const auto store = openOrDie(scratch / "bench.mend", OpenMode::ReadWrite);
        EXPECT_EQ(store->allEvents().value(), events) << "seed " << seed;
        EXPECT_EQ(store->nextEventId(), EventId(201));
    }
}

TEST(Store, GivesBackWhatMayBePutRight)
{
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend");
    furnish(*store, 2);
    record::Piece piece = somePiece(1);
    piece.id = PieceId(1);
    piece.owner = CustomerId(1);
    EXPECT_EQ(store->piece(PieceId(1)).value(), piece);
    piece.fragments = 12;
    piece.optionalStages.clear();
    ASSERT_TRUE(store->put(piece).isOk());
    EXPECT_EQ(store->pieces().value().front(), piece);
    EXPECT_EQ(store->customers().value().at(1), (record::Customer{CustomerId(2), "Owner 2", "555-012"}));
    EXPECT_EQ(store->places().value().at(1), (record::Place{PlaceId(2), "Cabinet", record::PlaceKind::Cabinet, 6}));
    EXPECT_EQ(store->people().value().at(0), (record::Person{PersonId(1), "Ines"}));
    ASSERT_TRUE(store->setSetting("timeZone", "Europe/Berlin").isOk());
    ASSERT_TRUE(store->setSetting("timeZone", "Asia/Kathmandu").isOk());
    EXPECT_EQ(store->settings().value(), (std::map<std::string, std::string>{{"timeZone", "Asia/Kathmandu"}}));
    EXPECT_EQ(store->rules("revisionOne").value(), "{\"stages\": []}");
    EXPECT_EQ(store->rules("another").value(), std::nullopt);
    EXPECT_EQ(store->putRules({"revisionOne", "other"}).fault().kind, FaultKind::Conflict);
}

TEST(Store, TakesAPieceInWholeOrNotAtAll)
{
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend");
    furnish(*store, 1);
    const record::Customer owner{CustomerId(), "Mrs Quill", "555-0199"};
    Event bad = someEvent(1, What::Noted, PieceId());
    bad.place = PlaceId(99); // not there
    EXPECT_EQ(store->takeIn(owner, somePiece(2), std::span(&bad, 1)).fault().kind, FaultKind::Conflict);
    EXPECT_EQ(store->customers().value().size(), 1U);
    EXPECT_EQ(store->pieces().value().size(), 1U);
    const Event good = someEvent(1, What::Noted, PieceId());
    const auto id = store->takeIn(owner, somePiece(2), std::span(&good, 1));
    ASSERT_TRUE(id.isOk());
    EXPECT_EQ(store->allEvents().value().at(0).piece, id.value());
    // Told again after a lost answer it is the same piece.
    EXPECT_EQ(store->takeIn(owner, somePiece(2), std::span(&good, 1)).value(), id.value());
    // The same number on a second tag would send a piece home with the wrong owner.
    EXPECT_EQ(store->takeIn({CustomerId(), "Mr Heron", ""}, somePiece(2), {}).fault().kind, FaultKind::Conflict);
    EXPECT_EQ(store->customers().value().size(), 2U);
}

TEST(Store, PassesOverAnEventThatIsAlreadyThereF53)
{
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend");
    furnish(*store);
    std::vector<Event> events{someEvent(1, What::Done), someEvent(2, What::Done)};
    ASSERT_TRUE(store->append(std::span(events).first(1)).isOk());
    EXPECT_TRUE(store->append(events).isOk()); // told again after a lost answer
    EXPECT_EQ(store->allEvents().value(), events);
    events[0].stage.stage = "dustMetal";
    EXPECT_EQ(store->append(std::span(events).first(1)).fault().kind, FaultKind::Conflict);
}

TEST(Store, RefusesWhatCannotBeF25F50)
{
    using namespace std::chrono;
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend");
    furnish(*store);
    const auto refused = [&](auto change) {
        Event event = someEvent(1, What::ReadingTaken);
        change(event);
        const Outcome outcome = store->append(std::span(&event, 1));
        return !outcome.isOk() && outcome.fault().kind == FaultKind::BadInput;
    };
    const auto at = [](int y) { return Instant{sys_days{year{y} / 1 / 1}}; };
    EXPECT_TRUE(refused([&](Event& event) { event.happened = at(9999); }));
    EXPECT_TRUE(refused([&](Event& event) { event.happened = at(0); }));
    EXPECT_TRUE(refused([&](Event& event) { event.happened = at(-44); }));
    EXPECT_TRUE(refused([&](Event& event) { event.until = at(2201); }));
    EXPECT_TRUE(refused([&](Event& event) { event.temperature = Temperature::fromCelsius(-300); }));
    EXPECT_TRUE(refused([&](Event& event) { event.temperature = Temperature::fromCelsius(400); }));
    EXPECT_TRUE(refused([&](Event& event) { event.humidity = percentHumidity(-1); }));
    EXPECT_TRUE(refused([&](Event& event) { event.humidity = percentHumidity(101); }));
    EXPECT_FALSE(refused([&](Event& event) {
        event.happened = at(2038);
        event.until = at(2100);
        event.humidity = percentHumidity(100);
    }));
}

TEST(Store, KeepsWhatIsInTheHouseApartFromWhatHasGoneHome)
{
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend");
    furnish(*store, 3);
    const auto inHand = [&] {
        std::vector<std::int64_t> ids;
        for (const auto& piece : store->piecesInHand().value()) {
            ids.push_back(piece.id.value());
        }
        return ids;
    };
    const auto tell = [&](Event event) { ASSERT_TRUE(store->append(std::span(&event, 1)).isOk()); };
    using Ids = std::vector<std::int64_t>;
    EXPECT_EQ(inHand(), (Ids{1, 2, 3}));
    tell(someEvent(1, What::Done, PieceId(2)));
    tell(someEvent(2, What::HandedOver, PieceId(2)));
    tell(someEvent(3, What::ReturnedUnmended, PieceId(3)));
    EXPECT_EQ(inHand(), (Ids{1}));
    tell(someEvent(4, What::Noted, PieceId(2))); // a note after the hand-over brings nothing back
    EXPECT_EQ(inHand(), (Ids{1}));
    Event undo = someEvent(5, What::Voided, PieceId());
    undo.target = EventId(2);
    tell(undo);
    EXPECT_EQ(inHand(), (Ids{1, 2}));
    Event moved = someEvent(6, What::Retold, PieceId(1)); // it was piece 1 that went home unmended
    moved.target = EventId(3);
    tell(moved);
    EXPECT_EQ(inHand(), (Ids{2, 3}));
    tell(someEvent(7, What::Placed, PieceId(1))); // and it comes back for a new visit
    EXPECT_EQ(inHand(), (Ids{1, 2, 3}));
}

TEST(Store, HandsTheBenchWhatItMustKnowAndNoMore)
{
    using namespace std::chrono;
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend");
    furnish(*store, 2);
    std::vector<Event> events;
    const auto tell = [&](What what, PieceId piece, Instant happened) -> Event& {
        events.push_back(someEvent(static_cast<std::int64_t>(events.size()) + 1, what, piece));
        events.back().happened = happened;
        return events.back();
    };
    const Instant longAgo = benchStart - days(400);
    const Instant since = benchStart - days(30);
    for (int i = 0; i < 5; ++i) { // 1 to 5: old readings, of which the last three stay
        tell(What::ReadingTaken, PieceId(), longAgo + hours(i)).place = PlaceId(1);
    }
    tell(What::StateBegun, PieceId(), longAgo).word = "flame";          // 6: may still burn
    tell(What::MixStarted, PieceId(), longAgo).mix = MixId(7);          // 7: on a piece in hand
    tell(What::MixStarted, PieceId(), longAgo).mix = MixId(8);          // 8: long gone
    tell(What::Done, PieceId(1), longAgo).mix = MixId(7);               // 9
    tell(What::Done, PieceId(2), longAgo);                              // 10: gone home, but moved to 1 by 13
    tell(What::Done, PieceId(2), longAgo);                              // 11: gone home
    tell(What::HandedOver, PieceId(2), benchStart);                     // 12
    tell(What::Retold, PieceId(1), longAgo).target = EventId(10);       // 13
    tell(What::Voided, PieceId(), benchStart).target = EventId(9);      // 14
    tell(What::ReadingTaken, PieceId(), benchStart).place = PlaceId(2); // 15
    ASSERT_TRUE(store->append(events).isOk());
    EXPECT_EQ(store->oldestInHand().value(), longAgo) << "of piece 1; piece 2 has gone home";
    std::vector<std::int64_t> ids;
    const auto told = store->benchEvents(since);
    ASSERT_TRUE(told.isOk()) << told.fault().detail;
    for (const Event& event : told.value()) {
        ids.push_back(event.id.value());
        EXPECT_EQ(event, events.at(static_cast<std::size_t>(event.id.value()) - 1));
    }
    EXPECT_EQ(ids, (std::vector<std::int64_t>{3, 4, 5, 6, 7, 9, 10, 13, 14, 15}));
}

TEST(Store, CanBeSavedElsewhereOnceItsFileIsGoneF19)
{
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend");
    furnish(*store);
    const Event event = someEvent(1, What::Done);
    ASSERT_TRUE(store->append(std::span(&event, 1)).isOk());
    std::filesystem::remove(scratch / "bench.mend");
    EXPECT_FALSE(store->isStillThere());
    EXPECT_EQ(store->standing(), Standing::Gone);
    EXPECT_EQ(store->setSetting("a", "b").fault().kind, FaultKind::NotFound);
    ASSERT_TRUE(store->saveAs(scratch / "saved.mend").isOk());
    EXPECT_EQ(openOrDie(scratch / "saved.mend", OpenMode::ReadWrite)->allEvents().value(), std::vector{event});
    EXPECT_EQ(store->saveAs(scratch / "saved.mend").fault().kind, FaultKind::Conflict) << "nothing is written over";
}
