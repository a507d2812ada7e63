#include "core/bench/alert.h"
#include "core/service/demobench.h"
#include "core/service/openbench.h"
#include "tests/desk/deskrun.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"

#include <QJsonArray>
#include <QJsonObject>
#include <QRegularExpression>
#include <gtest/gtest.h>

#include <fstream>

namespace mend {

namespace fs = std::filesystem;
using test::desk;
using test::DeskRan;

namespace {

const rules::RuleBook& book()
{
    static const rules::RuleBook shipped = test::shippedRules();
    return shipped;
}

const Instant builtAt = *fromRfc3339("2026-11-25T15:00:00.000Z");

/// A folder with the demo bench as it stood one afternoon.
class Desk : public testing::Test {
protected:
    void SetUp() override
    {
        const Moment now{builtAt, {"boot", std::chrono::hours(5)}};
        ASSERT_TRUE(service::prepareDemo(file, book(), now, QTimeZone::utc(), false));
    }
    std::string name(const char* of) const { return (scratch / of).string(); }
    void write(const char* of, const std::string& text) const { std::ofstream(scratch / of) << text; }

    test::Scratch scratch;
    fs::path file = scratch / "demo.mendbench";
};

/// Marks of a program that shows what it was not meant to show.
void expectPlainWords(const QString& words)
{
    for (const char* raw : {"null", "nan", "wipeBack", "goldLacquerSeam", "padsDrying", "fillerPaste", "INC-", "%1"}) {
        EXPECT_FALSE(words.contains(QLatin1String(raw))) << raw << " in:\n" << words.toStdString();
    }
}

} // namespace

TEST_F(Desk, PrintsEveryCardWithItsWindowAndAlert)
{
    const DeskRan run = desk({"board", file.string(), "--at", "2026-11-25T15:00:00Z"});
    EXPECT_EQ(run.code, 0) << run.err.toStdString();
    for (const char* name : {"Heron bowl", "Celadon dish", "Blue jug", "Lattice plate", "Tea bowl", "Oil jar",
                             "Sugar box", "Ginger jar"}) {
        EXPECT_TRUE(run.out.contains(QLatin1String(name))) << name;
    }
    EXPECT_TRUE(run.out.contains(QStringLiteral("Wipe back the filler")));
    EXPECT_TRUE(run.out.contains(QStringLiteral("calls 15:01 (A): Wipe. Heron bowl."))) << run.out.toStdString();
    EXPECT_TRUE(run.out.contains(QStringLiteral("[Wiped back]")));
    EXPECT_TRUE(run.out.contains(QStringLiteral("Stalled")));
    EXPECT_TRUE(run.out.contains(QStringLiteral("Mix: Filler")));
    expectPlainWords(run.out);
}

TEST_F(Desk, SaysTheSameInJson)
{
    const DeskRan run = desk({"board", file.string(), "--at", "2026-11-25T15:00:00Z", "--json"});
    EXPECT_EQ(run.code, 0);
    const QJsonArray cards = run.json()[QStringLiteral("cards")].toArray();
    ASSERT_EQ(cards.size(), 11) << "eight on the bench, three to be collected";
    expectPlainWords(run.out);

    const auto demo = service::demoBench(book(), {builtAt, {"boot", std::chrono::hours(5)}}, QTimeZone::utc());
    const auto bench = bench::fold(demo.value().roster, demo.value().events, book());
    const auto board = bench::boardOf(bench, book(), builtAt);
    for (qsizetype at = 0; at < static_cast<qsizetype>(board.cards.size()); ++at) {
        const bench::Card& card = board.cards[static_cast<std::size_t>(at)];
        const QJsonObject shown = cards[at].toObject();
        EXPECT_EQ(shown[QStringLiteral("piece")].toString().toStdString(), card.benchName);
        if (card.window && card.window->latestStart) {
            EXPECT_EQ(shown[QStringLiteral("window")].toObject()[QStringLiteral("startBy")].toString().toStdString(),
                      toRfc3339(*card.window->latestStart));
        }
    }
}

TEST_F(Desk, ShowsTheBenchAsItStoodAndAsItWillStand)
{
    const DeskRan past = desk({"board", file.string(), "--at", "2026-11-25T14:40:00Z"});
    EXPECT_EQ(past.code, 0);
    EXPECT_TRUE(past.out.contains(QStringLiteral("Heron bowl")));
    EXPECT_FALSE(past.out.contains(QStringLiteral("Wipe back the filler"))) << "it was not in yet";
    const DeskRan later = desk({"board", file.string(), "--at", "2026-11-25T15:20:00Z"});
    EXPECT_EQ(later.code, 0);
    EXPECT_TRUE(later.out.contains(QStringLiteral("[Was done in time] [Doing it late] [Not done]")));
}

TEST_F(Desk, TakesATimeWithAZoneAndNoOther)
{
    const QString utc = desk({"board", file.string(), "--at", "2026-11-25T15:00:00Z"}).out;
    EXPECT_EQ(desk({"board", file.string(), "--at", "2026-11-25T16:00:00+01:00"}).out, utc);
    for (const char* time :
         {"2026-11-25T15:00:00", "yesterday", "15:00", "2026-02-30T10:00:00Z", "9999-01-01T00:00:00Z", ""}) {
        const DeskRan run = desk({"board", file.string(), "--at", time});
        EXPECT_EQ(run.code, 2) << time;
        EXPECT_TRUE(run.out.isEmpty());
        EXPECT_TRUE(run.err.contains(QStringLiteral("is no time"))) << run.err.toStdString();
    }
}

TEST_F(Desk, FindsAWholeFileWhole)
{
    const DeskRan run = desk({"check", file.string()});
    EXPECT_EQ(run.code, 0) << run.err.toStdString() << run.out.toStdString();
    EXPECT_TRUE(run.out.contains(QStringLiteral("is whole")));
    const QJsonObject json = desk({"check", file.string(), "--json"}).json();
    EXPECT_TRUE(json[QStringLiteral("good")].toBool());
    EXPECT_GT(json[QStringLiteral("events")].toInt(), 100);
}

TEST_F(Desk, FindsAFlippedBit)
{
    std::string bytes = test::textOf(file);
    const auto at = bytes.find("Heron bowl");
    ASSERT_NE(at, std::string::npos);
    bytes[at] = static_cast<char>(bytes[at] ^ 4);
    std::ofstream(file, std::ios::binary) << bytes;
    const DeskRan run = desk({"check", file.string(), "--json"});
    EXPECT_EQ(run.code, 2);
    EXPECT_FALSE(run.json()[QStringLiteral("good")].toBool(true));
}

TEST_F(Desk, RefusesWhatIsNoBenchFile)
{
    write("text.db", "This is a shopping list and no bench at all.\n");
    write("empty.db", "");
    std::string newer = test::textOf(file);
    newer[63] = 99; // user_version, SQLite file format 1.3.13
    std::ofstream(scratch / "newer.db", std::ios::binary) << newer;
    const std::vector<std::pair<const char*, const char*>> cases{
        {"missing.db", "notFound"}, {"text.db", "foreign"}, {"newer.db", "newer"}};
    for (const auto& [of, kind] : cases) {
        for (const char* verb : {"check", "board"}) {
            const DeskRan run = desk({verb, name(of), "--json"});
            EXPECT_EQ(run.code, 2) << verb << " " << of;
            EXPECT_EQ(run.json()[QStringLiteral("fault")].toString(), QLatin1String(kind)) << verb << " " << of;
            const DeskRan plain = desk({verb, name(of)});
            EXPECT_TRUE(plain.out.isEmpty());
            EXPECT_FALSE(plain.err.isEmpty());
            expectPlainWords(plain.err);
        }
        EXPECT_EQ(desk({"backup", name(of), name("copy")}).code, 2) << of;
        EXPECT_FALSE(fs::exists(scratch / "copy"));
    }
    EXPECT_EQ(desk({"check", name("empty.db")}).code, 2);
    EXPECT_EQ(test::textOf(scratch / "newer.db"), newer) << "a newer file keeps its bytes";
    EXPECT_FALSE(fs::exists(scratch / "missing.db")) << "asking makes nothing";
}

TEST_F(Desk, BacksUpAndRestoresALiveFile)
{
    const auto inUse = store::Store::open(file, store::OpenMode::ReadWrite);
    ASSERT_TRUE(inUse);
    const DeskRan made = desk({"backup", file.string(), name("copy.mendbench")});
    EXPECT_EQ(made.code, 0) << made.err.toStdString();
    EXPECT_EQ(desk({"check", name("copy.mendbench")}).code, 0);
    EXPECT_EQ(desk({"board", file.string()}).code, 0) << "a live file can be looked at";
    EXPECT_EQ(desk({"backup", file.string(), name("copy.mendbench")}).code, 1) << "nothing is written over";
    EXPECT_EQ(desk({"restore", name("copy.mendbench"), file.string()}).code, 1) << "an open file is not replaced";

    const DeskRan restored = desk({"restore", name("copy.mendbench"), name("again.mendbench"), "--json"});
    EXPECT_EQ(restored.code, 0) << restored.out.toStdString();
    const QString at = QStringLiteral("2026-11-25T15:00:00Z");
    EXPECT_EQ(desk({"board", name("again.mendbench"), "--at", at.toStdString()}).out,
              desk({"board", file.string(), "--at", at.toStdString()}).out);
}

TEST_F(Desk, BacksUpIntoAFolderUnderTheDate)
{
    fs::create_directory(scratch / "backups");
    const DeskRan made = desk({"backup", file.string(), name("backups"), "--json"});
    EXPECT_EQ(made.code, 0) << made.out.toStdString();
    const std::string copy = made.json()[QStringLiteral("backup")].toString().toStdString();
    EXPECT_EQ(fs::path(copy).parent_path(), scratch / "backups");
    EXPECT_EQ(desk({"restore", copy, name("again.mendbench")}).code, 0);
    EXPECT_EQ(desk({"check", name("again.mendbench")}).code, 0);
}

TEST_F(Desk, ListsEveryFaultOfRuleFilesWithItsPlace)
{
    EXPECT_EQ(desk({"rules", std::string(MEND_SOURCE_DIR) + "/resources/rules"}).code, 0);
    std::string text =
        test::textOf(fs::path(MEND_SOURCE_DIR) / "resources" / "rules" / "procedures" / "goldlacquerseam.json");
    text.replace(text.find("\"spoken\""), 8, "\"spokan\"");
    text.replace(text.rfind("\"law\": \"none\""), 13, "\"law\": \"magnets\"");
    text.replace(text.find("\"revision\": 1"), 13, "\"revision\": 9");
    write("bad.json", text);
    const DeskRan run = desk({"rules", name("bad.json")});
    EXPECT_EQ(run.code, 2);
    EXPECT_GE(run.out.count(QStringLiteral("bad.json:")), 2) << run.out.toStdString();
    EXPECT_TRUE(run.out.contains(QRegularExpression(QStringLiteral("bad\\.json:\\d+:\\d+: .+magnets"))));
    const QJsonArray faults = desk({"rules", name("bad.json"), "--json"}).json()[QStringLiteral("faults")].toArray();
    ASSERT_GE(faults.size(), 2);
    EXPECT_GT(faults[0].toObject()[QStringLiteral("line")].toInt(), 0);

    write("no.json", "{ this is not JSON");
    EXPECT_EQ(desk({"rules", name("no.json")}).code, 2);
    EXPECT_EQ(desk({"rules", name("missing.json")}).code, 2);
}

TEST_F(Desk, MakesTheDemoBench)
{
    const DeskRan made = desk({"demo", name("new.mendbench")});
    EXPECT_EQ(made.code, 0) << made.err.toStdString();
    EXPECT_EQ(made.out.trimmed().toStdString(), name("new.mendbench"));
    const DeskRan board = desk({"board", name("new.mendbench"), "--json"});
    EXPECT_EQ(board.json()[QStringLiteral("cards")].toArray().size(), 11);
    EXPECT_EQ(desk({"demo", name("new.mendbench"), "--fresh"}).code, 0);
    const auto inUse = store::Store::open(scratch / "new.mendbench", store::OpenMode::ReadWrite);
    EXPECT_EQ(desk({"demo", name("new.mendbench"), "--fresh"}).code, 1) << "not while it is open";
}

TEST_F(Desk, HelpsAndRefusesWhatCannotBeAsked)
{
    const DeskRan help = desk({"--help"});
    EXPECT_EQ(help.code, 0);
    for (const char* verb : {"check", "backup", "restore", "board", "rules", "demo", "--at", "--json", "--fresh"}) {
        EXPECT_TRUE(help.out.contains(QLatin1String(verb))) << verb;
    }
    for (const std::vector<std::string>& words :
         std::vector<std::vector<std::string>>{{},
                                               {"dance"},
                                               {"check"},
                                               {"check", "one", "two"},
                                               {"backup", "one"},
                                               {"rules"},
                                               {"board", "x", "--colour"},
                                               {"check", file.string(), "--at", "2026-11-25T15:00:00Z"},
                                               {"board", file.string(), "--fresh"}}) {
        const DeskRan run = desk(words);
        EXPECT_EQ(run.code, 2);
        EXPECT_TRUE(run.out.isEmpty());
        EXPECT_TRUE(run.err.contains(QStringLiteral("--help"))) << run.err.toStdString();
    }
    EXPECT_FALSE(desk({"dance", "--json"}).json()[QStringLiteral("good")].toBool(true));
}

} // namespace mend
