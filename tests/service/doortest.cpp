#include "core/service/door.h"

#include "core/service/openbench.h"
#include "tests/record/somepage.h"
#include "tests/support/fakeclock.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QElapsedTimer>

#include <array>
#include <csignal>

#include <sys/wait.h>
#include <unistd.h>

using namespace mend;
using namespace mend::service;
using namespace mend::test;
using bench::What;
using Against = HandOverFacts::Against;

namespace {

constexpr auto benchName = "bench.mend";

/// A bench file with its thread, its bench and its door, as the program puts them together.
struct House {
    explicit House(const Scratch& scratch, Instant now = TestBench::at(0)) : clock(now)
    {
        store::OpenOptions options;
        options.mode = store::OpenMode::CreateIfMissing;
        auto store = store::Store::open(scratch / benchName, options).takeValue();
        const rules::RuleBook book = shippedRules();
        for (const rules::Procedure& procedure : book.procedures) {
            EXPECT_TRUE(store->putRules({procedure.hash, "the rules of " + procedure.key}).isOk());
        }
        EXPECT_TRUE(store->put(record::Place{PlaceId(1), "Bench", record::PlaceKind::Bench, 0}).isOk());
        BenchRecord record;
        record.roster.places = store->places().value();
        record.roster.pieces = store->piecesInHand().value();
        record.roster.customers = store->ownersInHand().value();
        record.events = store->benchEvents(Instant{}).value();
        record.next = store->nextEventId();
        bench =
            std::make_unique<BenchService>(clock, book, record, [this](const auto& events) { thread->append(events); });
        thread = std::make_unique<store::StoreThread>(std::move(store), store::StoreNews{});
        door = std::make_unique<Door>(clock, *bench, *thread, Door::KeepRules{});
    }
    ~House() { thread.reset(); }

    /// Asks something of the door and waits for its answer.
    template <class T, class Ask> Result<T> answered(Ask question)
    {
        std::optional<Result<T>> held;
        question([&held](const Result<T>& result) { held = result; });
        QElapsedTimer waited;
        waited.start();
        while (!held && waited.elapsed() < 10'000) {
            QCoreApplication::processEvents(QEventLoop::AllEvents, 5);
        }
        return held.value_or(Result<T>(Fault{FaultKind::Unavailable, "no answer"}));
    }
    store::TakenIn takeIn(const record::Intake& page)
    {
        const auto taken = answered<store::TakenIn>([&](auto answer) { door->takeIn(page, answer); });
        EXPECT_TRUE(taken.isOk()) << taken.fault().detail;
        return taken ? taken.value() : store::TakenIn{};
    }
    PieceFile file(PieceId piece)
    {
        auto read = answered<PieceFile>([&](auto answer) { door->openPiece(piece, answer); });
        EXPECT_TRUE(read.isOk());
        return read.takeValue();
    }
    HandOverFacts handOver(PieceId piece)
    {
        return handOverFacts(file(piece), bench->bench().piece(piece), bench->book(), clock.now().utc,
                             dayIn(QTimeZone::utc()));
    }

    FakeClock clock;
    std::unique_ptr<BenchService> bench;
    std::unique_ptr<store::StoreThread> thread;
    std::unique_ptr<Door> door;
};

/// A hand-over with everything that can be told at one.
HandingOver wholeHandOver(PieceId piece)
{
    HandingOver told;
    told.piece = piece;
    told.fragmentsOut = 4;
    told.accessoriesOut = 2;
    told.missing = "one fragment stays here";
    told.waitReason = "it is only to be looked at";
    told.paid = Money(2500, "EUR");
    told.takenBy = "her brother";
    told.signedHow = "drawn";
    return told;
}

void expectHandedOver(const PieceFile& file)
{
    const bench::VisitFacts& visit = file.dossier.now();
    ASSERT_TRUE(visit.handedOver);
    EXPECT_EQ(visit.handedOver->takenBy, "her brother");
    EXPECT_EQ(visit.handedOver->signedHow, "drawn");
    EXPECT_EQ(visit.fragments.out, 4);
    EXPECT_EQ(visit.accessories.out, 2);
    EXPECT_EQ(visit.payments.back().money, Money(2500, "EUR"));
    EXPECT_EQ(visit.waitShortenedBecause, "it is only to be looked at");
    EXPECT_TRUE(std::ranges::any_of(file.events, [](const bench::Event& event) {
        return event.what == What::Noted && event.note == "one fragment stays here";
    }));
}

} // namespace

TEST(Door, AHandOverIsOneActAndIsTakenBackAsOne)
{
    const Scratch scratch;
    House house(scratch);
    const store::TakenIn taken = house.takeIn(somePage());
    const bench::Dossier before = house.file(taken.piece).dossier;
    const auto told = house.door->handOver(wholeHandOver(taken.piece));
    ASSERT_EQ(told.size(), 6U);
    EXPECT_EQ(house.bench->bench().piece(taken.piece), nullptr);
    expectHandedOver(house.file(taken.piece));
    EXPECT_TRUE(house.door->handOver(wholeHandOver(taken.piece)).empty()) << "it is no longer here";
    house.bench->undo(told);
    EXPECT_NE(house.bench->bench().piece(taken.piece), nullptr);
    EXPECT_EQ(house.file(taken.piece).dossier, before);
}

TEST(Door, APieceThatGoesBackUnmendedIsNotHandedOver)
{
    const Scratch scratch;
    House house(scratch);
    const store::TakenIn taken = house.takeIn(somePage());
    HandingOver told = wholeHandOver(taken.piece);
    told.unmended = "it cannot be mended";
    house.door->handOver(told);
    const PieceFile file = house.file(taken.piece);
    EXPECT_TRUE(file.dossier.now().returnedUnmended);
    EXPECT_FALSE(file.dossier.now().handedOver);
}

TEST(Door, AnAcknowledgedHandOverSurvivesAKill)
{
    const Scratch scratch;
    store::TakenIn taken;
    {
        House house(scratch);
        taken = house.takeIn(somePage());
    }
    std::array<int, 2> ends{};
    ASSERT_EQ(::pipe(ends.data()), 0);
    const pid_t child = ::fork();
    if (child == 0) {
        House house(scratch);
        const auto told = house.door->handOver(wholeHandOver(taken.piece));
        const bool stored = told.size() == 6 && house.thread->waitUntilStored(std::chrono::seconds(20));
        const char answer = stored ? 'y' : 'n';
        (void)!::write(ends[1], &answer, 1);
        for (;;) {
            ::pause(); // until it is killed: nothing is put away in order
        }
    }
    ::close(ends[1]);
    char answer = 'n';
    EXPECT_EQ(::read(ends[0], &answer, 1), 1);
    ::close(ends[0]);
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    ASSERT_EQ(answer, 'y');
    House again(scratch);
    expectHandedOver(again.file(taken.piece));
}

TEST(Door, TakesAPieceInAndTheBenchKnowsItAtOnce)
{
    const Scratch scratch;
    House house(scratch);
    const store::TakenIn taken = house.takeIn(somePage());
    const bench::PieceState* state = house.bench->bench().piece(taken.piece);
    ASSERT_NE(state, nullptr);
    EXPECT_TRUE(state->agreed);
    EXPECT_EQ(house.bench->board().cards.size(), 1U);
    const PieceFile file = house.file(taken.piece);
    EXPECT_EQ(file.visit()->condition, somePage().visit.condition);
    EXPECT_EQ(dayText(file.dossier.now().promise()->day), "2027-05-14");
    EXPECT_EQ(file.dossier.now().payments.front().money, Money(5000, "EUR"));
    EXPECT_EQ(file.dossier.now().fragments.in, 5);
    EXPECT_EQ(file.dossier.now().accessories.in, 2);
    EXPECT_EQ(file.dossier.now().consentHow, "onPaper");
}

TEST(Door, ReceivesAPieceOfWhichNothingIsAgreed)
{
    const Scratch scratch;
    House house(scratch);
    record::Intake page = somePage();
    page.agreed = false;
    const store::TakenIn taken = house.takeIn(page);
    EXPECT_TRUE(house.bench->board().cards.empty()) << "no card before it is agreed";
    EXPECT_EQ(house.door->counter().waitsForOwner.size(), 1U);
    house.door->agree(taken.piece);
    EXPECT_EQ(house.bench->board().cards.size(), 1U);
    EXPECT_TRUE(house.door->counter().waitsForOwner.empty());
}

TEST(Door, IsFoundAsItWasAfterAPowerCut)
{
    const Scratch scratch;
    store::TakenIn taken;
    bench::Dossier before;
    {
        House house(scratch);
        taken = house.takeIn(somePage());
        house.door->agreePrice(taken.piece, Money(20000, "EUR"));
        house.door->promise(taken.piece, dayFrom("2027-06-01").value());
        house.door->keepDraft(somePage());
        before = house.file(taken.piece).dossier;
    }
    House house(scratch);
    EXPECT_EQ(house.file(taken.piece).dossier, before);
    const auto draft =
        house.answered<std::optional<record::Intake>>([&](auto answer) { house.door->loadDraft(answer); });
    EXPECT_EQ(draft.value(), somePage());
    EXPECT_NE(house.bench->bench().piece(taken.piece), nullptr);
}

TEST(Door, SaysWhatStandsAgainstAHandOver)
{
    const Scratch scratch;
    House house(scratch);
    const store::TakenIn taken = house.takeIn(somePage());
    house.door->agreePrice(taken.piece, Money(20000, "EUR"));
    HandOverFacts facts = house.handOver(taken.piece);
    EXPECT_EQ(facts.against, (std::vector{Against::WorkToDo, Against::MoneyOwed, Against::FragmentsNotCounted,
                                          Against::AccessoriesNotCounted}));
    EXPECT_EQ(facts.owed.left, Money(15000, "EUR"));
    EXPECT_EQ(facts.accessoryList, somePage().visit.accessories);
    house.door->pay(taken.piece, Money(15000, "EUR"));
    house.door->count(taken.piece, "fragmentsOut", 4);
    house.door->count(taken.piece, "accessoriesOut", 2);
    facts = house.handOver(taken.piece);
    EXPECT_EQ(facts.against, (std::vector{Against::WorkToDo, Against::FragmentMissing}));
    house.door->count(taken.piece, "fragmentsOut", 5);
    EXPECT_EQ(house.handOver(taken.piece).against, std::vector{Against::WorkToDo});
    house.door->fragmentFound(taken.piece, 1, "under the bench");
    EXPECT_EQ(house.handOver(taken.piece).fragments.in, 6);
}

TEST(Door, GivesOneDateAndLetsItBeShortenedWithAReason)
{
    const Scratch scratch;
    House house(scratch);
    const store::TakenIn taken = house.takeIn(somePage());
    const rules::Procedure* procedure = house.bench->book().procedure("goldLacquerSeam");
    for (const rules::Stage& stage : procedure->stages) {
        for (int rep = 1; rep <= 4; ++rep) {
            bench::Event done = house.bench->told(What::Done);
            done.piece = taken.piece;
            done.stage = {stage.key, rep};
            house.clock.pass(std::chrono::minutes(1));
            house.bench->tell({done});
        }
    }
    HandOverFacts facts = house.handOver(taken.piece);
    ASSERT_TRUE(facts.from) << "mended";
    EXPECT_EQ(facts.collectable, bench::collectableDay(facts.from->at, dayIn(QTimeZone::utc())));
    EXPECT_EQ(facts.against.front(), Against::WaitNotOver);
    house.door->shortenWait(taken.piece, house.clock.now().utc, "for display only, said so");
    facts = house.handOver(taken.piece);
    EXPECT_TRUE(facts.isWaitOver);
    EXPECT_TRUE(facts.from->fullWait);
    house.door->handOver(taken.piece, "her brother", "drawn");
    EXPECT_EQ(house.bench->bench().piece(taken.piece), nullptr);
    EXPECT_EQ(house.file(taken.piece).dossier.now().handedOver->takenBy, "her brother");
}

TEST(Door, TakesAPieceBackUnderItsNumber)
{
    const Scratch scratch;
    House house(scratch);
    const store::TakenIn first = house.takeIn(somePage());
    house.door->handOver(first.piece, "Ana", "onPaper");
    house.clock.pass(std::chrono::days(40));
    record::Intake again = somePage();
    again.piece.id = first.piece;
    again.owner.id = first.owner;
    again.promised = dayFrom("2027-09-01");
    again.visit.cameFor = record::CameFor::FragmentFound;
    const store::TakenIn second = house.takeIn(again);
    EXPECT_EQ(second.number, first.number);
    EXPECT_EQ(second.visit, 2);
    const bench::PieceState* state = house.bench->bench().piece(first.piece);
    ASSERT_NE(state, nullptr);
    EXPECT_EQ(state->visit, 2);
    house.door->nameFault(first.piece, {"joinSet", 2}, {}, "the second set");
    const PieceFile file = house.file(first.piece);
    EXPECT_EQ(file.visits.size(), 2U);
    EXPECT_EQ(file.dossier.now().cameFor, "fragmentFound");
    EXPECT_EQ(file.dossier.now().faults.front().stage.repetition, 2);
    house.door->removeMaterial(first.piece, "fastAdhesive");
}

TEST(Door, AsksWhetherSomebodyIsKnownAndFindsThem)
{
    const Scratch scratch;
    House house(scratch);
    house.takeIn(somePage());
    record::Intake page = somePage();
    page.piece.benchName = "Blue jug";
    page.owner.name = "Anna Muller";
    page.owner.contact = "elsewhere@example.org";
    page.owner.more.clear();
    const auto people = house.answered<std::vector<store::FoundPerson>>(
        [&](auto answer) { house.door->findPeople("Ana Muler", answer); });
    ASSERT_EQ(people.value().size(), 1U);
    EXPECT_EQ(house.door->faultsOf(page, people.value()), std::vector{record::IntakeFault::PersonMayBeKnown});
    page.piece.benchName = "Herons bowl";
    EXPECT_EQ(house.door->alikeNames(page), std::vector<std::string>{"Heron bowl"});
    const auto found = house.answered<store::Found>([&](auto answer) { house.door->find("bleu herron", answer); });
    ASSERT_EQ(found.value().pieces.size(), 1U);
    EXPECT_EQ(found.value().pieces.front().owner.name, "Ana Müller");
}

TEST(Door, KeepsPhotosWithTheirNotes)
{
    const Scratch scratch;
    House house(scratch);
    const store::TakenIn taken = house.takeIn(somePage());
    record::PhotoNote note;
    note.marks = {{record::MarkKind::Chip, 100, 200, "rim"}};
    const auto hash = house.answered<std::string>([&](auto answer) {
        house.door->addPhoto("working", "thumb", {"", taken.piece, EventId(), record::conditionPhoto}, note, answer);
    });
    ASSERT_TRUE(hash.isOk());
    EXPECT_EQ(house.file(taken.piece).photos.front().note, note);
    const auto bytes = house.answered<std::optional<store::Bytes>>(
        [&](auto answer) { house.door->readThumbnail(hash.value(), answer); });
    EXPECT_EQ(bytes.value(), "thumb");
}

TEST(Door, ErasesAPersonOnlyOnceTheirPiecesAreOutF52)
{
    const Scratch scratch;
    House house(scratch);
    const store::TakenIn taken = house.takeIn(somePage());
    auto erased = house.answered<Done>([&](auto answer) { house.door->erase(taken.owner, answer); });
    ASSERT_FALSE(erased.isOk());
    EXPECT_EQ(erased.fault().kind, FaultKind::Conflict);
    house.door->handOver(taken.piece, "Ana", "onPaper");
    erased = house.answered<Done>([&](auto answer) { house.door->erase(taken.owner, answer); });
    EXPECT_TRUE(erased.isOk());
    EXPECT_TRUE(house.file(taken.piece).owner.isErased());
    house.clock.pass(std::chrono::days(36 * 31));
    const auto gone =
        house.answered<std::vector<store::LongGone>>([&](auto answer) { house.door->askRetention(36, answer); });
    EXPECT_TRUE(gone.value().empty()) << "nobody is left to be asked";
}

TEST(Door, RemindsOfDataThatWasKeptForThreeYears)
{
    const Scratch scratch;
    House house(scratch);
    const store::TakenIn taken = house.takeIn(somePage());
    house.door->handOver(taken.piece, "Ana", "onPaper");
    const auto ask = [&] {
        return house.answered<std::vector<store::LongGone>>([&](auto answer) { house.door->askRetention(36, answer); })
            .value();
    };
    house.clock.set(TestBench::at(0) + std::chrono::days(3 * 365 - 2)); // 2027-03-01 to 2030-02-26
    EXPECT_TRUE(ask().empty());
    house.clock.pass(std::chrono::days(5));
    ASSERT_EQ(ask().size(), 1U);
    record::Customer kept = ask().front().person;
    kept.keptOn = house.door->today();
    EXPECT_TRUE(house.answered<Done>([&](auto answer) { house.door->put(kept, answer); }).isOk());
    EXPECT_TRUE(ask().empty()) << "asked and kept: again in three years";
}
