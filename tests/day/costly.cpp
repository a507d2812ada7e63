#include "tests/day/costly.h"

#include "core/bench/window.h"
#include "core/service/openbench.h"
#include "core/store/store.h"
#include "tests/support/scratch.h"

#include <algorithm>
#include <map>

namespace mend::test {

namespace {

constexpr Span step = std::chrono::seconds(5);

/// One day, told again.
class Walk {
public:
    Walk(const service::OpenBench& bench) : m_open(bench) {}

    void lookAt(Instant now)
    {
        const auto told =
            std::ranges::count_if(m_open.record.events, [now](const auto& event) { return event.recorded <= now; });
        if (told != m_told) {
            m_told = told;
            std::vector<bench::Event> events;
            std::ranges::copy_if(m_open.record.events, std::back_inserter(events),
                                 [now](const auto& event) { return event.recorded <= now; });
            m_bench = bench::fold(m_open.record.roster, events, m_open.book);
        }
        std::map<Key, Run> running;
        for (const bench::Window& window : bench::windowsOf(m_bench, m_open.book, now)) {
            const bool isCostly =
                window.closes && window.latestStart && !window.counted && window.miss >= rules::Miss::Afternoon;
            if (!isCostly) {
                continue;
            }
            const Key key{window.piece, window.stage};
            const auto before = m_running.find(key);
            Run run = before == m_running.end() ? Run{now} : before->second;
            m_windows.seen += before == m_running.end() ? 1 : 0;
            run.isServed = run.isServed || window.begunAt;
            if (now >= *window.latestStart && !run.isServed) {
                m_windows.passed.push_back(
                    {nameOf(window.piece), wordsOf(window.stage), run.since, *window.latestStart});
                run.isServed = true; // said once
            }
            running.emplace(key, run);
        }
        m_running = std::move(running);
    }

    CostlyWindows windows() const { return m_windows; }

private:
    using Key = std::pair<PieceId, bench::StageInstance>;
    struct Run {
        Instant since;
        bool isServed = false;
    };

    QString nameOf(PieceId id) const
    {
        const record::Piece* piece = m_open.record.roster.piece(id);
        return piece ? QString::fromStdString(piece->benchName) : QString();
    }
    static QString wordsOf(const bench::StageInstance& stage)
    {
        return QStringLiteral("%1#%2").arg(QString::fromStdString(stage.stage)).arg(stage.repetition);
    }

    const service::OpenBench& m_open;
    std::ptrdiff_t m_told = -1;
    bench::BenchFold m_bench;
    std::map<Key, Run> m_running;
    CostlyWindows m_windows;
};

} // namespace

CostlyWindows costlyWindows(const QString& file, InstantRange day)
{
    const Scratch scratch;
    service::RuleShelf shelf({"resources/rules", scratch / "own", {}});
    store::OpenOptions how;
    how.mode = store::OpenMode::ReadOnly;
    auto store = store::Store::open(file.toStdString(), how);
    auto bench = store ? service::readBench(*store.value(), shelf, day.to) : Result<service::OpenBench>(store.fault());
    if (!bench) {
        return {};
    }
    const service::OpenBench open = bench.takeValue();
    Walk walk(open);
    for (Instant now = day.from; now <= day.to; now += step) {
        walk.lookAt(now);
    }
    CostlyWindows windows = walk.windows();
    windows.isRead = true;
    return windows;
}

} // namespace mend::test
