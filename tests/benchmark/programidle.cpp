// What the whole program costs while nobody touches it: every thread of the real process and of its sound
// process, as the kernel counts them. Once with 60 cards of which six count seconds and nothing sounds, once
// with nothing in the house. The painting of 60 cards that all count seconds is measured in benchidle.
#include "tests/store/benchmaker.h"
#include "tests/support/scratch.h"
#include "tests/support/soundserver.h"
#include "tests/trial/screen.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QProcess>
#include <QTest>
#include <array>
#include <cstdio>

using namespace mend;
using namespace mend::test;
using namespace std::chrono_literals;

namespace {

constexpr int settleMs = 12'000; // the check and the backup after a start are over
constexpr double mostShare = 0.5;
constexpr double mostWakeUps = 4.0;

struct Used {
    double cpuSeconds = 0;
    long wakeUps = 0;
    Used operator-(const Used& other) const { return {cpuSeconds - other.cpuSeconds, wakeUps - other.wakeUps}; }
};

/// Of all threads of a process, from /proc.
Used usedBy(qint64 pid)
{
    Used used;
    const QDir tasks(QStringLiteral("/proc/%1/task").arg(pid));
    for (const QString& task : tasks.entryList(QDir::Dirs | QDir::NoDotAndDotDot)) {
        QFile schedule(tasks.filePath(task + QStringLiteral("/schedstat")));
        if (schedule.open(QFile::ReadOnly)) {
            used.cpuSeconds += schedule.readAll().split(' ').value(0).toDouble() / 1e9;
        }
        QFile status(tasks.filePath(task + QStringLiteral("/status")));
        if (status.open(QFile::ReadOnly)) {
            const QByteArray text = status.readAll();
            const qsizetype at = text.indexOf("voluntary_ctxt_switches:");
            used.wakeUps += text.mid(at + 24, text.indexOf('\n', at) - at - 24).trimmed().toLong();
        }
    }
    return used;
}

/// The sound process.
qint64 childOf(qint64 pid)
{
    QFile children(QStringLiteral("/proc/%1/task/%1/children").arg(pid));
    return children.open(QFile::ReadOnly) ? children.readAll().split(' ').value(0).toLongLong() : 0;
}

void print(const char* what, double figure, const char* unit, const char* floor)
{
    std::printf("%-62s %8.2f %-12s %s\n", what, figure, unit, floor);
}

/// 54 pieces whose joins rest for a day and six with fresh filler, which count seconds till it may be wiped.
void fillBench(store::Store& store, Instant now)
{
    constexpr std::array<const char*, 9> joined{"testOldMend",   "takeApart",  "cleanOldGlue",
                                                "recordAsFound", "cleanEdges", "dryFit",
                                                "glueSet",       "pressSet",   "pareSet"};
    constexpr std::array<const char*, 3> filled{"restJoins", "scrapeAndKey", "fillRun"};
    furnish(store, 60);
    std::vector<bench::Event> events;
    const auto tell = [&](bench::What what, int piece, const char* stage, Instant happened) {
        events.push_back(someEvent(static_cast<std::int64_t>(events.size()) + 1, what, PieceId(piece)));
        events.back().stage = {stage, stage[0] ? 1 : 0};
        events.back().happened = events.back().recorded = happened;
    };
    for (int piece = 1; piece <= 60; ++piece) {
        const bool fresh = piece > 54;
        const Instant then = now - (fresh ? 48h : 1h);
        tell(bench::What::Agreed, piece, "", then - 1h);
        for (const char* stage : joined) {
            tell(bench::What::Done, piece, stage, then);
        }
        for (const char* stage : filled) {
            if (fresh) {
                tell(bench::What::Done, piece, stage, now - 1min + piece * 1s);
            }
        }
    }
    if (!store.append(events)) {
        std::fputs("the bench could not be filled\n", stderr);
        std::exit(1);
    }
}

struct Idle {
    Used program;
    Used sound;
};

Idle measure(const std::filesystem::path& file, std::chrono::seconds span)
{
    QProcess program;
    program.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    program.start(QStringLiteral(MEND_PROGRAM),
                  {QStringLiteral("--size"), QStringLiteral("1280x800"), QString::fromStdString(file.string())});
    program.waitForStarted();
    QTest::qWait(settleMs);
    const qint64 sound = childOf(program.processId());
    const Idle before{usedBy(program.processId()), usedBy(sound)};
    QTest::qWait(static_cast<int>(std::chrono::milliseconds(span).count()));
    const Idle after{usedBy(program.processId()), usedBy(sound)};
    if (program.state() != QProcess::Running) {
        std::fputs("the program has ended\n", stderr);
        std::exit(1);
    }
    program.terminate();
    program.waitForFinished(60'000);
    return {after.program - before.program, after.sound - before.sound};
}

} // namespace

int main(int argc, char** argv)
{
    const QCoreApplication application(argc, argv);
    const Scratch scratch;
    for (const char* kind : {"XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"}) {
        qputenv(kind, QByteArray::fromStdString((scratch / "home").string()));
    }
    SoundServer server; // with its own XDG_RUNTIME_DIR
    if (!SoundServer::isInstalled() || !server.start()) {
        std::puts("no sound server: the sound process looks for one every 10 s");
    }
    std::unique_ptr<Screen> screen;
    if (Screen::isInstalled()) {
        screen = std::make_unique<Screen>(QSize(1280, 800));
        qputenv("DISPLAY", screen->display().toLatin1());
        qputenv("QT_QPA_PLATFORM", "xcb");
    } else {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    const auto full = scratch / "bench.mendbench";
    fillBench(*openOrDie(full), std::chrono::time_point_cast<Span>(std::chrono::system_clock::now()));
    const auto empty = scratch / "empty.mendbench";
    furnish(*openOrDie(empty), 0);

    constexpr auto counted = 60s;
    const Idle busy = measure(full, counted);
    const double share = (busy.program.cpuSeconds + busy.sound.cpuSeconds) / counted.count() * 100.0;
    const double woken = static_cast<double>(busy.program.wakeUps + busy.sound.wakeUps) / counted.count();
    print("60 cards, six counting seconds: of one core", share, "%", "floor 0.5 %");
    print("  of it the sound process", busy.sound.cpuSeconds / counted.count() * 100.0, "%", "");
    print("  wake-ups", woken, "a second", "floor 4");
    print("  of them the sound process", static_cast<double>(busy.sound.wakeUps) / counted.count(), "a second", "");

    constexpr auto still = 180s;
    const Idle quiet = measure(empty, still);
    const double perMinute = static_cast<double>(quiet.program.wakeUps) / still.count() * 60.0;
    print("nothing running: wake-ups of the program", perMinute, "a minute", "floor 1");
    print("  of the sound process", static_cast<double>(quiet.sound.wakeUps) / still.count() * 60.0, "a minute", "");
    print("  of one core", quiet.program.cpuSeconds / still.count() * 100.0, "%", "");
    return share <= mostShare && woken <= mostWakeUps && perMinute < 2.0 ? 0 : 1;
}
