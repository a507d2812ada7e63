// A newcomer's first minutes with the program, in a real window: the alert is heard, a tap and its undo are
// done by real clicks, a power cut and a lost sound server are met.
#include "tests/sound/heardtone.h"
#include "tests/support/soundserver.h"
#include "tests/trial/program.h"
#include "tests/trial/screen.h"

#include <QDateTime>
#include <QElapsedTimer>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTest>
#include <algorithm>
#include <gtest/gtest.h>

namespace mend::test {

namespace {

/// As long as the demo says, and what a busy machine may add.
constexpr int firstAlertMs = 60'000;
constexpr int slackMs = 15'000;
/// Longer than a spot that has just changed waits before it takes a tap.
constexpr int handMs = 700;
/// The most urgent alert repeats every 8 s after its burst; with hands on the piece it must not.
constexpr int quietMs = 13'000;

const QString heron = QStringLiteral("Heron bowl");
const QString noSound = QStringLiteral("No sound on this device");

class Trial : public testing::Test {
protected:
    static void SetUpTestSuite() { ownServer = std::make_unique<SoundServer>(); }
    static void TearDownTestSuite() { ownServer.reset(); }

    bool waitForAlertSound(int milliseconds)
    {
        QElapsedTimer waited;
        for (waited.start(); waited.elapsed() < milliseconds;) {
            QTest::qWait(1000);
            const sound::Pcm recording = ownServer->sinceMark();
            if (ear::holds(recording, sound::Tone::A) || ear::holds(recording, sound::Tone::B)) {
                return true;
            }
        }
        return false;
    }

    /// A real click in the middle of the button whose name begins with these words.
    bool tap(const QString& words)
    {
        if (!program.waitForSpot(words, 10'000)) {
            return false;
        }
        QTest::qWait(handMs);
        const auto spot = program.spot(words); // it may have moved meanwhile
        return spot && screen.click(spot->rect.center());
    }

    QJsonObject board(const QDateTime& at) const
    {
        return QJsonDocument::fromJson(program.desk({QStringLiteral("board"), program.file(), QStringLiteral("--json"),
                                                     QStringLiteral("--at"), at.toUTC().toString(Qt::ISODateWithMs)}))
            .object();
    }
    /// What the file says of the bowl: its standing and its act.
    QString bowlInFile() const
    {
        const QJsonArray cards = board(QDateTime::currentDateTimeUtc())[QStringLiteral("cards")].toArray();
        for (const auto& each : cards) {
            const QJsonObject card = each.toObject();
            if (card[QStringLiteral("piece")].toString() == heron) {
                return card[QStringLiteral("standing")].toString() + QLatin1String(": ") +
                       card[QStringLiteral("act")].toString();
            }
        }
        return {};
    }
    bool waitForFile(const std::function<bool(const QString&)>& holdsFor)
    {
        return QTest::qWaitFor([&] { return holdsFor(bowlInFile()); }, 10'000);
    }

    inline static std::unique_ptr<SoundServer> ownServer;
    Screen screen{{1280, 800}};
    Program program{screen.display()};
};

} // namespace

TEST_F(Trial, TheFirstAlertIsHeardAndWhatIsTappedOutlivesAPowerCut)
{
    ASSERT_FALSE(screen.display().isEmpty());
    ASSERT_TRUE(ownServer->start());
    ownServer->mark();
    QElapsedTimer sinceStart;
    sinceStart.start();
    program.start(
        {QStringLiteral("--demo"), QStringLiteral("--fresh"), QStringLiteral("--size"), QStringLiteral("1280x800")});
    ASSERT_TRUE(program.waitForSpot(QStringLiteral("Wiped back, Heron bowl"), 20'000)) << qPrintable(program.all());
    EXPECT_FALSE(program.spot(QStringLiteral("Hands on it, Heron bowl")));
    ASSERT_FALSE(program.file().isEmpty());

    ASSERT_TRUE(waitForAlertSound(firstAlertMs + slackMs)) << qPrintable(program.all());
    EXPECT_GE(sinceStart.elapsed(), firstAlertMs - 1000) << "never early";
    EXPECT_TRUE(program.waitForSpot(QStringLiteral("Hands on it, Heron bowl"), 2000)) << qPrintable(program.all());

    // The sound server dies under it, is missed, and comes back: what calls is heard again.
    ownServer->crash();
    EXPECT_TRUE(program.waitForSpot(noSound, 5000, false)) << qPrintable(program.all());
    ASSERT_TRUE(ownServer->start());
    ownServer->mark();
    EXPECT_TRUE(program.waitUntilGone(noSound, 20'000, false)) << qPrintable(program.all());
    EXPECT_TRUE(waitForAlertSound(45'000)) << qPrintable(program.all());

    // One hand, five taps.
    ASSERT_TRUE(tap(QStringLiteral("Hands on it, Heron bowl"))) << qPrintable(program.all());
    EXPECT_TRUE(program.waitForSpot(QStringLiteral("Undo, Heron bowl"), 2000)) << qPrintable(program.all());
    QTest::qWait(1000); // a burst that had begun ends
    ownServer->mark();
    EXPECT_FALSE(waitForAlertSound(quietMs)) << "it calls although hands are on it";
    const QString before = bowlInFile();
    ASSERT_TRUE(tap(QStringLiteral("Wiped back, Heron bowl"))) << qPrintable(program.all());
    EXPECT_TRUE(waitForFile([&](const QString& now) { return now != before; }));
    const QString wiped = bowlInFile();
    ASSERT_TRUE(tap(QStringLiteral("Undo"))) << qPrintable(program.all());
    EXPECT_TRUE(waitForFile([&](const QString& now) { return now == before; })) << qPrintable(bowlInFile());
    ASSERT_TRUE(tap(QStringLiteral("Wiped back, Heron bowl"))) << qPrintable(program.all());
    EXPECT_TRUE(waitForFile([&](const QString& now) { return now == wiped; })) << qPrintable(bowlInFile());

    const QDateTime told = QDateTime::currentDateTimeUtc();
    const QJsonObject asTold = board(told);
    ASSERT_FALSE(asTold[QStringLiteral("cards")].toArray().isEmpty());
    program.kill();
    program.start({QStringLiteral("--demo"), QStringLiteral("--size"), QStringLiteral("1280x800")});
    ASSERT_TRUE(program.waitForSpot(QStringLiteral("Dust the powder on"), 20'000, false)) << qPrintable(program.all());
    EXPECT_FALSE(program.spot(QStringLiteral("Wiped back, Heron bowl"))) << qPrintable(program.all());
    EXPECT_FALSE(program.spot(QStringLiteral("Hands on it, Heron bowl"))) << qPrintable(program.all());
    EXPECT_EQ(board(told), asTold);
    EXPECT_FALSE(program.desk({QStringLiteral("check"), program.file()}).isEmpty()) << "the file is not whole";
}

} // namespace mend::test
