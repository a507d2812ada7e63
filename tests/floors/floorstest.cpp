#include "tests/floors/floors.h"

#include <gmock/gmock.h>

#include <fstream>
#include <sstream>

namespace mend::floors {

using ::testing::IsEmpty;
using ::testing::SizeIs;

static void PrintTo(const Fault& fault, std::ostream* out)
{
    *out << fault.file << ":" << fault.line << ": " << fault.says;
}

namespace {

Table shippedTable()
{
    std::ifstream text(MEND_SOURCE_DIR "/tests/floors/floors.txt");
    return readTable(text);
}

std::vector<Fault> faultsOf(const std::string& file, const std::string& source)
{
    std::istringstream text(source);
    return faultsIn(file, text, shippedTable());
}

} // namespace

TEST(Floors, NoIncludeOfTheTreePointsUp)
{
    EXPECT_THAT(faultsUnder(MEND_SOURCE_DIR, shippedTable()), IsEmpty());
    EXPECT_GE(filesUnder(MEND_SOURCE_DIR), 10) << "hardly anything was read";
}

// The planted fault: a tree like ours with one arrow that points up.
TEST(Floors, AnIncludePlantedInATreeIsFound)
{
    const std::filesystem::path root = std::filesystem::path(::testing::TempDir()) / "planted-tree";
    std::filesystem::remove_all(root);
    std::filesystem::create_directories(root / "core/cure");
    std::ofstream(root / "core/cure/law.h") << "#include \"core/base/units.h\"\n";
    EXPECT_THAT(faultsUnder(root, shippedTable()), IsEmpty());

    std::ofstream(root / "core/cure/law.cpp") << "#include \"core/cure/law.h\"\n#include \"core/bench/fold.h\"\n";
    const Fault planted{"core/cure/law.cpp", 2, "core/cure may not include from core/bench"};
    EXPECT_THAT(faultsUnder(root, shippedTable()), ::testing::ElementsAre(planted));
    std::filesystem::remove_all(root);
}

TEST(Floors, EachWayUpIsRefused)
{
    const std::pair<const char*, const char*> ways[] = {
        {"core/base/units.h", "#include \"core/cure/law.h\""},
        {"core/cure/law.h", "#include \"core/seam/trace.h\""},
        {"core/rules/rule.h", "#include \"core/record/piece.h\""},
        {"core/bench/fold.h", "#include <QString>"},
        {"core/bench/fold.h", "#include <QtCore/QString>"},
        {"core/bench/fold.cpp", "  #  include \"core/store/benchfile.h\""},
        {"core/service/benchservice.cpp", "#include <QSqlQuery>"},
        {"core/service/benchservice.cpp", "#include <QThread>"},
        {"core/service/benchservice.cpp", "#include <sqlite3.h>"},
        {"core/exchange/rulefile.cpp", "#include \"core/store/benchfile.h\""},
        {"core/rules/rule.cpp", "#include <nlohmann/json.hpp>"},
        {"app/bench/card.cpp", "#include \"core/store/benchfile.h\""},
        {"app/bench/card.cpp", "#include \"app/plan/thread.h\""},
        {"app/sound/player.cpp", "#include \"core/bench/fold.h\""},
        {"app/sound/player.cpp", "#include <pulse/pulseaudio.h>"},
        {"app/papers/tag.cpp", "#include \"core/service/benchservice.h\""},
        {"app/bench/card.cpp", "#include <qrencode.h>"},
        {"core/nowhere/thing.h", "#include <vector>"},
    };
    for (const auto& [file, line] : ways) {
        EXPECT_THAT(faultsOf(file, line), SizeIs(1)) << file << ": " << line;
    }
}

TEST(Floors, WhatMayBeIncludedIsLeftAlone)
{
    const std::pair<const char*, const char*> ways[] = {
        {"core/base/units.h", "#include <chrono>"},
        {"core/cure/law.h", "#include \"core/cure/climate.h\""},
        {"core/bench/fold.h", "#include \"core/record/piece.h\""},
        {"core/store/benchfile.cpp", "#include <sqlite3.h>"},
        {"app/main.cpp", "#include \"core/store/benchfile.h\""},
        {"app/bench/card.cpp", "#include \"app/parts/seamline.h\""},
        {"app/bench/card.cpp", "#include <QPainter>"},
        {"app/sound/program/playback.cpp", "#include <pulse/pulseaudio.h>"},
        {"app/sound/program/main.cpp", "#include \"app/sound/wav.h\""},
        {"app/sound/program/main.cpp", "#include \"app/sound/program/timer.h\""},
        {"core/base/units.h", "// #include \"core/bench/fold.h\" would point up"},
    };
    for (const auto& [file, line] : ways) {
        EXPECT_THAT(faultsOf(file, line), IsEmpty()) << file << ": " << line;
    }
}

TEST(Floors, SqlOutsideTheStoreIsFound)
{
    const std::string query = "const auto text = \"SELECT id FROM piece\";";
    EXPECT_THAT(faultsOf("core/service/benchservice.cpp", query), SizeIs(1));
    EXPECT_THAT(faultsOf("app/bench/card.cpp", "run(\"pragma\"); run(\"PRAGMA user_version\");"), SizeIs(1));
    EXPECT_THAT(faultsOf("core/store/pieces.cpp", query), IsEmpty());
    EXPECT_THAT(faultsOf("app/bench/card.cpp", "setText(tr(\"Select a piece from the list\"));"), IsEmpty());
}

TEST(Floors, AGroupIsSpelledOut)
{
    std::istringstream text("@low core/base core/cure\ncore/bench @low Qt # and a remark\n\n");
    const Table table = readTable(text);
    EXPECT_THAT(table.at("core/bench"), ::testing::ElementsAre("core/base", "core/cure", "Qt"));
}

} // namespace mend::floors
