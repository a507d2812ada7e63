#include "core/bench/hazardside.h"

#include "core/bench/hazardcheck.h"
#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

namespace mend::bench {
namespace {

using test::TestBench;

TEST(RowSide, KnowsWhenTheLastOfWhatIsPlannedIsOverButForOneStage)
{
    RowSide side;
    EXPECT_EQ(side.plannedBut(PieceId(1), {"wipeBack", 1}), std::nullopt);
    side.planned = {{PieceId(1), {"wipeBack", 1}, TestBench::at(30)}, {PieceId(2), {"wipeBack", 1}, TestBench::at(20)}};
    EXPECT_EQ(side.plannedBut(PieceId(1), {"wipeBack", 1}), TestBench::at(20));
    EXPECT_EQ(side.plannedBut(PieceId(1), {"wipeBack", 2}), TestBench::at(30));
    EXPECT_EQ(side.plannedBut(PieceId(3), {"wipeBack", 1}), TestBench::at(30));
}

/// Pads of three wiped pieces dry, three more are being filled, two are sanded, one holds an old mend.
TestBench crowded()
{
    TestBench bench(test::shippedRules(), 24);
    for (int i = 0; i < 8; ++i) {
        record::Piece& added = bench.add(i % 4 == 3 ? "invisibleMend" : "goldLacquerSeam");
        if (i == 5) {
            added.materialsInIt = {"acrylicResin"};
        }
        const PieceId piece = added.id;
        if (i % 4 == 3) {
            bench.done(piece, "clean", 2);
            continue;
        }
        bench.upTo(piece, "fillRun", 1);
        bench.done(piece, "fillRun", 95 + i);
        if (i < 3) {
            bench.done(piece, "wipeBack", 100 + i);
        }
    }
    return bench;
}

TEST(RowSide, AskedInAnyOrderASharedPictureAnswersAsAFreshOne)
{
    const TestBench bench = crowded();
    const BenchFold fold = bench.fold();
    const Instant now = TestBench::at(104);
    const std::vector<Window> windows = windowsOf(fold, bench.book(), now);
    std::vector<Start> starts;
    for (const auto& [id, piece] : fold.pieces) {
        for (const rules::Stage& stage : procedureOf(piece, bench.book())->stages) {
            for (const PlaceId place : {TestBench::benchPlace, TestBench::cabinet, TestBench::tray}) {
                starts.push_back({id, {stage.key, 1}, place});
            }
        }
    }
    const BenchPicture shared(fold, windows, bench.book(), now);
    std::size_t met = 0;
    for (auto start = starts.rbegin(); start != starts.rend(); ++start) {
        const auto found = hazardsOf(*start, shared);
        EXPECT_EQ(found, hazardsOf(*start, fold, windows, bench.book(), now)) << start->stage.stage;
        met += found.size();
    }
    EXPECT_GT(met, starts.size() / 5) << "a bench on which nothing meets proves nothing";
}

TEST(RowSide, HoldsEveryPresenceThatItNamesAndNoOther)
{
    const TestBench bench = crowded();
    const BenchFold fold = bench.fold();
    const Instant now = TestBench::at(104);
    const std::vector<Window> windows = windowsOf(fold, bench.book(), now);
    const BenchPicture picture(fold, windows, bench.book(), now);
    std::size_t inForce = 0;
    for (const rules::Hazard& row : bench.book().hazards) {
        for (const bool other : {false, true}) {
            std::size_t named = 0;
            for (const Presence& presence : picture.presences()) {
                named += holdsName(other ? row.other : row.one, presence.state.state) ? 1 : 0;
            }
            EXPECT_EQ(picture.side(row, other).inForce.size(), named) << row.key;
            inForce += named;
        }
    }
    EXPECT_GT(inForce, 3U);
}

} // namespace
} // namespace mend::bench
