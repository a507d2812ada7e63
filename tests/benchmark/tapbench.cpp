// From a finger on a button of a card to its answer on the glass and to the disk, in the program's own window on
// a file of many years: alone, while every record is checked, and while a backup is made.
#include "app/program/benchlink.h"
#include "app/program/opening.h"
#include "app/program/upkeep.h"
#include "core/service/systemclock.h"
#include "tests/store/manyyears.h"
#include "tests/support/scratch.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QTest>
#include <algorithm>
#include <atomic>
#include <cstdio>
#include <set>

using namespace mend;
using namespace mend::test;
using namespace std::chrono_literals;

namespace {

constexpr int mostTaps = 150;
constexpr double floorMs = 100;

/// When something of the window was painted last.
class Painted : public QObject {
public:
    bool eventFilter(QObject* watched, QEvent* event) override
    {
        if (event->type() == QEvent::Paint && watched->isWidgetType()) {
            QObject* const view = watched;
            view->event(event); // painted here and now, so that the clock stops after it
            at = since.nsecsElapsed();
            return true;
        }
        return false;
    }
    QElapsedTimer since;
    qint64 at = 0;
};

struct Figures {
    std::vector<double> seen;
    std::vector<double> stored;
};

double part(std::vector<double> figures, double share)
{
    std::ranges::sort(figures);
    return figures.empty() ? 0.0 : figures[static_cast<std::size_t>(share * static_cast<double>(figures.size() - 1))];
}

bool print(const char* when, const Figures& figures)
{
    std::printf("%s: %zu taps\n", when, figures.seen.size());
    const double seen = part(figures.seen, 0.99);
    const double stored = part(figures.stored, 0.99);
    std::printf("  answered on the glass, median %.1f, 99 %% within %.1f ms (floor %.0f)\n", part(figures.seen, 0.5),
                seen, floorMs);
    std::printf("  on the disk, median %.1f, 99 %% within %.1f ms (floor %.0f)\n", part(figures.stored, 0.5), stored,
                floorMs);
    return seen <= floorMs && stored <= floorMs && !figures.seen.empty();
}

/// The program's window on its file, put together as the program does, with a hand on it.
class Bench {
public:
    explicit Bench(app::Opened opened)
        : m_shelf(std::move(opened.shelf)),
          m_keeping(std::move(opened.store),
                    [this](const auto& events) { return service::revisionsOf(events, m_bench.book(), {}); }),
          m_bench(m_clock, opened.bench.book, std::move(opened.bench.record),
                  [this](const auto& events) { keep(events); }),
          m_alerts(m_bench), m_heart(m_clock, m_bench, m_alerts, service::LastSeen("/dev/null")),
          m_gate([this] { return m_touch += 1000; }), m_window(m_gate),
          m_link({m_bench, m_alerts, m_heart, m_clock}, m_window, service::Manner()),
          m_upkeep(m_keeping, m_clock, {opened.file, true, {}})
    {
        QObject::connect(&m_keeping, &app::Keeping::stored, &m_window, [this](const std::vector<EventId>& ids) {
            m_bench.stored(ids);
            if (std::ranges::find(ids, m_awaited) != ids.end()) {
                m_awaited = {};
                m_storedAt = m_painted.since.nsecsElapsed();
            }
        });
        m_window.setLookSettings({parts::Theme::Light, 1.0, false, false, 96.0});
        m_window.resize(1280, 800);
        m_heart.begin();
        m_link.show();
        m_window.show();
        QTest::qWait(300);
        m_painted.since.start();
        for (auto* view : m_window.findChildren<parts::ActView*>()) {
            view->installEventFilter(&m_painted);
        }
    }

    Figures tapWhile(const std::function<bool()>& running)
    {
        Figures figures;
        while (static_cast<int>(figures.seen.size()) < mostTaps && running()) {
            if (!tapNext(figures)) {
                m_tried.clear();
                if (!tapNext(figures)) {
                    break;
                }
            }
        }
        return figures;
    }
    app::Upkeep& upkeep() { return m_upkeep; }
    app::Keeping& keeping() { return m_keeping; }

private:
    void keep(const std::vector<bench::Event>& events)
    {
        m_awaited = events.back().id;
        m_keeping.keep(events);
    }

    /// Taps the next act of a card that can be seen; false where none is left.
    bool tapNext(Figures& figures)
    {
        for (auto* view : m_window.findChildren<parts::ActView*>()) {
            for (const parts::Hit& hit : view->hits()) {
                const bool tells = hit.canAct() && hit.kind == parts::HitKind::BenchAct &&
                                   hit.key.contains(QLatin1String("/act/")) && !m_tried.contains(hit.key) &&
                                   view->visibleRegion().contains(hit.rect.center());
                if (tells) {
                    m_tried.insert(hit.key);
                    tap(*view, hit.rect.center(), figures);
                    return true;
                }
            }
        }
        return false;
    }

    void tap(parts::ActView& view, QPoint at, Figures& figures)
    {
        QCoreApplication::processEvents();
        m_awaited = {};
        m_storedAt = 0;
        QTest::mousePress(&view, Qt::LeftButton, {}, at);
        const qint64 before = m_painted.since.nsecsElapsed();
        QTest::mouseRelease(&view, Qt::LeftButton, {}, at);
        if (!m_awaited.isSet()) { // it asked something first: no fact was told
            m_window.bench().panel().close();
            return;
        }
        while (m_painted.at < before) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 5);
        }
        figures.seen.push_back(static_cast<double>(m_painted.at - before) / 1e6);
        while (m_storedAt == 0) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 5);
        }
        figures.stored.push_back(static_cast<double>(m_storedAt - before) / 1e6);
    }

    service::SystemClock m_clock;
    std::unique_ptr<service::RuleShelf> m_shelf;
    Painted m_painted;
    std::set<QString> m_tried;
    EventId m_awaited;
    qint64 m_storedAt = 0;
    qint64 m_touch = 0;
    app::Keeping m_keeping;
    service::BenchService m_bench;
    service::AlertService m_alerts;
    service::Heartbeat m_heart;
    parts::TapGate m_gate;
    app::MainWindow m_window;
    app::BenchLink m_link;
    app::Upkeep m_upkeep;
};

} // namespace

int main(int argc, char** argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    QApplication application(argc, argv);
    const Scratch scratch;
    const auto file = scratch / "bench.mendbench";
    const Instant now = std::chrono::time_point_cast<Span>(std::chrono::system_clock::now());
    fillManyYears(*openOrDie(file), now - 10min);
    app::ProgramOptions options;
    options.file = QString::fromStdString(file.string());
    auto opened = app::openFor(options, service::SystemClock().now());
    if (!opened) {
        std::fputs("the bench was not opened\n", stderr);
        return 1;
    }
    Bench bench(opened.takeValue());
    bool good = print("alone", bench.tapWhile([] { return true; }));

    std::atomic<bool> checking = true;
    QElapsedTimer since;
    since.start();
    bench.keeping().thread().start(
        std::make_unique<store::RecordCheck>([&](const store::CheckReport&) { checking = false; }));
    good = print("while every record is checked", bench.tapWhile([&] { return checking.load(); })) && good;
    while (checking) {
        QTest::qWait(5);
    }
    std::printf("  the check took %.1f s (floor 10)\n", static_cast<double>(since.elapsed()) / 1000.0);

    bool copying = true;
    QObject::connect(&bench.upkeep(), &app::Upkeep::backedUp, &application, [&] { copying = false; });
    QObject::connect(&bench.upkeep(), &app::Upkeep::backupFailed, &application, [&] { copying = false; });
    bench.upkeep().backUpNow();
    good = print("while a backup is made", bench.tapWhile([&] { return copying; })) && good;
    return good ? 0 : 1;
}
