// People and pieces at a terminal, with the real program.
#include "core/store/store.h"
#include "tests/desk/deskrun.h"
#include "tests/record/somepage.h"
#include "tests/store/benchmaker.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"

#include <QJsonArray>
#include <gtest/gtest.h>

#include <fstream>

namespace mend {

namespace fs = std::filesystem;
using test::desk;
using test::DeskRan;

namespace {

class RecordDesk : public testing::Test {
protected:
    void SetUp() override
    {
        const auto store = test::openOrDie(file);
        test::furnish(*store, 0);
        const std::vector<bench::Event> first{test::someEvent(1, bench::What::Received, PieceId())};
        taken = store->takeIn(test::somePage(), 2027, first).takeValue();
    }
    std::string name(const char* of) const { return (scratch / of).string(); }

    test::Scratch scratch;
    fs::path file = scratch / "bench.mend";
    store::TakenIn taken;
};

} // namespace

TEST_F(RecordDesk, FindsAPieceByWhatIsRemembered)
{
    const DeskRan said = desk({"find", file.string(), "bleu", "bowl", "herron"});
    EXPECT_EQ(said.code, 0) << said.err.toStdString();
    EXPECT_TRUE(said.out.contains(QStringLiteral("Heron bowl"))) << said.out.toStdString();
    EXPECT_TRUE(said.out.contains(QStringLiteral("270001-")));
    const DeskRan json = desk({"find", file.string(), "muler", "--json"});
    EXPECT_EQ(json.json()[QStringLiteral("pieces")].toArray().size(), 1);
    EXPECT_EQ(json.json()[QStringLiteral("people")].toArray().size(), 1);
    EXPECT_EQ(desk({"find", file.string(), "zeppelin"}).code, 1);
    EXPECT_EQ(desk({"find", file.string()}).code, 2);
    EXPECT_EQ(desk({"find", name("none.mend"), "x"}).code, 2);
}

TEST_F(RecordDesk, ExportsAndImportsEverything)
{
    EXPECT_EQ(desk({"export", file.string(), name("all.json")}).code, 0);
    const DeskRan in = desk({"import", name("again.mend"), name("all.json"), "--json"});
    EXPECT_EQ(in.code, 0) << in.out.toStdString();
    EXPECT_TRUE(in.json()[QStringLiteral("good")].toBool());
    EXPECT_EQ(desk({"export", name("again.mend"), name("again.json")}).code, 0);
    EXPECT_EQ(test::textOf(name("all.json")), test::textOf(name("again.json")));
    EXPECT_EQ(desk({"import", name("again.mend"), name("all.json")}).code, 1) << "never over a file that is there";
    EXPECT_EQ(desk({"export", file.string(), name("tables/")}).code, 0);
    EXPECT_TRUE(fs::exists(name("tables/piece.csv")));
    EXPECT_EQ(desk({"export", file.string(), name("days.ics")}).code, 0);
    EXPECT_EQ(test::textOf(name("days.ics")).substr(0, 15), "BEGIN:VCALENDAR");
    EXPECT_EQ(desk({"export", file.string(), name("ana.json"), "--person", "Ana Muller"}).code, 0);
    EXPECT_NE(test::textOf(name("ana.json")).find("mendbench-person"), std::string::npos);
}

TEST_F(RecordDesk, SaysWhereAnExportIsBroken)
{
    std::ofstream(name("bad.json"))
        << "[\n{\"format\":\"mendbench-export\",\"version\":1},\n{\"piece\":{\"number\":7}}\n]\n";
    const DeskRan said = desk({"import", name("x.mend"), name("bad.json")});
    EXPECT_EQ(said.code, 2);
    EXPECT_TRUE(said.err.contains(QStringLiteral("line 3: piece/number"))) << said.err.toStdString();
    EXPECT_FALSE(fs::exists(name("x.mend")));
}

TEST_F(RecordDesk, TakesPeopleOutOfAListAndMergesNobody)
{
    std::ofstream(name("people.vcf")) << "BEGIN:VCARD\nVERSION:4.0\nFN:Danica Vrhovšek\nTEL:01632 960274\nEND:VCARD\n"
                                         "BEGIN:VCARD\nVERSION:4.0\nFN:Ana Muller\nTEL:555-0199\nEND:VCARD\n";
    const DeskRan said = desk({"import", file.string(), name("people.vcf"), "--json"});
    EXPECT_EQ(said.code, 0) << said.out.toStdString();
    EXPECT_EQ(said.json()[QStringLiteral("people")].toInt(), 1);
    EXPECT_EQ(said.json()[QStringLiteral("knownAlready")].toInt(), 1);
    EXPECT_EQ(test::openOrDie(file, store::OpenMode::ReadWrite)->customers().value().size(), 2U);
}

TEST_F(RecordDesk, ErasesAPersonOnceNothingOfTheirsIsInTheHouseF52)
{
    const std::string person = std::to_string(taken.owner.value());
    const DeskRan refused = desk({"erase", file.string(), person});
    EXPECT_EQ(refused.code, 1);
    EXPECT_TRUE(refused.err.contains(QStringLiteral("hand it over"))) << refused.err.toStdString();
    {
        const auto store = test::openOrDie(file, store::OpenMode::ReadWrite);
        ASSERT_TRUE(store->append(std::vector{test::someEvent(2, bench::What::HandedOver, taken.piece)}).isOk());
        EXPECT_EQ(desk({"erase", file.string(), person}).code, 1) << "it is open in another program";
    }
    EXPECT_EQ(desk({"erase", file.string(), "nobody"}).code, 2);
    const DeskRan erased = desk({"erase", file.string(), person, "--json"});
    EXPECT_EQ(erased.code, 0) << erased.out.toStdString();
    EXPECT_EQ(test::textOf(file).find("Ana M"), std::string::npos);
    EXPECT_EQ(desk({"find", file.string(), "muller"}).code, 1);
}

} // namespace mend
