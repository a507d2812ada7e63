#include "app/desk/benchat.h"
#include "app/desk/boardtext.h"
#include "app/desk/verbs.h"

namespace mend::desk {

Answer showBoard(const std::string& file, std::optional<Instant> at, const Clock& clock)
{
    const auto read = benchAt(file, at, clock);
    if (!read) {
        return refusal(read.fault(), QString::fromStdString(file));
    }
    const service::OpenBench& open = read.value().open;
    const bench::BenchFold& bench = read.value().fold;
    const Instant now = read.value().now;
    const bench::Board board = bench::boardOf(bench, open.book, now);
    const Look look{QString::fromStdString(open.studio.name),
                    bench,
                    board,
                    bench::alertsFor(bench, board.windows, open.book, now),
                    {open.studio.timeZone(), QLocale(QLocale::English), open.studio.fahrenheit}};
    return {Ending::Good, boardText(look), boardJson(look)};
}

} // namespace mend::desk
