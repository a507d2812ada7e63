#include "app/desk/benchat.h"

#include <algorithm>

namespace mend::desk {

namespace {

/// As it stood then: what was told later is not known yet, and pieces that went home since are back.
Outcome goBackTo(Instant at, const store::Store& store, service::BenchRecord& record)
{
    auto events = store.allEvents();
    auto pieces = store.pieces();
    auto owners = store.customers();
    if (!events || !pieces || !owners) {
        return !events ? events.fault() : !pieces ? pieces.fault() : owners.fault();
    }
    record.events = events.takeValue();
    record.roster.pieces = pieces.takeValue();
    record.roster.customers = owners.takeValue();
    std::erase_if(record.events, [at](const bench::Event& event) { return event.recorded > at; });
    return Done{};
}

bool wasToldAfter(Instant at, const std::vector<bench::Event>& events)
{
    return std::ranges::any_of(events, [at](const bench::Event& event) { return event.recorded > at; });
}

} // namespace

Result<BenchAt> benchAt(const std::string& file, std::optional<Instant> at, const Clock& clock)
{
    const auto opened = store::Store::open(file, store::OpenMode::ReadOnly);
    if (!opened) {
        return opened.fault();
    }
    service::RuleShelf shelf(service::RuleShelf::usualFolders());
    const Instant now = at.value_or(clock.now().utc);
    auto read = service::readBench(*opened.value(), shelf, now);
    if (!read) {
        return read.fault();
    }
    BenchAt bench{read.takeValue(), now, {}};
    if (at && wasToldAfter(*at, bench.open.record.events)) {
        if (const Outcome back = goBackTo(*at, *opened.value(), bench.open.record); !back) {
            return back.fault();
        }
    }
    bench.fold = bench::fold(bench.open.record.roster, bench.open.record.events, bench.open.book);
    return bench;
}

} // namespace mend::desk
