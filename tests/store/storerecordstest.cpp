// Whole pages of the intake, visits, photos with their notes, drafts.
#include "core/store/check.h"
#include "core/store/seal.h"
#include "core/store/storethread.h"

#include "core/record/fields.h"
#include "core/record/piecenumber.h"
#include "tests/record/somepage.h"
#include "tests/store/benchmaker.h"
#include "tests/support/faultvfs.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <sqlite3.h>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
using bench::Event;
using bench::What;

namespace {

std::vector<Event> firstTold(std::int64_t from, What what = What::Received)
{
    std::vector<Event> events{someEvent(from, what, PieceId()), someEvent(from + 1, What::Counted, PieceId())};
    events.back().word = "fragmentsIn";
    events.back().amount = 5;
    return events;
}

TakenIn takeIn(Store& store, const record::Intake& page, std::int64_t firstEvent, What what = What::Received)
{
    const auto taken = store.takeIn(page, 2027, firstTold(firstEvent, what));
    EXPECT_TRUE(taken.isOk()) << taken.fault().detail;
    return taken ? taken.value() : TakenIn{};
}

} // namespace

TEST(StoreRecords, KeepsAWholePage)
{
    const Scratch scratch;
    TakenIn taken;
    {
        const auto store = openOrDie(scratch / "bench.mend");
        furnish(*store, 0);
        taken = takeIn(*store, somePage(), 1);
    }
    const auto store = openOrDie(scratch / "bench.mend", OpenMode::ReadOnly);
    EXPECT_EQ(taken.number, record::pieceNumber(2027, 1));
    record::Customer owner = somePage().owner;
    owner.id = taken.owner;
    EXPECT_EQ(store->customer(taken.owner).value(), owner);
    record::Piece piece = somePage().piece;
    piece.id = taken.piece;
    piece.owner = taken.owner;
    piece.number = taken.number;
    EXPECT_EQ(store->piece(taken.piece).value(), piece);
    record::Visit visit = somePage().visit;
    visit.piece = taken.piece;
    visit.number = 1;
    visit.procedure = piece.procedure;
    visit.fragments = 5;
    EXPECT_EQ(store->visitsOf(taken.piece).value(), std::vector{visit});
    EXPECT_EQ(store->eventsOf(taken.piece).value().size(), 2U);
    EXPECT_EQ(store->piecesInHand().value().size(), 1U);
    EXPECT_TRUE(checkWhole(*store).isGood());
}

TEST(StoreRecords, KeepsAPageOnceHoweverOftenItIsTold)
{
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend");
    furnish(*store, 0);
    const TakenIn taken = takeIn(*store, somePage(), 1);
    EXPECT_EQ(takeIn(*store, somePage(), 1), taken) << "the answer was lost and the write is told again";
    EXPECT_EQ(store->pieces().value().size(), 1U);
    EXPECT_EQ(store->customers().value().size(), 1U);
    EXPECT_EQ(store->visits().value().size(), 1U);
}

TEST(StoreRecords, GivesAPieceThatComesBackANewVisitUnderItsNumber)
{
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend");
    furnish(*store, 0);
    const TakenIn first = takeIn(*store, somePage(), 1);
    ASSERT_TRUE(store->append(std::vector{someEvent(3, What::HandedOver, first.piece)}).isOk());
    EXPECT_TRUE(store->piecesInHand().value().empty());
    record::Intake again = somePage();
    again.piece.id = first.piece;
    again.owner.id = first.owner;
    again.owner.contact = "07700 900461";
    again.visit.cameFor = record::CameFor::JoinFailed;
    again.visit.condition.seen = "the foot came off";
    const TakenIn second = takeIn(*store, again, 4, What::CameBack);
    EXPECT_EQ(second.number, first.number);
    EXPECT_EQ(second.piece, first.piece);
    EXPECT_EQ(second.visit, 2);
    EXPECT_EQ(store->piecesInHand().value().size(), 1U);
    EXPECT_EQ(store->visitsOf(first.piece).value().at(0).condition.seen, somePage().visit.condition.seen);
    EXPECT_EQ(store->visitsOf(first.piece).value().at(1).condition.seen, "the foot came off");
    EXPECT_EQ(store->customers().value().size(), 1U);
    EXPECT_EQ(store->customer(first.owner).value()->contact, "07700 900461");
}

TEST(StoreRecords, IsNotBroughtBackByAPaymentOrALetter)
{
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend");
    furnish(*store, 0);
    const TakenIn taken = takeIn(*store, somePage(), 1);
    std::int64_t id = 3;
    ASSERT_TRUE(store->append(std::vector{someEvent(id++, What::HandedOver, taken.piece)}).isOk());
    for (const What what : {What::Paid, What::OwnerTold, What::NoticeGiven, What::Promised, What::FaultNamed,
                            What::FragmentFound, What::Counted, What::ConsentGiven, What::Noted}) {
        ASSERT_TRUE(store->append(std::vector{someEvent(id++, what, taken.piece)}).isOk());
        EXPECT_TRUE(store->piecesInHand().value().empty()) << static_cast<int>(what);
    }
    EXPECT_TRUE(checkWhole(*store).isGood());
}

TEST(StoreRecords, NumbersEveryYearFromOne)
{
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend");
    furnish(*store, 0);
    std::int64_t id = 1;
    for (const auto& [year, running] : {std::pair(2026, 1), {2026, 2}, {2027, 1}, {2026, 3}, {2027, 2}}) {
        const auto taken = store->takeIn(somePage(), year, firstTold(id));
        id += 2;
        EXPECT_EQ(taken.value().number, record::pieceNumber(year, running));
    }
    record::Piece last = store->pieces().value().front();
    last.number = record::pieceNumber(2026, 9999).value();
    ASSERT_TRUE(store->put(last).isOk());
    EXPECT_EQ(store->takeIn(somePage(), 2026, firstTold(id)).fault().kind, FaultKind::Conflict);
}

TEST(StoreRecords, TakesAPageWholeOrNotAtAllF5)
{
    int calls = 0;
    int struck = 0;
    const Scratch furnished;
    furnish(*openOrDie(furnished / "bench.mend"), 0);
    for (int n = 0; n == 0 || n <= calls; n += n < 12 ? 1 : 3) {
        const Scratch scratch;
        std::filesystem::copy_file(furnished / "bench.mend", scratch / "bench.mend");
        FaultVfs& faults = FaultVfs::instance();
        faults.calm();
        faults.watch(scratch.folder());
        const auto store = openOrDie(scratch / "bench.mend", OpenMode::ReadWrite, FaultVfs::name);
        faults.arm(n > 0 ? FaultVfs::Mode::FailOnce : FaultVfs::Mode::Sound, n, SQLITE_IOERR_WRITE);
        const auto taken = store->takeIn(somePage(), 2027, firstTold(1));
        calls = n == 0 ? faults.calls() : calls;
        struck += taken.isOk() ? 0 : 1;
        faults.calm();
        if (n == 0) {
            ASSERT_TRUE(taken.isOk());
            ASSERT_GT(calls, 5);
            continue;
        }
        if (!taken.isOk()) { // else the failing call was one that SQLite does without
            const bool isThere = !store->pieces().value().empty();
            EXPECT_EQ(store->visits().value().size(), isThere ? 1U : 0U) << n;
            EXPECT_EQ(store->allEvents().value().size(), isThere ? 2U : 0U) << n;
        }
        EXPECT_TRUE(store->takeIn(somePage(), 2027, firstTold(1)).isOk()) << n << ": the retry";
        EXPECT_EQ(store->pieces().value().size(), 1U) << n;
        EXPECT_TRUE(checkWhole(*store).isGood()) << n;
    }
    EXPECT_GT(struck, 10);
}

TEST(StoreRecords, IsWholeOrNotThereAfterAPowerCutAtAnyMomentF1F4)
{
    const Scratch furnished;
    furnish(*openOrDie(furnished / "bench.mend"), 0);
    FaultVfs& faults = FaultVfs::instance();
    int whole = 0;
    int none = 0;
    int calls = 1;
    for (int n = 1; n <= calls; n += 2) {
        const Scratch here;
        const Scratch after;
        std::filesystem::copy_file(furnished / "bench.mend", here / "bench.mend");
        faults.calm();
        faults.watch(here.folder());
        bool told = false;
        {
            const auto store = openOrDie(here / "bench.mend", OpenMode::ReadWrite, FaultVfs::name);
            if (n == 1) {
                faults.calm();
                ASSERT_TRUE(store->putDraft({"other", "{}", benchStart}).isOk());
                ASSERT_TRUE(store->takeIn(somePage(), 2027, firstTold(1)).isOk());
                calls = faults.calls() + 2;
                continue;
            }
            faults.arm(FaultVfs::Mode::CutPower, n - 1, 0);
            told = store->takeIn(somePage(), 2027, firstTold(1)).isOk();
        }
        faults.disk(after.folder(), static_cast<unsigned>(n));
        faults.calm();
        const auto store = openOrDie(after / "bench.mend", OpenMode::ReadWrite);
        const bool isThere = !store->pieces().value().empty();
        (isThere ? whole : none) += 1;
        EXPECT_TRUE(isThere || !told) << n << ": an acknowledged page is lost";
        EXPECT_EQ(store->visits().value().size(), isThere ? 1U : 0U) << n;
        EXPECT_EQ(store->customers().value().size(), isThere ? 1U : 0U) << n;
        EXPECT_EQ(store->allEvents().value().size(), isThere ? 2U : 0U) << n;
        EXPECT_EQ(store->find("heron").value().pieces.size(), isThere ? 1U : 0U) << n;
        EXPECT_TRUE(checkWhole(*store).isGood()) << n;
    }
    EXPECT_GT(whole, 0);
    EXPECT_GT(none, 5);
}

TEST(StoreRecords, NoPictureWithoutItsRowsAndNoRowsWithoutTheirPictureF8)
{
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend", OpenMode::CreateIfMissing, FaultVfs::name);
    furnish(*store, 1);
    FaultVfs& faults = FaultVfs::instance();
    faults.watch(scratch.folder());
    const PhotoUse use{"", PieceId(1), EventId(), record::conditionPhoto};
    record::PhotoNote note;
    note.words = "the rim";
    note.marks = {{record::MarkKind::Crack, 1200, 8800, "to the foot"}};
    const Bytes picture(60'000, 'p');
    int refused = 0;
    for (int n = 1; n <= 40; ++n) {
        const Bytes bytes = picture + std::to_string(n);
        faults.arm(FaultVfs::Mode::FailForEver, n, SQLITE_FULL);
        const auto kept = store->addPhoto(bytes, "small", use, note);
        faults.calm();
        if (!kept) {
            ++refused;
            EXPECT_EQ(store->notedPhotosOf(PieceId(1)).value().size(), 0U) << n;
            EXPECT_EQ(store->database().number("SELECT count(*) FROM photo_bytes"), 0) << n;
            EXPECT_EQ(store->database().number("SELECT count(*) FROM photo_note"), 0) << n;
        } else {
            break;
        }
    }
    EXPECT_GT(refused, 3);
    const auto kept = store->addPhoto(picture, "small", use, note);
    ASSERT_TRUE(kept.isOk()) << "once there is room again";
    const auto photos = store->notedPhotosOf(PieceId(1)).value();
    ASSERT_FALSE(photos.empty());
    EXPECT_EQ(photos.back().note, note);
    EXPECT_EQ(store->photo(photos.back().use.photo).value(), picture);
    EXPECT_TRUE(checkWhole(*store).isGood());
}

TEST(StoreRecords, ADraftOutlivesTheProgram)
{
    const Scratch scratch;
    const std::string sheet = record::sheetText(record::sheetOf(somePage()));
    {
        const auto store = openOrDie(scratch / "bench.mend");
        furnish(*store, 0);
        ASSERT_TRUE(store->putDraft({"intake", "{}", benchStart}).isOk());
        ASSERT_TRUE(store->putDraft({"intake", sheet, benchStart}).isOk());
    }
    const auto store = openOrDie(scratch / "bench.mend", OpenMode::ReadWrite);
    EXPECT_EQ(store->drafts().value(), (std::vector<Draft>{{"intake", sheet, benchStart}}));
    EXPECT_TRUE(store->takeIn(somePage(), 2027, firstTold(1), "intake").isOk());
    EXPECT_TRUE(store->drafts().value().empty()) << "the page was kept";
}

TEST(StoreRecords, FindsARowOfTheDoorThatWasChanged)
{
    for (const char* const tampering :
         {"UPDATE visit SET sheet = replace(sheet, 'rim', 'rib')", "UPDATE customer SET sheet = ''",
          "UPDATE piece SET sheet = ''", "UPDATE photo_note SET sheet = '{}'", "UPDATE draft SET sheet = '{}'",
          "UPDATE find_entry SET words = 'other' WHERE entry = 2"}) {
        const Scratch scratch;
        const auto store = openOrDie(scratch / "bench.mend");
        furnish(*store, 0);
        takeIn(*store, somePage(), 1);
        record::PhotoNote note;
        note.words = "the rim";
        ASSERT_TRUE(store->addPhoto("picture", "small", {"", PieceId(1), EventId(), "condition"}, note).isOk());
        ASSERT_TRUE(store->putDraft({"intake", "[]", benchStart}).isOk());
        ASSERT_TRUE(checkWhole(*store).isGood());
        store->database().run(tampering);
        EXPECT_FALSE(checkWhole(*store).isGood()) << tampering;
    }
}

TEST(StoreRecords, BringsAFileOfTheFirstVersionUpToDateAndFindsItsPieces)
{
    const Scratch scratch;
    {
        OpenOptions options;
        options.mode = OpenMode::CreateIfMissing;
        options.schema = {shippedSchema().front()};
        Database database = Database::open(scratch / "old.mend", Access::Create);
        database.settle(std::chrono::milliseconds(50));
        Migrator(options.schema).create(database);
        database.prepare("INSERT INTO meta VALUES ('fileId', 'old', ?1)")
            .with(Blob{Canon("meta").add("fileId").add("old").seal()})
            .run();
        database.prepare("INSERT INTO chain VALUES (1, 0, 0, ?1)").with(Blob{firstLink("old")}).run();
        database.prepare("INSERT INTO customer VALUES (7, 'Ana Müller', '555-0142', ?1)")
            .with(Blob{Canon("customer").add(std::int64_t{7}).add("Ana Müller").add("555-0142").seal()})
            .run();
    }
    const auto store = openOrDie(scratch / "old.mend", OpenMode::ReadWrite);
    EXPECT_EQ(store->customers().value(), (std::vector<record::Customer>{{CustomerId(7), "Ana Müller", "555-0142"}}));
    EXPECT_EQ(store->find("muler").value().people.size(), 1U);
    EXPECT_TRUE(checkWhole(*store).isGood());
}
