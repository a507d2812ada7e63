// What one look at the bench costs, part by part: the fold, the windows, the whole board, the alerts and what is heard
// of them; with 60 pieces at every stage and with 500 whose filler was wiped within one second.
#include "core/bench/alertdesk.h"
#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <chrono>
#include <cstdio>
#include <functional>

using namespace mend;
using namespace mend::test;

namespace {

constexpr double mostForSixty = 10; // milliseconds, a figure of ours: a tick stays unseen
constexpr double mostForStorm = 60; // leaves the window time to paint within its 100

/// The shortest of some runs: what the work takes when nothing else takes the machine.
double milliseconds(const std::function<void()>& work)
{
    double shortest = 1e9;
    for (int i = 0; i < 5; ++i) {
        const auto began = std::chrono::steady_clock::now();
        work();
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - began;
        shortest = std::min(shortest, took.count());
    }
    return shortest;
}

/// Each piece further than the one before, over two procedures.
TestBench mixedBench(int pieces)
{
    TestBench bench(shippedRules(), 24);
    for (int i = 0; i < pieces; ++i) {
        const bool gold = i % 3 != 0;
        const PieceId piece = bench.add(gold ? "goldLacquerSeam" : "invisibleMend").id;
        if (gold && i % 2 == 0) {
            bench.upTo(piece, "fillRun", 1);
            bench.begun(piece, "fillRun", 97 + i * 0.05);
            bench.done(piece, "fillRun", 100 + i * 0.05);
        } else {
            bench.done(piece, "clean", 2);
        }
    }
    return bench;
}

TestBench wipedBench(int pieces)
{
    constexpr double wipedAt = 100;
    TestBench bench(shippedRules(), 24);
    std::vector<bench::Event> told;
    for (int i = 0; i < pieces; ++i) {
        const PieceId piece = bench.add("goldLacquerSeam").id;
        if (i == 0) {
            bench.upTo(piece, "wipeBack", 1);
            told = bench.events();
        }
        for (const bench::Event& event : told) { // as the first, so that not every piece is folded for it
            if (i > 0 && event.what == bench::What::Done) {
                bench.done(piece, event.stage.stage, minuteOf(event.happened), event.stage.repetition);
            }
        }
        bench.done(piece, "wipeBack", wipedAt + i / (60.0 * pieces));
    }
    return bench;
}

bool measure(const char* name, const TestBench& source, double minute, double most)
{
    const Instant now = TestBench::at(minute);
    const bench::BenchFold fold = source.fold();
    const bench::Board board = bench::boardOf(fold, source.book(), now);
    const auto alerts = bench::alertsFor(fold, board.windows, source.book(), now);
    bench::DeskInputs inputs;
    inputs.now = now;
    const double folding = milliseconds([&] { source.fold(); });
    const double windows = milliseconds([&] { bench::windowsOf(fold, source.book(), now); });
    const double whole = milliseconds([&] { bench::boardOf(fold, source.book(), now); });
    const double calls = milliseconds([&] { bench::alertsFor(fold, board.windows, source.book(), now); });
    const double deciding = milliseconds([&] { bench::decide({}, alerts, fold.answers, inputs); });
    std::size_t findings = 0;
    for (const bench::Card& card : board.cards) {
        findings += card.hazards.size();
    }
    std::printf("%s: %zu cards, %zu findings; fold %.2f ms, board %.2f ms (its windows %.2f), alerts %.2f ms, "
                "deciding %.2f ms (floor: board and alerts at most %.0f)\n",
                name, board.cards.size(), findings, folding, whole, windows, calls, deciding, most);
    return whole + calls + deciding <= most;
}

} // namespace

int main()
{
    const bool sixty = measure("60 pieces", mixedBench(60), 104, mostForSixty);
    const bool storm = measure("500 wiped within one second, pads drying", wipedBench(500), 101, mostForStorm);
    const bool later = measure("500 wiped, an hour later", wipedBench(500), 190, mostForStorm);
    return sixty && storm && later ? 0 : 1;
}
