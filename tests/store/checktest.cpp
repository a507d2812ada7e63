// Whatever is not as it was written is found.
#include "core/store/check.h"

#include "core/store/seal.h"
#include "tests/store/benchmaker.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <map>
#include <random>
#include <sstream>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
using Part = Finding::Part;
namespace fs = std::filesystem;

namespace {

std::string bytesOf(const fs::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

void fillBench(const fs::path& file)
{
    auto store = openOrDie(file);
    furnish(*store, 20);
    EXPECT_TRUE(store->append(EventMaker(5, 20).some(300)).isOk());
    EXPECT_TRUE(store->setSetting("timeZone", "Asia/Kathmandu").isOk());
    std::mt19937 random(11);
    for (int i = 1; i <= 6; ++i) {
        Bytes picture(static_cast<std::size_t>(8'000 * i), '\0');
        std::ranges::generate(picture, [&] { return static_cast<char>(random()); });
        EXPECT_TRUE(store->putPhoto(picture, picture.substr(0, 700), {"", PieceId(i), EventId(), "condition"}).isOk());
    }
}

/// A bench with 20 pieces, 300 events and 6 pictures: filled once, then copied.
std::unique_ptr<Store> fullBench(const fs::path& file)
{
    static const Scratch scratch;
    if (!fs::exists(scratch / "full.mend")) {
        fillBench(scratch / "full.mend");
    }
    fs::copy_file(scratch / "full.mend", file);
    return openOrDie(file, OpenMode::ReadWrite);
}

/// Everything a file can be asked, as text; or the fault of what could not be answered.
std::string everythingIn(const Store& store)
{
    std::ostringstream all;
    const auto add = [&](const auto& result, auto write) {
        if (!result) {
            all << "fault\n";
            return;
        }
        for (const auto& row : result.value()) {
            write(row);
        }
    };
    const auto addEvent = [&](const bench::Event& event) { all << canonical(event) << event.note << '\n'; };
    add(store.allEvents(), addEvent);
    add(store.benchEvents(benchStart), addEvent);
    const auto addPiece = [&](const record::Piece& piece) {
        all << piece.id.value() << piece.number << piece.benchName << piece.owner.value() << piece.procedure
            << static_cast<int>(piece.body) << ' ' << piece.fragments << ' ' << piece.joins << ' ' << piece.sets << ' '
            << piece.seam.count() << ' ' << piece.chip.count() << piece.optionalStages.size()
            << piece.materialsInIt.size() << '\n';
        add(store.photosOf(piece.id), [&](const PhotoUse& use) {
            all << use.photo << use.purpose << use.event.value() << '\n';
            for (const auto& bytes : {store.photo(use.photo), store.thumbnail(use.photo)}) {
                all << (bytes && bytes.value() ? *bytes.value() : "fault");
            }
        });
        add(store.eventsOf(piece.id), addEvent);
    };
    add(store.pieces(), addPiece);
    add(store.piecesInHand(), addPiece);
    add(store.customers(), [&](const auto& row) { all << row.id.value() << row.name << row.contact << '\n'; });
    add(store.places(), [&](const auto& row) { all << row.id.value() << row.name << row.slots << '\n'; });
    add(store.people(), [&](const auto& row) { all << row.id.value() << row.name << '\n'; });
    add(store.settings(), [&](const auto& row) { all << row.first << row.second << '\n'; });
    add(store.allRules(), [&](const auto& row) { all << row.hash << row.text << '\n'; });
    return all.str();
}

bool found(const CheckReport& report, Part part)
{
    return std::ranges::any_of(report.findings, [&](const Finding& finding) { return finding.part == part; });
}

} // namespace

TEST(Check, FindsNothingInAGoodFile)
{
    const Scratch scratch;
    const auto store = fullBench(scratch / "bench.mend");
    const CheckReport report = checkWhole(*store);
    EXPECT_TRUE(report.isGood()) << report.findings.front().detail;
    EXPECT_EQ(report.events, 300);
    EXPECT_EQ(report.photos, 6);
    EXPECT_GE(report.rows, 44); // pieces, owners, places, people
}

TEST(Check, FindsWhatWasDoneToTheChain)
{
    for (const char* const tampering :
         {"UPDATE event SET happened = '2026-03-09T09:00:00.001Z' WHERE id = 7",
          "UPDATE event SET what = what % 34 + 1 WHERE id = 300", "UPDATE event SET word = word || '.' WHERE id = 1",
          "UPDATE event SET stage = 'other' WHERE id = 9", "UPDATE event SET repetition = 9 WHERE id = 9",
          "UPDATE event SET amount = coalesce(amount, 0) + 1 WHERE id = 9",
          "UPDATE event SET temperature_cc = coalesce(temperature_cc, 0) + 1 WHERE id = 9",
          "UPDATE event SET humidity_cp = coalesce(humidity_cp, 0) / 2 + 1 WHERE id = 9",
          "UPDATE event SET person = CASE person WHEN 1 THEN 2 ELSE 1 END WHERE id = 9",
          "UPDATE event SET since_boot_ns = since_boot_ns + 1 WHERE id = 9",
          "UPDATE event SET link = zeroblob(32) WHERE id = 9", "DELETE FROM event WHERE id = 299",
          "DELETE FROM event WHERE id = 300", "UPDATE event SET id = 1000 WHERE id = 300",
          "UPDATE chain SET events = events - 1", "UPDATE chain SET link = zeroblob(32)",
          "INSERT INTO event SELECT 301, what, piece, stage, repetition, person, place, mix, rules, happened, "
          "recorded, "
          "boot_id, since_boot_ns, target, temperature_cc, humidity_cp, amount, from_time, until_time, word, link "
          "FROM event WHERE id = 300"}) {
        const Scratch scratch;
        const auto store = fullBench(scratch / "bench.mend");
        store->database().run("PRAGMA foreign_keys = OFF; PRAGMA synchronous = OFF");
        store->database().run(tampering);
        EXPECT_TRUE(found(checkWhole(*store), Part::Chain)) << tampering;
    }
}

TEST(Check, FindsWhatWasDoneBesideTheChain)
{
    for (const auto& [tampering, part] : std::map<std::string, Part>{
             {"UPDATE piece SET fragments = fragments + 1 WHERE id = 3", Part::Rows},
             {"UPDATE customer SET contact = '555-0100' WHERE id = 20", Part::Rows},
             {"UPDATE place SET slots = 5 WHERE id = 2", Part::Rows},
             {"UPDATE person SET name = 'Inez' WHERE id = 1", Part::Rows},
             {"UPDATE note SET text = 'never said'", Part::Rows},
             {"UPDATE setting SET value = 'UTC'", Part::Rows},
             {"UPDATE rule_revision SET text = '{}'", Part::Rows},
             {"UPDATE meta SET value = 'another' WHERE key = 'fileId'", Part::Rows},
             {"UPDATE photo_bytes SET bytes = zeroblob(10) WHERE rowid = 2", Part::Photos},
             {"UPDATE photo SET thumbnail = zeroblob(10) WHERE rowid = 2", Part::Photos},
             {"DELETE FROM photo_bytes WHERE rowid = 2", Part::Photos},
             {"UPDATE photo_use SET piece = 9 WHERE id = 1", Part::Photos},
             {"DELETE FROM in_hand WHERE piece = (SELECT max(piece) FROM in_hand)", Part::House},
             {"DELETE FROM person WHERE id = 1", Part::Links}}) {
        const Scratch scratch;
        const auto store = fullBench(scratch / "bench.mend");
        store->database().run("PRAGMA foreign_keys = OFF; PRAGMA synchronous = OFF");
        store->database().run(tampering);
        EXPECT_TRUE(found(checkWhole(*store), part)) << tampering;
    }
}

TEST(Check, NoticesEveryFlippedBitThatChangesAnythingF10)
{
    constexpr int flips = 1000;
    const Scratch scratch;
    const std::string everything = everythingIn(*fullBench(scratch / "bench.mend"));
    ASSERT_EQ(everything.find("fault"), std::string::npos);
    const std::string whole = bytesOf(scratch / "bench.mend");
    std::mt19937 random(2026);
    std::map<std::string, int> outcomes;
    for (int i = 0; i < flips; ++i) {
        const std::size_t at = random() % whole.size();
        std::string bytes = whole;
        bytes[at] = static_cast<char>(bytes[at] ^ (1U << (random() % 8)));
        const fs::path file = scratch / "flipped.mend";
        std::ofstream(file, std::ios::binary | std::ios::trunc) << bytes;
        auto opened = Store::open(file, OpenMode::ReadOnly);
        if (!opened) {
            ++outcomes["refused"];
        } else if (!checkWhole(*opened.value()).isGood()) {
            ++outcomes["found"];
        } else {
            ++outcomes["in free space"];
            EXPECT_TRUE(everythingIn(*opened.value()) == everything) << "unnoticed at byte " << at;
        }
    }
    EXPECT_GT(outcomes["found"], flips / 2);
    for (const auto& [outcome, count] : outcomes) {
        std::cout << count << " of " << flips << " flips: " << outcome << '\n';
    }
}

TEST(Check, NoticesAFlippedDigitInAnyTimeOfAnEvent)
{
    const Scratch scratch;
    fullBench(scratch / "bench.mend");
    const std::string whole = bytesOf(scratch / "bench.mend");
    std::mt19937 random(7);
    int struck = 0;
    for (std::size_t at = whole.find("INC-01:padsInCan2026"); struck < 60;) {
        at = whole.find("2026-03-09T", at + 1); // within a row of what happened
        if (at == std::string::npos) {
            break;
        }
        ++struck;
        std::string bytes = whole;
        bytes[at + 11 + random() % 12] ^= 1;
        std::ofstream(scratch / "flipped.mend", std::ios::binary | std::ios::trunc) << bytes;
        const auto opened = Store::open(scratch / "flipped.mend", OpenMode::ReadOnly);
        ASSERT_TRUE(opened.isOk());
        Check check(opened.value()->database(), Check::Depth::Record);
        while (!check.slice(std::chrono::steady_clock::time_point::max())) {}
        // The same digits also stand in the index over times, which only the whole check reads.
        EXPECT_TRUE(!check.report().isGood() || !checkWhole(*opened.value()).isGood()) << at;
    }
    EXPECT_EQ(struck, 60);
}

TEST(Check, WorksInSlicesAndFindsTheSame)
{
    const Scratch scratch;
    const auto store = fullBench(scratch / "bench.mend");
    store->database().run("UPDATE event SET word = 'x' WHERE id = 290");
    Check check(store->database(), Check::Depth::Record);
    int slices = 1;
    while (!check.slice(std::chrono::steady_clock::now())) {
        ++slices;
    }
    EXPECT_GT(slices, 10);
    EXPECT_TRUE(found(check.report(), Part::Chain));
    EXPECT_EQ(check.report().findings.size(), 1U);
}
