// What the Bench costs while nobody touches it: 60 cards counting seconds, nothing sounding or
// flashing. The floor of it is at most 0.5 % of one core.
#include "app/shell/mainwindow.h"
#include "tests/app/samples.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QTimer>
#include <cstdio>
#include <sys/resource.h>

namespace {

constexpr int cardCount = 60;
constexpr int idleSeconds = 20;
constexpr double mostShare = 0.5; // per cent of one core

double cpuSeconds()
{
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    const auto inSeconds = [](const timeval& time) { return double(time.tv_sec) + double(time.tv_usec) / 1e6; };
    return inSeconds(used.ru_utime) + inSeconds(used.ru_stime);
}

long wakeUps()
{
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    return used.ru_nvcsw;
}

} // namespace

int main(int argc, char** argv)
{
    using namespace mend;
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    QApplication app(argc, argv);
    parts::TapGate gate;
    app::MainWindow window(gate);
    window.resize(1280, 800);
    window.setLookSettings({parts::Theme::Light, 1.0, false, false, 96.0});
    window.bench().setManner(app::samples::manner());
    app::Extras extras = app::samples::richExtras();
    extras.flashing.clear();
    QElapsedTimer building;
    building.start();
    window.setBoard(app::samples::crowdedBoard(cardCount), extras);
    window.show();
    app.processEvents();
    std::printf("first paint of %d cards: %lld ms\n", cardCount, static_cast<long long>(building.elapsed()));

    int ticked = 0;
    QTimer tick;
    tick.setTimerType(Qt::PreciseTimer);
    QObject::connect(&tick, &QTimer::timeout, [&] {
        window.setNow(app::samples::now() + std::chrono::seconds(++ticked));
        if (ticked == idleSeconds) {
            app.quit();
        }
    });
    tick.start(1000);
    const double before = cpuSeconds();
    const long wokenBefore = wakeUps();
    app.exec();
    const double share = (cpuSeconds() - before) / idleSeconds * 100.0;
    std::printf("%d cards counting: %.2f %% of one core (floor: at most %.1f %%), %.1f wake-ups a second (at most 4)\n",
                cardCount, share, mostShare, double(wakeUps() - wokenBefore) / idleSeconds);
    return share <= mostShare ? 0 : 1;
}
