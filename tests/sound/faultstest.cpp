// What becomes of a sound where the server, the sink or the sound process fails.
#include "tests/sound/listen.h"
#include "tests/sound/soundtrial.h"

#include <QFile>
#include <csignal>
#include <gmock/gmock.h>

using namespace mend;
using namespace mend::sound;
using namespace std::chrono_literals;
using mend::test::SoundTrial;

namespace {

class SoundFault : public SoundTrial {
protected:
    void begin()
    {
        ASSERT_TRUE(server.start());
        makePlayer();
        ASSERT_TRUE(waitForState(DeviceState::Ready));
    }
    /// Back in order: the state says so and a recording proves it.
    void expectSoundAgain()
    {
        ASSERT_TRUE(waitForState(DeviceState::Ready));
        server.mark();
        EXPECT_TRUE(isHeard(Tone::C));
        EXPECT_EQ(ear::findPulses(server.sinceMark()).size(), 2U);
    }
    /// An A burst under way.
    SoundId midBurst()
    {
        const SoundId id = player->play(Tone::A, {});
        EXPECT_TRUE(waitForFirstSample(id));
        QTest::qWait(500);
        return id;
    }
    void control(const QString& command) { EXPECT_FALSE(server.control(command.split(QLatin1Char(' '))).isEmpty()); }
};

/// The sound processes this test has started.
std::vector<pid_t> soundProcesses()
{
    std::vector<pid_t> found;
    QFile children(QStringLiteral("/proc/self/task/%1/children").arg(QCoreApplication::applicationPid()));
    static_cast<void>(children.open(QIODevice::ReadOnly));
    for (const QByteArray& pid : children.readAll().split(' ')) {
        QFile name(QStringLiteral("/proc/%1/comm").arg(QString::fromLatin1(pid)));
        if (!pid.isEmpty() && name.open(QIODevice::ReadOnly) && name.readAll().trimmed() == "mendbench-sound") {
            found.push_back(pid.toInt());
        }
    }
    return found;
}

} // namespace

TEST_F(SoundFault, NoServerAtTheStartIsToldWithinTwoSecondsAndOneThatComesLateIsFound)
{
    server.crash();
    makePlayer();
    const SoundId id = player->play(Tone::A, {});
    ASSERT_TRUE(waitForState(DeviceState::NoDevice, 2000));
    ASSERT_TRUE(waitForEnd(id, 2000));
    EXPECT_EQ(bursts[id.value()].why, Unheard::NoServer);
    ASSERT_TRUE(server.start());
    expectSoundAgain();
}

TEST_F(SoundFault, AServerThatDiesInMidBurstIsToldAndItsSuccessorIsUsed)
{
    begin();
    const SoundId id = midBurst();
    server.crash();
    ASSERT_TRUE(waitForEnd(id, 2000));
    EXPECT_EQ(bursts[id.value()].why, Unheard::Lost);
    ASSERT_TRUE(waitForState(DeviceState::NoDevice, 2000));
    EXPECT_EQ(whyUnheard(Tone::B), Unheard::NoServer);
    ASSERT_TRUE(server.start());
    expectSoundAgain();
}

TEST_F(SoundFault, AServerThatDiesWhileAllIsSilentIsNoticed)
{
    begin();
    server.crash();
    EXPECT_TRUE(waitForState(DeviceState::NoDevice, 2000));
}

TEST_F(SoundFault, AFrozenServerIsToldWithinTwoSecondsOfTheCall)
{
    begin();
    server.freeze();
    const SoundId id = player->play(Tone::A, {});
    EXPECT_TRUE(waitForEnd(id, 2000));
    EXPECT_NE(bursts[id.value()].why, std::nullopt);
    EXPECT_TRUE(waitForState(DeviceState::NoDevice, 500));
    server.thaw();
    expectSoundAgain();
}

TEST_F(SoundFault, AServerThatFreezesInMidBurstIsToldWithinTwoSeconds)
{
    begin();
    const SoundId id = midBurst();
    server.freeze();
    EXPECT_TRUE(waitForEnd(id, 2000));
    EXPECT_EQ(bursts[id.value()].why, Unheard::Stalled);
    EXPECT_TRUE(waitForState(DeviceState::NoDevice, 500));
    server.thaw();
    expectSoundAgain();
}

TEST_F(SoundFault, AMutedOrTurnedDownSinkIsKnown)
{
    begin();
    control(QStringLiteral("set-sink-mute bench 1"));
    ASSERT_TRUE(waitForState(DeviceState::Muted, 2000));
    EXPECT_EQ(whyUnheard(Tone::PedalTaken), Unheard::Muted);
    control(QStringLiteral("set-sink-mute bench 0"));
    ASSERT_TRUE(waitForState(DeviceState::Ready, 2000));
    control(QStringLiteral("set-sink-volume bench 0%"));
    ASSERT_TRUE(waitForState(DeviceState::Muted, 2000));
    EXPECT_EQ(whyUnheard(Tone::PedalTaken), Unheard::Muted);
    control(QStringLiteral("set-sink-volume bench 100%"));
    ASSERT_TRUE(waitForState(DeviceState::Ready, 2000));
    EXPECT_TRUE(isHeard(Tone::PedalTaken));
}

TEST_F(SoundFault, ASinkMutedInMidBurstIsKnown)
{
    begin();
    const SoundId id = midBurst();
    control(QStringLiteral("set-sink-mute bench 1"));
    ASSERT_TRUE(waitForEnd(id));
    EXPECT_EQ(bursts[id.value()].why, Unheard::Muted);
    control(QStringLiteral("set-sink-mute bench 0"));
}

TEST_F(SoundFault, ASinkThatTakesNothingIsToldWithinTwoSeconds)
{
    begin();
    control(QStringLiteral("suspend-sink bench 1"));
    const SoundId id = player->play(Tone::B, {});
    ASSERT_TRUE(waitForEnd(id, 2000));
    EXPECT_EQ(bursts[id.value()].why, Unheard::Stalled);
    control(QStringLiteral("suspend-sink bench 0"));
    expectSoundAgain();
}

TEST_F(SoundFault, AnUnpluggedDeviceIsToldAndOneThatComesIsUsed)
{
    begin();
    const SoundId id = midBurst();
    control(QStringLiteral("unload-module module-null-sink"));
    ASSERT_TRUE(waitForEnd(id, 2000));
    EXPECT_EQ(bursts[id.value()].why, Unheard::Lost);
    ASSERT_TRUE(waitForState(DeviceState::NoDevice, 2000));
    EXPECT_EQ(whyUnheard(Tone::B), Unheard::NoDevice);
    control(QStringLiteral("load-module module-null-sink sink_name=bench rate=44100"));
    expectSoundAgain();
}

TEST_F(SoundFault, TheServersOwnDummyIsNoDevice)
{
    begin();
    control(QStringLiteral("unload-module module-null-sink"));
    control(QStringLiteral("load-module module-null-sink sink_name=auto_null"));
    ASSERT_TRUE(waitForState(DeviceState::NoDevice, 2000));
    EXPECT_EQ(whyUnheard(Tone::B), Unheard::NoDevice);
    server.crash();
}

TEST_F(SoundFault, ASoundProcessThatCrashesIsReplaced)
{
    begin();
    const SoundId id = midBurst();
    ASSERT_EQ(soundProcesses().size(), 1U);
    ::kill(soundProcesses().front(), SIGKILL);
    ASSERT_TRUE(waitForEnd(id, 2000));
    EXPECT_EQ(bursts[id.value()].why, Unheard::Crashed);
    EXPECT_THAT(states, testing::Contains(DeviceState::NoDevice));
    expectSoundAgain();
}

TEST_F(SoundFault, ASoundProcessThatHangsIsReplaced)
{
    begin();
    ASSERT_EQ(soundProcesses().size(), 1U);
    ::kill(soundProcesses().front(), SIGSTOP);
    const SoundId id = player->play(Tone::B, {});
    ASSERT_TRUE(waitForEnd(id, 2500));
    EXPECT_EQ(bursts[id.value()].why, Unheard::Crashed);
    expectSoundAgain();
}

TEST_F(SoundFault, NoSoundProcessAtAllIsNoDevice)
{
    for (const QString& program :
         {QString(), QStringLiteral("/nowhere/mendbench-sound"), QStringLiteral("/bin/false")}) {
        Player::Setup setup;
        setup.program = program;
        makePlayer(setup);
        bursts.clear();
        EXPECT_EQ(whyUnheard(Tone::A), Unheard::Crashed) << program.toStdString();
        EXPECT_EQ(player->deviceState(), DeviceState::NoDevice);
        EXPECT_EQ(whyUnheard(Tone::A), Unheard::Crashed) << program.toStdString();
    }
}

TEST_F(SoundFault, TheSoundProcessEndsWithItsParentEvenInMidBurst)
{
    ASSERT_TRUE(server.start());
    QProcess process;
    process.start(Player::findProgram(), QStringList());
    process.write("play 1 A 0 Wipe.\n");
    ASSERT_TRUE(QTest::qWaitFor([&] { return process.peek(4096).contains("first-sample 1 "); }, 3000));
    process.closeWriteChannel();
    EXPECT_TRUE(process.waitForFinished(1000));
    EXPECT_EQ(process.exitCode(), 0);
}
