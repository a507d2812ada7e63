// From exec to a painted Bench with 60 pieces on it and 20,000 in the file, against an empty Qt main
// window that is measured in turn with it, so that both meet the same machine.
#include "tests/store/manyyears.h"
#include "tests/support/scratch.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QMainWindow>
#include <QProcess>
#include <QTimer>
#include <algorithm>
#include <cstdio>
#include <sys/resource.h>

using namespace mend;
using namespace mend::test;

namespace {

constexpr int runs = 15;
constexpr double mostAbove = 120; // milliseconds

/// The empty window: says when it is painted, as the program does.
class EmptyWindow : public QMainWindow {
protected:
    void paintEvent(QPaintEvent* event) override
    {
        QMainWindow::paintEvent(event);
        QTimer::singleShot(0, this, [] {
            std::puts("painted");
            std::fflush(stdout);
            QCoreApplication::quit();
        });
    }
};

int showEmptyWindow(int argc, char** argv)
{
    const QApplication application(argc, argv);
    EmptyWindow window;
    window.resize(1280, 800);
    window.show();
    return QApplication::exec();
}

/// Milliseconds from exec to the line "painted", below zero where it did not come; and what the processor worked
/// for all of it, ending included, which tells more on a machine that is busy with other things.
struct Took {
    double wall = -1;
    double processor = 0;
};

double processorOfChildren()
{
    rusage used{};
    getrusage(RUSAGE_CHILDREN, &used);
    const auto inMs = [](const timeval& time) { return double(time.tv_sec) * 1e3 + double(time.tv_usec) / 1e3; };
    return inMs(used.ru_utime) + inMs(used.ru_stime);
}

Took timeToPaint(const QString& program, const QStringList& arguments)
{
    const double before = processorOfChildren();
    QProcess process;
    process.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    QElapsedTimer since;
    since.start();
    process.start(program, arguments);
    QByteArray said;
    while (!said.contains("painted") && process.waitForReadyRead(20'000)) {
        said += process.readAllStandardOutput();
    }
    const double took = static_cast<double>(since.nsecsElapsed()) / 1e6;
    process.waitForFinished(20'000);
    return {said.contains("painted") ? took : -1, processorOfChildren() - before};
}

/// How many cards it prints: what is measured must be what was meant.
qsizetype cardsOf(const QString& file)
{
    QProcess process;
    process.start(QStringLiteral(MEND_PROGRAM), {QStringLiteral("--print"), file});
    process.waitForFinished(20'000);
    return process.readAllStandardOutput().count("Heron bowl ");
}

double median(std::vector<double> figures)
{
    std::ranges::sort(figures);
    return figures[figures.size() / 2];
}

} // namespace

int main(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    if (argc > 1 && std::string_view(argv[1]) == "--empty") {
        return showEmptyWindow(argc, argv);
    }
    const QCoreApplication application(argc, argv);
    const Scratch scratch;
    for (const char* kind : {"XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"}) {
        qputenv(kind, QByteArray::fromStdString((scratch / "home").string()));
    }
    qputenv("XDG_RUNTIME_DIR", QByteArray::fromStdString(scratch.folder().string())); // no other program is knocked at
    const auto file = scratch / "bench.mendbench";
    const Instant now = std::chrono::time_point_cast<Span>(std::chrono::system_clock::now());
    fillManyYears(*openOrDie(file), now - std::chrono::minutes(10));

    if (cardsOf(QString::fromStdString(file.string())) < piecesOnBench) {
        std::fputs("the pieces are not on the Bench\n", stderr);
        return 1;
    }

    std::vector<double> empty;
    std::vector<double> bench;
    std::vector<double> worked;
    for (int run = 0; run <= runs; ++run) {
        const Took ofEmpty = timeToPaint(QCoreApplication::applicationFilePath(), {QStringLiteral("--empty")});
        const Took ofBench = timeToPaint(QStringLiteral(MEND_PROGRAM),
                                         {QStringLiteral("--measure-start"), QStringLiteral("--size"),
                                          QStringLiteral("1280x800"), QString::fromStdString(file.string())});
        if (ofEmpty.wall < 0 || ofBench.wall < 0) {
            std::fputs(ofEmpty.wall < 0 ? "the empty window was never painted\n" : "the Bench was never painted\n",
                       stderr);
            return 1;
        }
        if (run > 0) { // the first one fetches the files from the disk
            empty.push_back(ofEmpty.wall);
            bench.push_back(ofBench.wall);
            worked.push_back(ofBench.processor - ofEmpty.processor);
        }
    }
    const double above = median(bench) - median(empty);
    std::printf("an empty main window, exec to painted: median of %d %18.1f ms\n", runs, median(empty));
    std::printf("the Bench, 60 of 20,000 pieces on it:  median of %d %18.1f ms\n", runs, median(bench));
    std::printf("above the empty window %45.1f ms (floor: at most %.0f ms)\n", above, mostAbove);
    std::printf("  of it processor time, ending included %30.1f ms\n", median(worked));
    return above <= mostAbove ? 0 : 1;
}
