// How quickly the bench file answers: a tap on the disk, alone and while a check or a backup runs,
// and the opening of a file of many years.
#include "core/store/backups.h"
#include "core/store/check.h"

#include "tests/store/benchmaker.h"
#include "tests/store/manyyears.h"
#include "tests/support/scratch.h"

#include <QCoreApplication>
#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <cstdio>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
using namespace std::chrono_literals;
using Steady = std::chrono::steady_clock;
using Milliseconds = std::chrono::duration<double, std::milli>;

namespace {

constexpr int taps = 200;

void print(const char* what, double figure, const char* unit, const char* floor)
{
    std::printf("%-58s %9.2f %-3s %s\n", what, figure, unit, floor);
}

double at(std::vector<double> figures, double part)
{
    std::ranges::sort(figures);
    return figures[static_cast<std::size_t>(part * static_cast<double>(figures.size() - 1))];
}

/// From the tap to the news that it is on the disk.
class TapTimer {
public:
    StoreNews news()
    {
        StoreNews news;
        news.stored = [this](std::span<const EventId>) {
            const std::lock_guard held(m_mutex);
            m_stored = true;
            m_told.notify_one();
        };
        return news;
    }
    double tap(StoreThread& thread, const bench::Event& event)
    {
        const auto start = Steady::now();
        std::unique_lock held(m_mutex);
        m_stored = false;
        held.unlock();
        thread.append({event});
        held.lock();
        m_told.wait(held, [this] { return m_stored; });
        return Milliseconds(Steady::now() - start).count();
    }

private:
    std::mutex m_mutex;
    std::condition_variable m_told;
    bool m_stored = false;
};

void printTaps(const char* what, const std::vector<double>& figures)
{
    std::string text = std::string("tap on the disk, ") + what + ": median of " + std::to_string(figures.size());
    print(text.c_str(), at(figures, 0.5), "ms", "");
    text = std::string("tap on the disk, ") + what + ": 99 % within";
    print(text.c_str(), at(figures, 0.99), "ms", "floor 100 ms");
}

} // namespace

int main(int argc, char** argv)
{
    const QCoreApplication application(argc, argv);
    const Scratch scratch;
    const auto file = scratch / "bench.mend";
    auto start = Steady::now();
    fillManyYears(*openOrDie(file), benchStart);
    print("file of 20,000 pieces and 240,000 events", static_cast<double>(std::filesystem::file_size(file)) / 1e6, "MB",
          "");

    std::vector<double> openings;
    std::vector<double> loadings;
    for (int i = 0; i < 20; ++i) {
        start = Steady::now();
        const auto store = openOrDie(file, OpenMode::ReadWrite);
        openings.push_back(Milliseconds(Steady::now() - start).count());
        const auto pieces = store->piecesInHand().value().size();
        const auto events = store->benchEvents(benchStart).value().size();
        if (pieces != piecesOnBench ||
            events < static_cast<std::size_t>(piecesOnBench) * static_cast<std::size_t>(eventsOfPiece)) {
            return 1;
        }
        loadings.push_back(Milliseconds(Steady::now() - start).count());
    }
    print("opening it: median of 20", at(openings, 0.5), "ms", "");
    print("opening it and reading the 60 pieces on the bench", at(loadings, 0.5), "ms",
          "part of 120 ms to the first paint");

    TapTimer timer;
    StoreThread thread(openOrDie(file, OpenMode::ReadWrite), timer.news());
    std::int64_t id = std::int64_t{piecesInFile} * eventsOfPiece;
    const auto tapWhile = [&](const std::function<bool()>& running) {
        std::vector<double> figures;
        while (static_cast<int>(figures.size()) < taps && running()) {
            figures.push_back(timer.tap(thread, someEvent(++id, bench::What::Done, PieceId(piecesInFile))));
        }
        return figures;
    };
    printTaps("alone", tapWhile([] { return true; }));

    std::atomic<bool> checking = true;
    std::atomic<bool> good = false;
    start = Steady::now();
    thread.start(std::make_unique<RecordCheck>([&](const CheckReport& report) {
        good = report.isGood();
        checking = false;
    }));
    printTaps("while a check runs", tapWhile([&] { return checking.load(); }));
    while (checking) {
        std::this_thread::sleep_for(1ms);
    }
    print("the check of every record, taps included", Milliseconds(Steady::now() - start).count() / 1000.0, "s",
          "floor 10 s");
    if (!good) {
        return 1;
    }

    std::atomic<bool> copying = true;
    start = Steady::now();
    thread.start(std::make_unique<BackupJob>(Backups(scratch / "backups"), benchStart,
                                             [&](const Result<Backup>& backup, const CheckReport&) {
                                                 good = backup.isOk();
                                                 copying = false;
                                             }));
    printTaps("while a backup runs", tapWhile([&] { return copying.load(); }));
    while (copying) {
        std::this_thread::sleep_for(1ms);
    }
    print("the backup, checked and synced, taps included", Milliseconds(Steady::now() - start).count() / 1000.0, "s",
          "");
    return good ? 0 : 1;
}
