#include "tests/store/manyyears.h"

#include "core/store/recordrows.h"

#include <array>
#include <cstdio>
#include <cstdlib>

namespace mend::test {

using namespace store;
using namespace std::chrono_literals;

namespace {

/// From the agreement to the filler, whose wiping back then has a window.
constexpr std::array<const char*, eventsOfPiece> stagesDone{"testOldMend", "takeApart", "cleanOldGlue", "recordAsFound",
                                                            "cleanEdges",  "dryFit",    "glueSet",      "pressSet",
                                                            "pareSet",     "restJoins", "scrapeAndKey", "fillRun"};

} // namespace

void fillManyYears(store::Store& store, Instant lastDone)
{
    furnish(store, 0);
    std::int64_t id = 0;
    for (int batch = 0; batch < piecesInFile; batch += 500) {
        Transaction transaction(store.database());
        for (int i = batch + 1; i <= batch + 500; ++i) {
            RecordRows rows(store.database());
            record::Piece piece = somePiece(i);
            piece.owner = rows.put(record::Customer{CustomerId(), "Owner " + std::to_string(i), "555-0100"});
            rows.put(piece);
        }
        transaction.commit();
        std::vector<bench::Event> events;
        for (int i = batch + 1; i <= batch + 500; ++i) {
            const bool home = i <= piecesInFile - piecesOnBench;
            events.push_back(someEvent(++id, bench::What::Agreed, PieceId(i)));
            events.back().stage = {};
            for (const char* stage : stagesDone) {
                events.push_back(someEvent(++id, bench::What::Done, PieceId(i)));
                events.back().stage = {stage, 1};
            }
            bench::Event& last = events.back();
            if (home) {
                last.what = bench::What::HandedOver;
            } else {
                last.happened = lastDone + (i - piecesInFile) * 5s;
                last.recorded = last.happened;
            }
        }
        if (const Outcome outcome = store.append(events); !outcome) {
            std::fprintf(stderr, "%s\n", outcome.fault().detail.c_str());
            std::exit(1);
        }
    }
}

} // namespace mend::test
