// How long it takes to hold the next start of every piece against the whole bench, once a tick.

#include "core/bench/hazardcheck.h"

#include "tests/support/rulefiles.h"

#include <chrono>
#include <cstdio>

using namespace mend;

namespace {

constexpr int pieceCount = 60;
constexpr int rounds = 200;
constexpr double floorInMilliseconds = 1.0;

Instant at(int minute)
{
    return Instant(std::chrono::sys_days(std::chrono::year(2027) / 3 / 1)) + std::chrono::minutes(minute);
}

/// Sixty pieces over every procedure, each half way through its work, on a bench with solvent about.
bench::BenchFold busyBench(const rules::RuleBook& book)
{
    bench::Roster roster;
    roster.places = {{PlaceId(1), "Table", record::PlaceKind::Bench, 0},
                     {PlaceId(2), "Cabinet", record::PlaceKind::Cabinet, 60},
                     {PlaceId(3), "Box", record::PlaceKind::HumidBox, 60}};
    std::vector<bench::Event> events;
    const auto tell = [&](bench::Event event, int minute) {
        event.id = EventId(static_cast<std::int64_t>(events.size()) + 1);
        event.happened = event.recorded = at(minute);
        events.push_back(event);
    };
    for (int minute = 0; minute < 600; minute += 60) {
        for (const int place : {1, 2, 3}) {
            bench::Event reading;
            reading.what = bench::What::ReadingTaken;
            reading.place = PlaceId(place);
            reading.temperature = Temperature::fromCelsius(23);
            reading.humidity = percentHumidity(75);
            tell(reading, minute);
        }
    }
    for (int i = 0; i < pieceCount; ++i) {
        const rules::Procedure& procedure = book.procedures[static_cast<std::size_t>(i) % book.procedures.size()];
        record::Piece piece;
        piece.id = PieceId(i + 1);
        piece.procedure = procedure.key;
        piece.fragments = 5;
        piece.chip = centimetres(4);
        roster.pieces.push_back(piece);
        bench::Event agreed;
        agreed.what = bench::What::Agreed;
        agreed.piece = piece.id;
        agreed.place = PlaceId(1 + i % 3);
        agreed.rules = procedure.hash;
        tell(agreed, 0);
        for (std::size_t stage = 0; stage < procedure.stages.size() * static_cast<std::size_t>(i % 4) / 4; ++stage) {
            bench::Event done;
            done.what = bench::What::Done;
            done.piece = piece.id;
            done.stage = {procedure.stages[stage].key, 1};
            tell(done, 1 + i + static_cast<int>(stage) * 15);
        }
    }
    return bench::fold(roster, events, book);
}

} // namespace

int main()
{
    const rules::RuleBook book = test::shippedRules();
    const bench::BenchFold bench = busyBench(book);
    const Instant now = at(599);
    const std::vector<bench::Window> windows = bench::windowsOf(bench, book, now);
    std::vector<bench::Start> starts;
    for (const bench::Window& window : windows) {
        if (starts.empty() || starts.back().piece != window.piece) {
            starts.push_back({window.piece, window.stage, PlaceId(1)});
        }
    }
    std::size_t found = 0;
    const auto begun = std::chrono::steady_clock::now();
    for (int round = 0; round < rounds; ++round) {
        const bench::BenchPicture picture(bench, windows, book, now);
        for (const bench::Start& start : starts) {
            found += bench::hazardsOf(start, picture).size();
        }
    }
    const double took =
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begun).count() / rounds;
    std::printf("hazards of %zu starts among %d pieces: %.3f ms a tick (floor: at most %.1f ms), %zu findings\n",
                starts.size(), pieceCount, took, floorInMilliseconds, found / rounds);
    return took <= floorInMilliseconds && found > 0 ? 0 : 1;
}
