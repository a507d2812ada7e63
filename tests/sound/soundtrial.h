#pragma once

#include "app/sound/player.h"
#include "tests/support/soundserver.h"

#include <QTest>
#include <chrono>
#include <gtest/gtest.h>
#include <map>
#include <optional>

namespace mend::test {

/// Plays through the real sound process into a real server, and writes down what is told.
class SoundTrial : public testing::Test {
public:
    static void SetUpTestSuite() { ownServer = std::make_unique<SoundServer>(); }
    static void TearDownTestSuite() { ownServer.reset(); }

protected:
    using Steady = std::chrono::steady_clock;
    struct Told {
        std::optional<sound::Unheard> why; ///< empty: heard, or spoken
        Steady::time_point at;
    };

    inline static std::unique_ptr<SoundServer> ownServer; ///< one for all trials: starting takes seconds
    SoundServer& server = *ownServer;
    std::unique_ptr<sound::Player> player;
    std::map<std::int64_t, Told> bursts;
    std::map<std::int64_t, Told> words;
    std::map<std::int64_t, std::chrono::microseconds> firstSamples;
    std::vector<sound::DeviceState> states;

    void makePlayer(sound::Player::Setup setup = {})
    {
        using sound::Player;
        using sound::SoundId;
        using sound::Unheard;
        setup.retry = std::chrono::milliseconds(500);
        player = std::make_unique<Player>(setup);
        QObject::connect(player.get(), &Player::heard, player.get(),
                         [this](SoundId id) { note(bursts, id, std::nullopt); });
        QObject::connect(player.get(), &Player::unheard, player.get(),
                         [this](SoundId id, Unheard why) { note(bursts, id, why); });
        QObject::connect(player.get(), &Player::spoken, player.get(),
                         [this](SoundId id) { note(words, id, std::nullopt); });
        QObject::connect(player.get(), &Player::unspoken, player.get(),
                         [this](SoundId id, Unheard why) { note(words, id, why); });
        QObject::connect(player.get(), &Player::firstSample, player.get(),
                         [this](SoundId id, std::chrono::microseconds after) { firstSamples[id.value()] = after; });
        QObject::connect(player.get(), &Player::deviceStateChanged, player.get(),
                         [this](sound::DeviceState state) { states.push_back(state); });
    }

    bool waitForState(sound::DeviceState state, int milliseconds = 5000)
    {
        return QTest::qWaitFor([&] { return player->deviceState() == state; }, milliseconds);
    }
    bool waitForFirstSample(sound::SoundId id)
    {
        return QTest::qWaitFor([&] { return firstSamples.contains(id.value()); }, 3000);
    }
    bool waitForEnd(sound::SoundId id, int milliseconds = 9000)
    {
        return QTest::qWaitFor([&] { return bursts.contains(id.value()); }, milliseconds);
    }
    bool waitForWords(sound::SoundId id, int milliseconds = 12'000)
    {
        return QTest::qWaitFor([&] { return words.contains(id.value()); }, milliseconds);
    }
    /// Plays and waits; true if it was heard.
    bool isHeard(sound::Tone tone, sound::Decibels gain = {})
    {
        const sound::SoundId id = player->play(tone, gain);
        return waitForEnd(id) && !bursts[id.value()].why;
    }
    /// Plays and waits; why it was not heard.
    std::optional<sound::Unheard> whyUnheard(sound::Tone tone)
    {
        const sound::SoundId id = player->play(tone, {});
        return waitForEnd(id) ? bursts[id.value()].why : std::nullopt;
    }

private:
    void note(std::map<std::int64_t, Told>& told, sound::SoundId id, std::optional<sound::Unheard> why)
    {
        EXPECT_TRUE(told.try_emplace(id.value(), Told{why, Steady::now()}).second) << "told twice: " << id.value();
    }
};

} // namespace mend::test
