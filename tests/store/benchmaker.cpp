#include "tests/store/benchmaker.h"

#include <array>
#include <cstdlib>
#include <iostream>

namespace mend::test {

using bench::Event;
using bench::What;
using namespace std::chrono_literals;

namespace {

template <class T> void must(const Result<T>& result)
{
    if (!result) {
        std::cerr << "test bench: " << result.fault().detail << std::endl;
        std::abort();
    }
}

} // namespace

std::unique_ptr<store::Store> openOrDie(const std::filesystem::path& file, store::OpenMode mode, const std::string& vfs)
{
    store::OpenOptions options;
    options.mode = mode;
    options.vfs = vfs;
    auto opened = store::Store::open(file, options);
    must(opened);
    return opened.takeValue();
}

record::Piece somePiece(int running)
{
    record::Piece piece;
    piece.number = "26" + std::to_string(10'000 + running);
    piece.benchName = "Heron bowl " + std::to_string(running);
    piece.procedure = "goldLacquerSeam";
    piece.body = record::Body::Vitrified;
    piece.fragments = 1 + running % 9;
    piece.seam = centimetres(running % 40);
    piece.chip = millimetres(running % 7);
    piece.optionalStages = {"primeEdges"};
    piece.materialsInIt = {"oldEpoxy", "plaster"};
    return piece;
}

void furnish(store::Store& store, int pieces)
{
    must(store.putRules({"revisionOne", "{\"stages\": []}"}));
    must(store.put(record::Place{PlaceId(1), "Bench", record::PlaceKind::Bench, 0}));
    must(store.put(record::Place{PlaceId(2), "Cabinet", record::PlaceKind::Cabinet, 6}));
    must(store.put(record::Person{PersonId(1), "Ines"}));
    must(store.put(record::Person{PersonId(2), "Tomo"}));
    for (int i = 1; i <= pieces; ++i) {
        must(
            store.takeIn({CustomerId(), "Owner " + std::to_string(i), "555-01" + std::to_string(i)}, somePiece(i), {}));
    }
}

Event someEvent(std::int64_t id, What what, PieceId piece)
{
    Event event;
    event.id = EventId(id);
    event.what = what;
    event.piece = piece;
    event.stage = {"wipeBack", 1};
    event.person = PersonId(1);
    event.happened = benchStart + id * 1min;
    event.recorded = event.happened + 250ms;
    event.boot = {"boot", std::chrono::nanoseconds(id * 60'000'000'000)};
    return event;
}

Event EventMaker::next()
{
    constexpr std::array<const char*, 5> words{"", "stiff", "INC-01:padsInCan", "\xc3\xb1 \xe6\xbc\x86", "a:b,c~"};
    const std::int64_t id = ++m_last;
    Event event = someEvent(id, static_cast<What>(1 + upTo(47)), PieceId(upTo(m_pieces)));
    event.stage = {words.at(static_cast<std::size_t>(upTo(4))), 1 + upTo(3)};
    event.person = PersonId(upTo(2));
    event.place = PlaceId(upTo(2));
    event.mix = MixId(upTo(4));
    event.rules = upTo(1) == 0 ? "" : "revisionOne";
    event.happened += std::chrono::milliseconds(upTo(7'200'000)) - 1h;
    event.word = words.at(static_cast<std::size_t>(upTo(4)));
    event.note = upTo(3) == 0 ? "said by the owner: keep the label" : "";
    if (id > 1 && (event.what == What::Voided || event.what == What::Retold || upTo(9) == 0)) {
        event.target = EventId(1 + upTo(static_cast<int>(id) - 2));
    }
    if (upTo(1) == 0) {
        event.temperature = Temperature::fromCentidegrees(upTo(6000) - 1000);
        event.humidity = Humidity::fromCount(upTo(10'000));
    }
    if (upTo(2) == 0) {
        event.amount = upTo(100'000) - 50'000;
    }
    if (upTo(2) == 0) {
        event.from = event.happened - 1h;
    }
    if (upTo(2) == 0) {
        event.until = event.happened + 1h;
    }
    return event;
}

std::vector<Event> EventMaker::some(int count)
{
    std::vector<Event> events;
    for (int i = 0; i < count; ++i) {
        events.push_back(next());
    }
    return events;
}

} // namespace mend::test
