// From the instant an alert falls due to the painted window and to the first sample in the sound server's hands,
// through everything that stands between in the program: the one timer, the bench, the desk, the window, the sound
// process. And 500 that fall due within one second on one bench. MEND_DUE_ALERTS asks for fewer than 10,000.
#include "app/program/benchlink.h"
#include "app/sound/player.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"
#include "tests/support/soundserver.h"
#include "tests/support/testbench.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QTest>
#include <QTimer>
#include <algorithm>
#include <cstdio>
#include <tuple>

using namespace mend;
using namespace mend::test;

namespace {

using Stopwatch = std::chrono::steady_clock;
using Millis = std::chrono::duration<double, std::milli>;

constexpr double mostToVisible = 250; // milliseconds, p99
constexpr double mostToSample = 500;
constexpr double mostToAnswer = 100;
constexpr int others = 7; ///< pieces on the bench beside the one that calls
constexpr int stormSize = 500;
/// A call that has not come after so long is lost.
constexpr int patience = 5000;

/// Real time, counted from wherever it is put.
class RunningClock : public Clock {
public:
    void put(Instant at)
    {
        m_began = Stopwatch::now();
        m_from = at;
    }
    Moment now() const override
    {
        const auto since = std::chrono::floor<std::chrono::milliseconds>(Stopwatch::now() - m_began);
        return {m_from + since, {"boot", std::chrono::hours(1) + (m_from + since - TestBench::at(0))}};
    }
    /// How long ago that instant was, to the microsecond; below zero: still to come.
    double since(Instant at) const { return Millis(Stopwatch::now() - m_began).count() - Millis(at - m_from).count(); }

private:
    Stopwatch::time_point m_began = Stopwatch::now();
    Instant m_from;
};

/// Says when a widget has been painted.
class Painted : public QObject {
public:
    explicit Painted(QWidget& watched) { watched.installEventFilter(this); }
    std::function<void()> then;

protected:
    bool eventFilter(QObject*, QEvent* event) override
    {
        if (event->type() == QEvent::Paint) {
            // Runs once the paint event, and the whole of the window's update, is over.
            QTimer::singleShot(0, this, [this] {
                if (then) {
                    then();
                }
            });
        }
        return false;
    }
};

/// The bench of the program from its services to its window, as session.cpp ties them together.
struct Living {
    Living(const RunningClock& clock, TestBench& source, app::MainWindow& window)
        : bench(clock, source.book(),
                {source.roster(), source.events(), EventId(static_cast<std::int64_t>(source.events().size()) + 1)},
                nullptr),
          alerts(bench), heart(clock, bench, alerts, service::LastSeen(scratch / "last-seen")),
          link({bench, alerts, heart, clock}, window, {})
    {
    }
    Scratch scratch;
    service::BenchService bench;
    service::AlertService alerts;
    service::Heartbeat heart;
    app::BenchLink link;
};

/// A gold seam whose filler was pressed in at that minute: it has to be wiped in time, or an afternoon is lost.
PieceId addFilled(TestBench& bench, double minute)
{
    const PieceId piece = bench.add("goldLacquerSeam").id;
    bench.upTo(piece, "fillRun", 1);
    bench.begun(piece, "fillRun", minute - 3);
    bench.done(piece, "fillRun", minute);
    return piece;
}

double percentile(std::vector<double> figures, double percent)
{
    std::ranges::sort(figures);
    const auto at = static_cast<std::size_t>(static_cast<double>(figures.size()) * percent / 100);
    return figures.empty() ? -1 : figures[std::min(figures.size() - 1, at)];
}

struct Figures {
    std::vector<double> toVisible;
    std::vector<double> toSample;
    int early = 0;
    int lost = 0;
};

/// One alert falls due a few milliseconds after the program has started.
class OneAlert {
public:
    OneAlert(RunningClock& clock, TestBench& source, const bench::Alert& due, app::MainWindow& window,
             sound::Player* player)
        : m_clock(clock), m_due(due), m_window(window), m_painted(window.bench().block()),
          m_living((clock.put(due.due - std::chrono::milliseconds(25)), clock), source, window)
    {
        m_painted.then = [this] { painted(); };
        QObject::connect(&m_living.alerts, &service::AlertService::playWanted, &m_painted,
                         [this, player](const bench::Play& play) { called(play, player); });
        if (player) {
            QObject::connect(player, &sound::Player::firstSample, &m_painted,
                             [this](sound::SoundId, std::chrono::microseconds after) {
                                 m_sample = m_called.value_or(0) + static_cast<double>(after.count()) / 1000;
                             });
        }
    }

    void measure(Figures& figures, bool sounds)
    {
        m_living.heart.begin();
        m_living.link.show();
        const bool came = QTest::qWaitFor([&] { return m_visible && m_called && (!sounds || m_sample); }, patience);
        if (!came) {
            ++figures.lost;
            return;
        }
        figures.early += *m_visible < 0 || *m_called < 0 ? 1 : 0;
        figures.toVisible.push_back(*m_visible);
        if (m_sample) {
            figures.toSample.push_back(*m_sample);
        }
    }

private:
    void called(const bench::Play& play, sound::Player* player)
    {
        if (std::ranges::find(play.keys, m_due.key) == play.keys.end() || m_called) {
            return;
        }
        m_called = m_clock.since(m_due.due);
        if (player) {
            player->stop();
            player->play(sound::Tone::A, {-30});
        }
    }
    void painted()
    {
        const bool shows = std::ranges::any_of(m_living.alerts.decision().visible,
                                               [&](const auto& one) { return one.key == m_due.key; }) &&
                           m_window.bench().blockPiece() == m_due.piece;
        if (shows && !m_visible) {
            m_visible = m_clock.since(m_due.due);
        }
    }

    RunningClock& m_clock;
    const bench::Alert& m_due;
    app::MainWindow& m_window;
    Painted m_painted;
    std::optional<double> m_called;
    std::optional<double> m_sample;
    std::optional<double> m_visible;
    Living m_living;
};

const bench::Alert* closingOf(const std::vector<bench::Alert>& alerts, PieceId piece)
{
    const auto found = std::ranges::find_if(alerts, [&](const bench::Alert& alert) {
        return alert.piece == piece && alert.kind == bench::AlertKind::Closes;
    });
    return found == alerts.end() ? nullptr : &*found;
}

std::vector<bench::Alert> alertsOf(const TestBench& source, Instant now)
{
    const bench::BenchFold fold = source.fold();
    return bench::alertsFor(fold, bench::windowsOf(fold, source.book(), now), source.book(), now);
}

bool measureOneByOne(RunningClock& clock, app::MainWindow& window, sound::Player* player)
{
    TestBench source(shippedRules(), 24);
    for (int other = 0; other < others; ++other) {
        const PieceId piece = source.add(other % 2 == 0 ? "invisibleMend" : "metalFilledSeam").id;
        source.done(piece, "clean", 2);
    }
    const PieceId piece = addFilled(source, 103);
    const auto alerts = alertsOf(source, TestBench::at(103));
    const bench::Alert* due = closingOf(alerts, piece);
    const int count =
        qEnvironmentVariableIsSet("MEND_DUE_ALERTS") ? qEnvironmentVariableIntValue("MEND_DUE_ALERTS") : 10'000;
    Figures figures;
    for (int i = 0; due && i < count; ++i) {
        OneAlert(clock, source, *due, window, player).measure(figures, player != nullptr);
    }
    const double visible = percentile(figures.toVisible, 99);
    const double sample = percentile(figures.toSample, 99);
    std::printf(
        "due to painted window, %zu alerts: median %.1f ms, p99 %.1f ms, most %.1f ms (floor: p99 at most %.0f)\n",
        figures.toVisible.size(), percentile(figures.toVisible, 50), visible, percentile(figures.toVisible, 100),
        mostToVisible);
    if (player) {
        std::printf(
            "due to first sample, %zu alerts: median %.1f ms, p99 %.1f ms, most %.1f ms (floor: p99 at most %.0f)\n",
            figures.toSample.size(), percentile(figures.toSample, 50), sample, percentile(figures.toSample, 100),
            mostToSample);
    } else {
        std::puts("due to first sample: no sound server is installed, nothing measured");
    }
    std::printf("early %d (floor 0), lost %d (floor 0)\n", figures.early, figures.lost);
    return figures.lost == 0 && figures.early == 0 && !figures.toVisible.empty() && visible <= mostToVisible &&
           sample <= mostToSample;
}

/// The longest that the window did not look at its events, asked every five milliseconds.
class Answering : public QObject {
public:
    Answering()
    {
        m_timer.setTimerType(Qt::PreciseTimer);
        connect(&m_timer, &QTimer::timeout, this, [this] {
            m_longest = std::max(m_longest, static_cast<double>(m_since.nsecsElapsed()) / 1e6);
            m_since.start();
        });
        m_since.start();
        m_timer.start(5);
    }
    double longest() const { return std::max(m_longest, static_cast<double>(m_since.nsecsElapsed()) / 1e6); }

private:
    QTimer m_timer;
    QElapsedTimer m_since;
    double m_longest = 0;
};

bool isInOrder(const std::vector<bench::VisibleAlert>& visible, const service::AlertService& alerts)
{
    return std::ranges::is_sorted(visible, [&](const bench::VisibleAlert& one, const bench::VisibleAlert& other) {
        const bench::Alert& a = *alerts.alert(one.key);
        const bench::Alert& b = *alerts.alert(other.key);
        const auto start = [](const bench::Alert& alert) { return alert.latestStart.value_or(Instant::max()); };
        return std::tuple(-static_cast<int>(a.urgency), start(a), a.due) <
               std::tuple(-static_cast<int>(b.urgency), start(b), b.due);
    });
}

bool measureStorm(RunningClock& clock, app::MainWindow& window)
{
    constexpr double wipedAt = 100; // minute
    TestBench source(shippedRules(), 24);
    std::vector<bench::Event> told;
    for (int i = 0; i < stormSize; ++i) {
        const PieceId piece = source.add("goldLacquerSeam").id;
        if (i == 0) {
            source.upTo(piece, "wipeBack", 1);
            told = source.events();
        }
        for (const bench::Event& event : told) { // as the first, so that not every piece is folded for it
            if (i > 0 && event.what == bench::What::Done) {
                source.done(piece, event.stage.stage, minuteOf(event.happened), event.stage.repetition);
            }
        }
        source.done(piece, "wipeBack", wipedAt + i / (60.0 * stormSize));
    }
    const Instant now = TestBench::at(wipedAt + 1);
    std::vector<Instant> dues; // of the curing, an hour or so later
    for (const bench::Alert& alert : alertsOf(source, now)) {
        if (alert.due > now) {
            dues.push_back(alert.due);
        }
    }
    std::ranges::sort(dues);
    if (dues.size() < stormSize || dues.back() - dues.front() > std::chrono::seconds(1)) {
        std::printf("only %zu alerts fall due within one second\n", dues.size());
        return false;
    }
    clock.put(dues.front() - std::chrono::seconds(15)); // time to stand and be painted
    Living living(clock, source, window);
    int bursts = 0;
    std::size_t announced = 0;
    QObject::connect(&living.alerts, &service::AlertService::playWanted, &window, [&](const bench::Play& play) {
        bursts += play.signal == bench::Signal::None ? 0 : 1;
        announced += play.keys.size();
    });
    living.heart.begin();
    living.link.show();
    if (!QTest::qWaitFor([&] { return clock.since(dues.front()) > -300; }, 60'000) || clock.since(dues.front()) > 0) {
        std::puts("the bench of 500 did not stand before the first fell due: nothing measured");
        return false;
    }
    const Answering answering;
    // Judged once the alerts have been looked at after the last fell due: what a look that began earlier leaves out is
    // not lost, it is only not due yet.
    const bool isOver = QTest::qWaitFor(
        [&] { return clock.since(dues.back()) > 1000 && living.alerts.decision().memory.looked >= dues.back(); },
        60'000);
    const auto& visible = living.alerts.decision().visible;
    const bool ordered = isInOrder(visible, living.alerts);
    std::printf("%d due within one second: %zu announced with %d burst (floor 1), %zu shown, in order: %s; the window "
                "answered within %.0f ms (floor %.0f)\n",
                stormSize, announced, bursts, visible.size(), ordered ? "yes" : "no", answering.longest(),
                mostToAnswer);
    return isOver && bursts == 1 && announced >= stormSize && visible.size() >= stormSize && ordered &&
           answering.longest() <= mostToAnswer;
}

} // namespace

int main(int argc, char** argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    QApplication application(argc, argv);
    parts::TapGate gate;
    app::MainWindow window(gate);
    window.resize(1280, 800);
    window.setLookSettings({parts::Theme::Light, 1.0, true, false, 96.0});
    window.show();
    QTest::qWait(100);
    SoundServer server;
    std::unique_ptr<sound::Player> player;
    if (SoundServer::isInstalled() && server.start()) {
        player = std::make_unique<sound::Player>(sound::Player::Setup{});
        const auto isReady = [&] {
            player->probe();
            return player->deviceState() == sound::DeviceState::Ready;
        };
        if (!QTest::qWaitFor(isReady, 5000)) {
            std::puts("the sound server did not come");
            return 1;
        }
    }
    RunningClock clock;
    const bool oneByOne = measureOneByOne(clock, window, player.get());
    const bool storm = measureStorm(clock, window);
    return oneByOne && storm ? 0 : 1;
}
