// What is really heard: tones and words found in what a real server's sink gave out.
#include "tests/sound/listen.h"
#include "tests/sound/soundtrial.h"

#include <QFile>
#include <QStandardPaths>
#include <cmath>

using namespace mend;
using namespace mend::sound;
using namespace std::chrono_literals;
using mend::test::SoundTrial;

namespace {

/// A recording holds the signal: its rhythm to 10 ms, its pitch to 1 %.
void expectSignal(const Pcm& recording, Tone tone)
{
    SCOPED_TRACE(nameOf(tone));
    const Signal& signal = signalFor(shippedSignals(), tone);
    const auto starts = pulseStarts(signal);
    const auto pulses = ear::findPulses(recording);
    ASSERT_EQ(pulses.size(), starts.size());
    for (std::size_t i = 0; i < pulses.size(); ++i) {
        EXPECT_NEAR((pulses[i].from - pulses[0].from) * 1000.0, static_cast<double>(starts[i].count()), 10.0);
        EXPECT_NEAR((pulses[i].to - pulses[i].from) * 1000.0, static_cast<double>(signal.pulse.count()), 10.0);
        const Pcm pulse = ear::cut(recording, pulses[i].from, pulses[i].to);
        EXPECT_NEAR(ear::spectrumOf(pulse).strongest(100, 4000), signal.pitchHz, 0.01 * signal.pitchHz);
        for (const double other : {784.0, 523.0, 392.0}) {
            if (std::abs(other - signal.pitchHz) > 1 && std::abs(other - 2 * signal.pitchHz) > 1) {
                EXPECT_GT(ear::powerAt(pulse, signal.pitchHz), 20.0 * ear::powerAt(pulse, other));
            }
        }
    }
}

class HeardSound : public SoundTrial {
protected:
    void SetUp() override
    {
        ASSERT_TRUE(server.start());
        makePlayer();
        ASSERT_TRUE(waitForState(DeviceState::Ready));
    }

    /// A speech engine of the test's own: a shell script.
    QString engine(const QByteArray& script)
    {
        const QString path = folder.filePath(QStringLiteral("engine"));
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write("#!/bin/sh\n" + script + "\n");
        file.setPermissions(QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
        return path;
    }

    /// A WAVE of 600 ms at 1000 Hz, with its length left open as a pipe leaves it.
    QString toneEngine()
    {
        QByteArray wave("RIFF\xff\xff\xff\x7fWAVEfmt \x10\0\0\0\1\0\1\0\x22\x56\0\0\x44\xac\0\0\2\0\x10\0"
                        "data\xff\xff\xff\x7f",
                        44);
        for (int i = 0; i < 22050 * 6 / 10; ++i) {
            const auto sample = static_cast<std::int16_t>(std::lround(9000 * std::sin(2 * M_PI * 1000 * i / 22050.0)));
            wave.append(static_cast<char>(sample & 0xFF)).append(static_cast<char>(sample >> 8));
        }
        QFile file(folder.filePath(QStringLiteral("words.wav")));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(wave);
        return engine("exec cat " + QFile::encodeName(file.fileName()));
    }

    QTemporaryDir folder;
};

} // namespace

TEST_F(HeardSound, EveryToneIsFoundInTheRecording)
{
    for (const Tone tone : {Tone::A, Tone::B, Tone::C, Tone::PedalTaken, Tone::PedalDone}) {
        server.mark();
        EXPECT_TRUE(isHeard(tone));
        expectSignal(server.sinceMark(), tone);
    }
}

TEST_F(HeardSound, AskingForMoreGainThanFullIsFull)
{
    server.mark();
    EXPECT_TRUE(isHeard(Tone::C, {12}));
    const double full = ear::peakDbfs(server.sinceMark());
    EXPECT_NEAR(full, -9.0, 0.5);
    server.mark();
    EXPECT_TRUE(isHeard(Tone::C, {-6}));
    EXPECT_NEAR(ear::peakDbfs(server.sinceMark()), full - 6.0, 0.5);
}

TEST_F(HeardSound, ANewAlertCutsTheOldOneAndFeedbackCutsNone)
{
    const SoundId old = player->play(Tone::A, {});
    ASSERT_TRUE(waitForFirstSample(old));
    const SoundId next = player->play(Tone::B, {});
    const SoundId pedal = player->play(Tone::PedalTaken, {});
    ASSERT_TRUE(waitForEnd(next));
    ASSERT_TRUE(waitForEnd(pedal));
    EXPECT_EQ(bursts[old.value()].why, Unheard::Replaced);
    EXPECT_EQ(bursts[next.value()].why, std::nullopt);
    EXPECT_EQ(bursts[pedal.value()].why, std::nullopt);
}

TEST_F(HeardSound, StopIsSilenceAtOnce)
{
    server.mark();
    const SoundId id = player->play(Tone::A, {});
    ASSERT_TRUE(waitForFirstSample(id));
    QTest::qWait(400);
    player->stop();
    ASSERT_TRUE(waitForEnd(id, 500));
    EXPECT_EQ(bursts[id.value()].why, Unheard::Stopped);
    QTest::qWait(1500);
    const auto pulses = ear::findPulses(server.sinceMark());
    ASSERT_FALSE(pulses.empty());
    EXPECT_LT(pulses.back().to - pulses.front().from, 0.7);
}

TEST_F(HeardSound, ComesFromTheDeviceThatWasChosen)
{
    ASSERT_FALSE(server
                     .control({QStringLiteral("load-module"), QStringLiteral("module-null-sink"),
                               QStringLiteral("sink_name=shelf")})
                     .isEmpty());
    QList<OutputDevice> devices;
    QObject::connect(player.get(), &Player::devicesListed, player.get(),
                     [&devices](const QList<OutputDevice>& listed) { devices = listed; });
    player->listDevices();
    ASSERT_TRUE(QTest::qWaitFor([&] { return devices.size() == 2; }, 2000));
    player->useDevice(QStringLiteral("shelf"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return player->device() == QStringLiteral("shelf"); }, 2000));
    server.mark(QStringLiteral("shelf"));
    EXPECT_TRUE(isHeard(Tone::C));
    expectSignal(server.sinceMark(), Tone::C);

    player->useDevice(QStringLiteral("gone"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return player->device() == QStringLiteral("bench"); }, 2000));
    server.mark();
    EXPECT_TRUE(isHeard(Tone::C));
    expectSignal(server.sinceMark(), Tone::C);
}

TEST_F(HeardSound, WordsFollowTheBurstAfterAShortGap)
{
    Player::Setup setup;
    setup.speechEngine = toneEngine();
    makePlayer(setup);
    ASSERT_TRUE(waitForState(DeviceState::Ready));
    server.mark();
    const SoundId id = player->play(Tone::C, {}, QStringLiteral("Wipe. Heron bowl."));
    ASSERT_TRUE(waitForWords(id));
    EXPECT_EQ(words[id.value()].why, std::nullopt);
    const Pcm recording = server.sinceMark();
    const auto pulses = ear::findPulses(recording);
    ASSERT_EQ(pulses.size(), 3U);
    EXPECT_GE(pulses[2].from - pulses[1].to, 0.3);
    EXPECT_LE(pulses[2].from - pulses[1].to, 1.0);
    EXPECT_NEAR(pulses[2].to - pulses[2].from, 0.6, 0.01);
    EXPECT_NEAR(ear::spectrumOf(ear::cut(recording, pulses[2].from, pulses[2].to)).strongest(100, 4000), 1000, 10);
}

TEST_F(HeardSound, WordsThatJoinAListAreSaidAfterThoseOfItsBurstWithoutOneOfTheirOwn)
{
    Player::Setup setup;
    setup.speechEngine = toneEngine();
    makePlayer(setup);
    ASSERT_TRUE(waitForState(DeviceState::Ready));
    server.mark();
    const SoundId id = player->play(Tone::C, {}, QStringLiteral("Wipe. Heron bowl."));
    const SoundId joined = player->say({}, QStringLiteral("Take out. Celadon dish."));
    ASSERT_TRUE(waitForWords(joined));
    EXPECT_EQ(words[id.value()].why, std::nullopt);
    EXPECT_EQ(words[joined.value()].why, std::nullopt);
    const auto pulses = ear::findPulses(server.sinceMark());
    ASSERT_EQ(pulses.size(), 4U) << "two pulses of the burst, and twice words";
    EXPECT_GE(pulses[3].from, pulses[2].to) << "one voice at a time";

    const SoundId cut = player->play(Tone::C, {}, QStringLiteral("Wipe. Heron bowl."));
    const SoundId unsaid = player->say({}, QStringLiteral("And 4 more."));
    player->play(Tone::A, {});
    ASSERT_TRUE(waitForWords(unsaid));
    EXPECT_EQ(words[cut.value()].why, Unheard::Replaced);
    EXPECT_EQ(words[unsaid.value()].why, Unheard::Replaced) << "a new burst says what there is to say";
}

TEST_F(HeardSound, AHangingSpeechEngineCostsOnlyTheWords)
{
    Player::Setup setup;
    setup.speechEngine = engine("sleep 30");
    makePlayer(setup);
    ASSERT_TRUE(waitForState(DeviceState::Ready));
    const auto began = Steady::now();
    const SoundId id = player->play(Tone::C, {}, QStringLiteral("Wipe."));
    ASSERT_TRUE(waitForEnd(id, 3000));
    EXPECT_EQ(bursts[id.value()].why, std::nullopt);
    ASSERT_TRUE(waitForWords(id));
    EXPECT_EQ(words[id.value()].why, Unheard::LateEngine);
    EXPECT_NEAR(std::chrono::duration<double>(words[id.value()].at - began).count(), 5.0, 0.5);
}

TEST_F(HeardSound, AMissingOrBrokenSpeechEngineCostsOnlyTheWords)
{
    for (const QString& program : {QStringLiteral("/nowhere/engine"), engine("echo no wave; exit 1")}) {
        Player::Setup setup;
        setup.speechEngine = program;
        makePlayer(setup);
        words.clear();
        bursts.clear();
        const SoundId id = player->play(Tone::PedalTaken, {}, QStringLiteral("Wipe."));
        ASSERT_TRUE(waitForEnd(id));
        EXPECT_EQ(bursts[id.value()].why, std::nullopt);
        ASSERT_TRUE(waitForWords(id));
        EXPECT_EQ(words[id.value()].why, Unheard::NoEngine);
    }
}

TEST_F(HeardSound, TheInstalledEngineSpeaks)
{
    if (QStandardPaths::findExecutable(QStringLiteral("espeak-ng")).isEmpty()) {
        GTEST_SKIP() << "espeak-ng is not installed: speech was NOT tried";
    }
    server.mark();
    const SoundId id = player->play(Tone::PedalTaken, {}, QStringLiteral("Wipe. Six minutes."));
    ASSERT_TRUE(waitForWords(id));
    EXPECT_EQ(words[id.value()].why, std::nullopt);
    const Pcm recording = server.sinceMark();
    const auto sounds = ear::findPulses(recording);
    ASSERT_GT(sounds.size(), 1U);
    EXPECT_GT(ear::rmsDbfs(ear::cut(recording, sounds[1].from, sounds.back().to)), -30.0);
}
