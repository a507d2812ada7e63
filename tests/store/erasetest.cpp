// Forgetting a person: nothing of them is left in any byte, and everything else stays.
#include "core/store/backups.h"
#include "core/store/check.h"

#include "core/record/fields.h"
#include "tests/record/somepage.h"
#include "tests/store/benchmaker.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
using bench::Event;
using bench::What;
namespace fs = std::filesystem;

namespace {

std::string bytesOfFile(const fs::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

std::string utf16(const std::string& ascii)
{
    std::string wide;
    for (const char letter : ascii) {
        wide += letter;
        wide += '\0';
    }
    return wide;
}

/// Everything that only the person to be forgotten brought.
const std::vector<std::string> canaries{"Euphrosyne",   "euphrosyne",      "Vanezzi",     "vanezzi",
                                        "5550142",      "555-0142",        "evz@example", "Quillon Street",
                                        "quillon",      "heirloom-canary", "wish-canary", "note-canary",
                                        "photo-canary", "thumb-canary",    "draft-canary"};

record::Intake canaryPage()
{
    record::Intake page = somePage();
    page.owner.name = "Euphrosyne Vanezzi";
    page.owner.contact = "555-0142";
    page.owner.more = {{record::ContactKind::Mail, "evz@example.org"}, {record::ContactKind::Post, "1 Quillon Street"}};
    page.owner.note = "note-canary";
    page.visit.story = "heirloom-canary";
    page.visit.wishes = "wish-canary";
    page.visit.condition.inferred = "Euphrosyne thinks it fell";
    page.piece.looks = "bowl of Ms Vanezzi, blue";
    return page;
}

/// A bench of forty people; one of them with a mended piece that went back to her.
struct Bench {
    Bench()
    {
        const auto store = openOrDie(file);
        furnish(*store, 40);
        std::vector<Event> first{someEvent(1, What::Received, PieceId())};
        taken = store->takeIn(canaryPage(), 2027, first).takeValue();
        std::vector<Event> events{someEvent(2, What::Noted, taken.piece), someEvent(3, What::Noted, PieceId(3)),
                                  someEvent(4, What::Noted, PieceId(4)), someEvent(5, What::HandedOver, taken.piece)};
        events[0].note = "note-canary";
        events[1].note = "Same glue as for Euphrosyne Vanezzi";
        events[2].note = "the handle is warm";
        events[3].note = "Euphrosyne herself";
        EXPECT_TRUE(store->append(events).isOk());
        EXPECT_TRUE(
            store->addPhoto("photo-canary", "thumb-canary", {"", taken.piece, EventId(), "condition"}, {}).isOk());
        record::Intake draft = canaryPage();
        draft.owner.id = taken.owner;
        draft.owner.name = "draft-canary";
        EXPECT_TRUE(store->putDraft({"intake", record::sheetText(record::sheetOf(draft)), benchStart}).isOk());
    }
    std::vector<std::string> traces() const
    {
        std::vector<std::string> found;
        for (const auto& entry : fs::recursive_directory_iterator(scratch.folder())) {
            if (!entry.is_regular_file()) {
                continue;
            }
            const std::string bytes = bytesOfFile(entry.path());
            for (const std::string& canary : canaries) {
                if (bytes.find(canary) != std::string::npos || bytes.find(utf16(canary)) != std::string::npos) {
                    found.push_back(canary + " in " + entry.path().filename().string());
                }
            }
        }
        return found;
    }
    Scratch scratch;
    fs::path file = scratch / "bench.mend";
    TakenIn taken;
};

} // namespace

TEST(Erase, LeavesNoByteOfThePersonInFileJournalOrIndex)
{
    const Bench bench;
    EXPECT_GE(bench.traces().size(), canaries.size() - 1) << "there is something to be found at first";
    std::vector<Event> before;
    {
        const auto store = openOrDie(bench.file, OpenMode::ReadWrite);
        before = store->allEvents().value();
        const Outcome erased = store->erase(bench.taken.owner);
        ASSERT_TRUE(erased.isOk()) << erased.fault().detail;
        EXPECT_EQ(bench.traces(), std::vector<std::string>()) << "while it is open";
        EXPECT_TRUE(checkWhole(*store).isGood()) << "the chain holds";
        EXPECT_TRUE(store->find("Euphrosyne").value().pieces.empty());
        EXPECT_TRUE(store->find("555 0142").value().people.empty());
    }
    EXPECT_EQ(bench.traces(), std::vector<std::string>()) << "and after it was closed";
    const auto store = openOrDie(bench.file, OpenMode::ReadWrite);
    EXPECT_EQ(store->allEvents().value().size(), before.size()) << "what was done to the piece stays";
    const auto piece = store->piece(bench.taken.piece).value();
    ASSERT_TRUE(piece.has_value());
    EXPECT_EQ(piece->benchName, "Heron bowl");
    EXPECT_TRUE(store->customer(bench.taken.owner).value()->isErased());
    EXPECT_EQ(store->customers().value().size(), 41U) << "erased customer";
    EXPECT_EQ(store->visitsOf(bench.taken.piece).value().front().condition.seen, canaryPage().visit.condition.seen);
    EXPECT_EQ(store->eventsOf(PieceId(4)).value().back().note, "the handle is warm") << "others keep their notes";
}

TEST(Erase, IsRefusedWhileAPieceIsInTheHouseF52)
{
    const Scratch scratch;
    const auto store = openOrDie(scratch / "bench.mend");
    furnish(*store, 1);
    const Outcome erased = store->erase(CustomerId(1));
    ASSERT_FALSE(erased.isOk());
    EXPECT_EQ(erased.fault().kind, FaultKind::Conflict);
    EXPECT_EQ(store->customers().value().front().name, "Owner 1") << "nothing was changed";
    EXPECT_EQ(store->erase(CustomerId(99)).fault().kind, FaultKind::NotFound);
}

TEST(Erase, BackupsMadeBeforeStillHoldTheNameAndAreListedWithTheirDates)
{
    const Bench bench;
    const auto store = openOrDie(bench.file, OpenMode::ReadWrite);
    const Backups backups(bench.scratch / "backups");
    ASSERT_TRUE(backups.make(*store, benchStart).isOk());
    ASSERT_TRUE(store->erase(bench.taken.owner).isOk());
    ASSERT_TRUE(backups.make(*store, benchStart + std::chrono::days(1)).isOk());
    const auto all = backups.all();
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all.front().made, benchStart + std::chrono::days(1));
    EXPECT_EQ(bytesOfFile(all.front().file).find("Euphrosyne"), std::string::npos);
    EXPECT_NE(bytesOfFile(all.back().file).find("Euphrosyne"), std::string::npos) << "until it is gone";
    EXPECT_EQ(backups.madeBefore(benchStart + std::chrono::hours(1)), std::vector{all.back()});
}

TEST(Erase, AsksAboutThoseWhoHadNothingHereForLong)
{
    const Bench bench; // told about 2026-03-09
    const auto store = openOrDie(bench.file, OpenMode::ReadWrite);
    const auto gone = store->longGone(benchStart + std::chrono::days(1)).value();
    ASSERT_EQ(gone.size(), 1U) << "the others have a piece in the house";
    EXPECT_EQ(gone.front().person.id, bench.taken.owner);
    EXPECT_EQ(gone.front().pieces, 1);
    EXPECT_TRUE(store->longGone(benchStart).value().empty());
    ASSERT_TRUE(store->erase(bench.taken.owner).isOk());
    EXPECT_TRUE(store->longGone(benchStart + std::chrono::days(1)).value().empty())
        << "there is nobody left to ask about";
}
