// What the program knows after a restart is what it knew before, wherever it was stopped.

#include "core/service/benchservice.h"
#include "core/service/openbench.h"
#include "tests/support/fakeclock.h"
#include "tests/support/randombench.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>

namespace mend::service {

namespace {

const rules::RuleBook& shippedBook()
{
    static const rules::RuleBook book = test::shippedRules();
    return book;
}

int streams()
{
    const char* told = std::getenv("MEND_RESTART_STREAMS");
    return told ? std::atoi(told) : 1000;
}

} // namespace

TEST(Restart, FindsTheBenchAsItWasAtEveryPrefixOfRandomStreams)
{
    std::mt19937 random(7);
    for (int stream = 0; stream < streams(); ++stream) {
        test::RandomBench bench(static_cast<unsigned>(stream), shippedBook(), 2);
        const std::size_t furnished = bench.events().size();
        for (int step = 0; step < 8; ++step) {
            bench.step();
        }
        const std::vector<bench::Event>& all = bench.events();
        test::FakeClock clock(bench.now());
        BenchService live(clock, shippedBook(), {bench.roster(), {}, EventId(1)}, {});
        for (std::size_t told = 1; told <= all.size(); ++told) {
            live.tell({all[told - 1]});
            if (told < furnished) {
                continue;
            }
            // Read back in whatever order the rows come.
            std::vector<bench::Event> rows(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(told));
            std::shuffle(rows.begin(), rows.end(), random);
            ASSERT_TRUE(bench::fold(bench.roster(), rows, shippedBook()) == live.bench())
                << "stream " << stream << ", " << told << " told";
        }
    }
}

TEST(Restart, FindsTheBenchAsItWasInTheFile)
{
    for (unsigned stream = 0; stream < 20; ++stream) {
        const test::Scratch scratch;
        const auto file = scratch / "bench.mendbench";
        test::RandomBench bench(10'000 + stream, shippedBook(), 3);
        RuleShelf shelf({std::filesystem::path(MEND_SOURCE_DIR) / "resources" / "rules", {}, {}});
        const auto writer = store::Store::open(file, store::OpenMode::CreateIfMissing).takeValue();
        {
            store::Store* store = writer.get();
            for (const auto& person : bench.roster().people) {
                ASSERT_TRUE(store->put(person));
            }
            for (const auto& place : bench.roster().places) {
                ASSERT_TRUE(store->put(place));
            }
            for (const auto& owner : bench.roster().customers) {
                ASSERT_TRUE(store->put(owner));
            }
            for (const auto& piece : bench.roster().pieces) {
                ASSERT_TRUE(store->put(piece));
            }
            for (const auto& rule : revisionsOf(bench.events(), shippedBook(), {})) {
                ASSERT_TRUE(store->putRules(rule));
            }
            ASSERT_TRUE(store->append(bench.events()));
        }
        for (int step = 0; step < 10; ++step) {
            const auto events = bench.step();
            const Outcome stored = writer->append(events);
            ASSERT_TRUE(stored) << stored.fault().detail;
            const auto store = store::Store::open(file, store::OpenMode::ReadOnly).takeValue();
            const auto read = readBench(*store, shelf, bench.now());
            ASSERT_TRUE(read) << read.fault().detail;
            bench::Roster roster = read.value().record.roster;
            roster.openHours = bench.roster().openHours; // not told in this file
            const auto again = bench::fold(roster, read.value().record.events, read.value().book);
            const auto before = bench.fold();
            EXPECT_TRUE(again.pieces == before.pieces) << "stream " << stream << ", step " << step;
            EXPECT_TRUE(again.mixes == before.mixes) << "stream " << stream << ", step " << step;
            EXPECT_TRUE(again.air == before.air) << "stream " << stream << ", step " << step;
            EXPECT_TRUE(again.states == before.states) << "stream " << stream << ", step " << step;
            EXPECT_TRUE(again.answers == before.answers) << "stream " << stream << ", step " << step;
            EXPECT_EQ(again.atBench, before.atBench);
            EXPECT_EQ(again.awaySince, before.awaySince);
            EXPECT_EQ(read.value().record.next.value(), static_cast<std::int64_t>(bench.events().size()) + 1);
        }
    }
}

} // namespace mend::service
