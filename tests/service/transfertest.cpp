#include "core/service/transfer.h"

#include "core/record/fields.h"
#include "core/record/piecenumber.h"
#include "core/service/rowsof.h"
#include "core/store/check.h"
#include "tests/record/somepage.h"
#include "tests/store/benchmaker.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <sys/stat.h>

using namespace mend;
using namespace mend::service;
using namespace mend::test;
using bench::Event;
using bench::What;
namespace fs = std::filesystem;

namespace {

/// Where files are made that nobody has to keep: in memory where the machine has such a place.
class Quick {
public:
    Quick()
    {
        std::string name = fs::exists("/dev/shm") ? "/dev/shm/mendbench-test-XXXXXX" : "/tmp/mendbench-test-XXXXXX";
        m_folder = ::mkdtemp(name.data());
    }
    ~Quick()
    {
        std::error_code ignored;
        fs::remove_all(m_folder, ignored);
    }
    Quick(const Quick&) = delete;
    Quick& operator=(const Quick&) = delete;
    fs::path operator/(const std::string& name) const { return m_folder / name; }

private:
    fs::path m_folder;
};

/// A text of odd letters.
std::string oddText(EventMaker& maker)
{
    constexpr std::array<const char*, 9> parts{"Ana",           "漆", "\"", "\\", "\n", "=1+1", "Mu\xcc\x88ller", ",",
                                               "👩\xe2\x80\x8d👧"};
    std::string text;
    for (int i = maker.upTo(5); i > 0; --i) {
        text += parts.at(static_cast<std::size_t>(maker.upTo(8)));
    }
    return text;
}

std::optional<Money> someMoney(EventMaker& maker)
{
    return maker.upTo(1) == 0 ? std::nullopt
                              : std::optional(Money(maker.upTo(1'000'000) - 1000, maker.upTo(1) == 0 ? "JPY" : "EUR"));
}

record::Visit oddVisit(EventMaker& maker, PieceId piece, int number)
{
    record::Visit visit = somePage().visit;
    visit.piece = piece;
    visit.number = number;
    visit.cameFor = static_cast<record::CameFor>(maker.upTo(4));
    visit.condition.seen = oddText(maker);
    visit.condition.oldMends = {oddText(maker), oddText(maker)};
    visit.declaredValue = someMoney(maker);
    visit.story = oddText(maker);
    visit.consent.reversible = maker.upTo(1) == 0;
    visit.consent.priceTo = someMoney(maker);
    visit.consent.how = static_cast<record::Signature>(maker.upTo(2));
    return visit;
}

/// A bench file of any content at all.
void makeRandom(const fs::path& file, unsigned seed)
{
    EventMaker maker(seed, 4);
    const auto store = openOrDie(file);
    furnish(*store, 4);
    for (int i = 1; i <= 4; ++i) {
        record::Customer person{CustomerId(i), oddText(maker), oddText(maker)};
        person.note = oddText(maker);
        person.more = {{static_cast<record::ContactKind>(maker.upTo(3)), oddText(maker)}};
        record::Piece piece = somePiece(i);
        piece.id = PieceId(i);
        piece.owner = maker.upTo(4) == 0 ? CustomerId() : CustomerId(1 + maker.upTo(3));
        piece.looks = oddText(maker);
        piece.size.height = millimetres(maker.upTo(400));
        EXPECT_TRUE(store->put(person).isOk());
        EXPECT_TRUE(store->put(piece).isOk());
        for (int number = 1; number <= maker.upTo(2); ++number) {
            EXPECT_TRUE(store->put(oddVisit(maker, piece.id, number)).isOk());
        }
    }
    EXPECT_TRUE(store->append(maker.some(maker.upTo(40))).isOk());
    EXPECT_TRUE(store->setSetting("studio.name", oddText(maker)).isOk());
    for (int i = maker.upTo(3); i > 0; --i) {
        record::PhotoNote note;
        note.words = oddText(maker);
        note.marks = {
            {static_cast<record::MarkKind>(maker.upTo(4)), maker.upTo(10'000), maker.upTo(10'000), oddText(maker)}};
        EXPECT_TRUE(
            store
                ->addPhoto("picture " + std::to_string(maker.upTo(5)), "small",
                           {"", PieceId(1 + maker.upTo(3)), EventId(), maker.upTo(1) == 0 ? "condition" : "during"},
                           note)
                .isOk());
    }
    EXPECT_TRUE(store->putDraft({"intake", record::sheetText(record::sheetOf(somePage())), benchStart}).isOk());
}

std::string contentOf(const fs::path& file) { return textOf(file); }

int filesToTry()
{
    const char* const wish = std::getenv("MEND_ROUND_TRIPS");
    return wish ? std::atoi(wish) : 500;
}

} // namespace

TEST(Transfer, CarriesRandomFilesThereAndBackToTheByte)
{
    const Quick place;
    for (int seed = 1; seed <= filesToTry(); ++seed) {
        const std::string name = std::to_string(seed);
        makeRandom(place / (name + ".mend"), static_cast<unsigned>(seed));
        {
            const auto store = openOrDie(place / (name + ".mend"), store::OpenMode::ReadOnly);
            const auto out = exportWhole(*store, place / (name + ".json"));
            ASSERT_TRUE(out.isOk()) << out.fault().detail;
        }
        const auto in = importWhole(place / (name + ".json"), place / (name + "b.mend"));
        ASSERT_TRUE(in.isOk()) << seed << ": " << in.fault().detail;
        EXPECT_TRUE(in.value().missingPictures.empty());
        const auto again = openOrDie(place / (name + "b.mend"), store::OpenMode::ReadWrite);
        ASSERT_TRUE(exportWhole(*again, place / (name + "b.json")).isOk());
        ASSERT_EQ(contentOf(place / (name + ".json")), contentOf(place / (name + "b.json"))) << seed;
        EXPECT_TRUE(store::checkWhole(*again).isGood()) << seed;
    }
}

TEST(Transfer, MakesNothingOfABrokenExport)
{
    const Quick place;
    makeRandom(place / "one.mend", 7);
    const auto store = openOrDie(place / "one.mend", store::OpenMode::ReadOnly);
    ASSERT_TRUE(exportWhole(*store, place / "one.json").isOk());
    std::string text = contentOf(place / "one.json");
    text.replace(text.find("\"benchName\""), 11, "\"benchNane\"");
    std::ofstream(place / "bad.json", std::ios::binary) << text;
    const auto bad = importWhole(place / "bad.json", place / "two.mend");
    ASSERT_FALSE(bad.isOk());
    EXPECT_EQ(bad.fault().kind, FaultKind::BadInput);
    EXPECT_NE(bad.fault().detail.find("piece/benchNane: is not known here"), std::string::npos) << bad.fault().detail;
    EXPECT_EQ(bad.fault().detail.find("line "), 0U);
    EXPECT_FALSE(fs::exists(place / "two.mend"));
    EXPECT_FALSE(fs::exists(place / "two.mend.unfinished"));
    EXPECT_EQ(importWhole(place / "one.json", place / "one.mend").fault().kind, FaultKind::Conflict);
    EXPECT_EQ(importWhole(place / "none.json", place / "two.mend").fault().kind, FaultKind::NotFound);
    EXPECT_EQ(importWhole(place / "one.mend", place / "two.mend").fault().kind, FaultKind::Foreign);
}

TEST(Transfer, MakesNoPathOfANameFromOutsideF38)
{
    const Quick place;
    const auto store = openOrDie(place / "one.mend");
    furnish(*store, 1);
    ASSERT_TRUE(store->addPhoto("picture", "small", {"", PieceId(1), EventId(), "condition"}, {}).isOk());
    ASSERT_TRUE(exportWhole(*store, place / "one.json").isOk());
    std::ofstream(place / "secret") << "not a picture of ours";
    const std::string good = contentOf(place / "one.json");
    const auto at = good.find("{\"photo\":\"") + 10;
    for (const std::string& name : {std::string("../secret"), std::string("/etc/passwd"), std::string(255, 'a'),
                                    std::string("..\\u0000"), std::string(64, 'G'), std::string("")}) {
        std::string text = good;
        text.replace(at, 64, name);
        std::ofstream(place / "bad.json", std::ios::binary) << text;
        const auto bad = importWhole(place / "bad.json", place / "two.mend");
        ASSERT_FALSE(bad.isOk()) << name;
        EXPECT_EQ(bad.fault().kind, FaultKind::BadInput) << name;
    }
    fs::remove_all(place / "one.json.pictures");
    const auto without = importWhole(place / "one.json", place / "three.mend");
    ASSERT_TRUE(without.isOk()) << "a missing picture loses nothing else";
    EXPECT_EQ(without.value().missingPictures.size(), 1U);
}

TEST(Transfer, FailsCleanlyWhereTheDiskTakesNothingF54)
{
    const Quick place;
    makeRandom(place / "one.mend", 3);
    const auto store = openOrDie(place / "one.mend", store::OpenMode::ReadOnly);
    EXPECT_EQ(exportWhole(*store, "/proc/no/such/place.json").fault().kind, FaultKind::Unwritable);
    EXPECT_EQ(exportTables(*store, "/proc/no/such/folder").fault().kind, FaultKind::Unwritable);
    if (fs::exists("/dev/full")) {
        fs::create_symlink("/dev/full", place / "full.json.unfinished");
        EXPECT_EQ(exportWhole(*store, place / "full.json").fault().kind, FaultKind::Unwritable);
        EXPECT_FALSE(fs::exists(place / "full.json")) << "no half file under the name";
        EXPECT_FALSE(fs::exists(fs::symlink_status(place / "full.json.unfinished")));
    }
    ASSERT_TRUE(exportWhole(*store, place / "one.json").isOk());
    struct stat status = {};
    ASSERT_EQ(::stat((place / "one.json").c_str(), &status), 0);
    EXPECT_EQ(status.st_mode & 0777U, 0600U) << "names are in it";
    for (const auto& entry : fs::directory_iterator(place / ".")) { // names that any file system takes
        EXPECT_EQ(entry.path().filename().string().find_first_of("<>:\"|?*\\"), std::string::npos);
    }
}

TEST(Transfer, WritesATableForEachKind)
{
    const Quick place;
    const auto store = openOrDie(place / "one.mend");
    furnish(*store, 0);
    const std::vector<Event> events{someEvent(1, What::Received, PieceId())};
    ASSERT_TRUE(store->takeIn(somePage(), 2027, events).isOk());
    ASSERT_TRUE(exportTables(*store, place / "tables").isOk());
    const std::string people = contentOf(place / "tables" / "customer.csv");
    EXPECT_EQ(people.substr(0, people.find("\r\n")),
              "id,name,contact,more.1.kind,more.1.text,more.2.kind,more.2.text,note");
    EXPECT_NE(people.find("1,Ana Müller,020 7946 0618,mail,ana@example.org,post,\"Lark Lane 3\nUpper Mere\""),
              std::string::npos)
        << people;
    EXPECT_TRUE(fs::exists(place / "tables" / "visit.csv"));
    EXPECT_TRUE(fs::exists(place / "tables" / "event.csv"));
}

TEST(Transfer, GivesAPersonEverythingThatRefersToThem)
{
    const Quick place;
    const auto store = openOrDie(place / "one.mend");
    furnish(*store, 3);
    const std::vector<Event> events{someEvent(1, What::Received, PieceId())};
    const auto taken = store->takeIn(somePage(), 2027, events).takeValue();
    ASSERT_TRUE(store->addPhoto("picture", "small", {"", taken.piece, EventId(), "condition"}, {}).isOk());
    const auto out = exportPerson(*store, taken.owner, place / "ana.json");
    ASSERT_TRUE(out.isOk()) << out.fault().detail;
    EXPECT_EQ(out.value().pictures, 1);
    EXPECT_EQ(out.value().rows, 5) << "person, piece, visit, event, photo";
    const std::string text = contentOf(place / "ana.json");
    EXPECT_NE(text.find("her grandmother's"), std::string::npos);
    EXPECT_EQ(text.find("Owner 1"), std::string::npos) << "nobody else's";
    EXPECT_EQ(exportPerson(*store, CustomerId(99), place / "x.json").fault().kind, FaultKind::NotFound);
}

TEST(Transfer, KnowsEveryTableThereIs)
{
    // A new table has to be thought about: is it a person's, does it leave with an export?
    const Quick place;
    const auto store = openOrDie(place / "one.mend");
    store::Statement tables =
        store->database().prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'");
    int count = 0;
    while (tables.step()) {
        ++count;
        const auto rule = std::ranges::find(tableRules(), tables.text(0), &TableRule::table);
        ASSERT_NE(rule, tableRules().end()) << tables.text(0) << " is not listed";
        EXPECT_TRUE(*rule->rowKind != '\0' || *rule->why != '\0') << tables.text(0);
    }
    EXPECT_EQ(count, static_cast<int>(tableRules().size()));
}

TEST(Transfer, WritesPromisedAndReadyDaysWithoutANameF23)
{
    const Quick place;
    const auto store = openOrDie(place / "one.mend");
    furnish(*store, 0);
    ASSERT_TRUE(store->setSetting("studio.zone", "Pacific/Auckland").isOk());
    std::vector<Event> events{someEvent(1, What::Received, PieceId()), someEvent(2, What::Promised, PieceId())};
    events.back().word = "2027-04-04"; // the clocks go back there in that night
    const auto taken = store->takeIn(somePage(), 2027, events).takeValue();
    RuleShelf shelf(RuleShelf::usualFolders());
    ASSERT_TRUE(exportCalendar(*store, shelf, place / "days.ics", benchStart).isOk());
    const std::string text = contentOf(place / "days.ics");
    EXPECT_NE(text.find("UID:" + taken.number + "-promised@"), std::string::npos) << text;
    EXPECT_NE(text.find("DTSTART;VALUE=DATE:20270404"), std::string::npos);
    EXPECT_EQ(text.find("Ana"), std::string::npos);
    EXPECT_EQ(text.find("ller"), std::string::npos);
}
