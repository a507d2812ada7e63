#include "app/desk/boardtext.h"
#include "app/desk/verbs.h"

#include "core/service/openbench.h"

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

Answer showBoard(const std::string& file, std::optional<Instant> at, const Clock& clock)
{
    const QString name = QString::fromStdString(file);
    const auto opened = store::Store::open(file, store::OpenMode::ReadOnly);
    if (!opened) {
        return refusal(opened.fault(), name);
    }
    service::RuleShelf shelf(service::RuleShelf::usualFolders());
    const Instant now = at.value_or(clock.now().utc);
    auto read = service::readBench(*opened.value(), shelf, now);
    if (!read) {
        return refusal(read.fault(), name);
    }
    service::OpenBench open = read.takeValue();
    if (at && wasToldAfter(*at, open.record.events)) {
        if (const Outcome back = goBackTo(*at, *opened.value(), open.record); !back) {
            return refusal(back.fault(), name);
        }
    }
    const bench::BenchFold bench = bench::fold(open.record.roster, open.record.events, open.book);
    const bench::Board board = bench::boardOf(bench, open.book, now);
    const Look look{QString::fromStdString(open.studio.name),
                    bench,
                    board,
                    bench::alertsFor(bench, board.windows, open.book, now),
                    {open.studio.timeZone(), QLocale(QLocale::English), open.studio.fahrenheit}};
    return {Ending::Good, boardText(look), boardJson(look)};
}

} // namespace mend::desk
