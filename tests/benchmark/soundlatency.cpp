// From the call that sounds an alert to its first sample in the sound server's hands, and to its end.
#include "app/sound/player.h"
#include "tests/support/soundserver.h"

#include <QCoreApplication>
#include <QTest>
#include <algorithm>
#include <cstdio>
#include <vector>

namespace {

using namespace mend::sound;

constexpr int plays = 400;
/// Due to first sample may take 500 ms; noticing that it is due is the service's share.
constexpr std::chrono::microseconds floorP99{500'000};

std::chrono::microseconds percentile(std::vector<std::chrono::microseconds> sorted, std::size_t percent)
{
    std::sort(sorted.begin(), sorted.end());
    return sorted.at(std::min(sorted.size() - 1, sorted.size() * percent / 100));
}

/// One play of each in turn, the next as soon as the first sample of the last is out.
std::vector<std::chrono::microseconds> measure(Player& player)
{
    std::vector<std::chrono::microseconds> figures;
    QObject::connect(&player, &Player::firstSample, &player,
                     [&figures](SoundId, std::chrono::microseconds after) { figures.push_back(after); });
    for (std::size_t i = 0; i < plays; ++i) {
        player.play(i % 2 == 0 ? Tone::A : Tone::B, {-6});
        if (!QTest::qWaitFor([&] { return figures.size() == i + 1; }, 3000)) {
            break;
        }
        QTest::qWait(5);
    }
    return figures;
}

} // namespace

int main(int argc, char** argv)
{
    QCoreApplication app(argc, argv);
    if (!mend::test::SoundServer::isInstalled()) {
        std::puts("no sound server is installed: nothing measured");
        return 1;
    }
    mend::test::SoundServer server;
    Player player({});
    if (!server.start() || !QTest::qWaitFor(
                               [&] {
                                   player.probe();
                                   return player.deviceState() == DeviceState::Ready;
                               },
                               5000)) {
        std::puts("the sound server did not come");
        return 1;
    }
    const auto figures = measure(player);
    if (figures.size() != plays) {
        std::printf("only %zu of %d were played\n", figures.size(), plays);
        return 1;
    }
    const auto p99 = percentile(figures, 99);
    std::printf(
        "call to first sample, %d plays: median %.1f ms, p99 %.1f ms, most %.1f ms (floor: p99 at most %.0f ms)\n",
        plays, static_cast<double>(percentile(figures, 50).count()) / 1000.0, static_cast<double>(p99.count()) / 1000.0,
        static_cast<double>(percentile(figures, 100).count()) / 1000.0, static_cast<double>(floorP99.count()) / 1000.0);
    return p99 <= floorP99 ? 0 : 1;
}
