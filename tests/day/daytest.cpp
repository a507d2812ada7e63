// A whole day at the bench by the script in tests/data/day.txt: eight pieces over all five procedures, every tap
// a real click in a real window, with a power cut, a sound server that dies and an afternoon that grows warm.
#include "tests/day/costly.h"
#include "tests/day/hand.h"
#include "tests/day/record.h"
#include "tests/day/script.h"
#include "tests/sound/heardtone.h"
#include "tests/support/soundserver.h"

#include <QTest>
#include <algorithm>
#include <gtest/gtest.h>
#include <set>

namespace mend::test {

void PrintTo(const Recorded& fact, std::ostream* out)
{
    *out << qPrintable(QStringList({fact.where, fact.what, fact.happened}).join(QLatin1Char(' ')));
}

namespace {

using std::chrono::seconds;

/// How late a call may be on the clock of the day, which goes in hops of that length.
constexpr Span hop = seconds(5);
/// A call that joins one which sounds already is heard with its next burst: the most urgent repeats every 8 s.
constexpr Span nextBurst = seconds(8) + hop;
const QString noSound = QStringLiteral("No sound on this device");

QString stamp(Instant at) { return QString::fromStdString(toRfc3339(at)); }

/// "mix filler @13:02:00" happened then; what has no time of its own happened when it was told.
Recorded expected(const Line& line, const QString& item)
{
    const QStringList parts = item.split(QStringLiteral(" @"));
    const QString told = stamp(line.at);
    Recorded fact;
    fact.where = line.isOfBench() ? QString() : line.where;
    fact.what = parts[0];
    fact.recorded = told;
    fact.happened = parts.size() == 1 ? told : told.left(11) + parts[1] + told.mid(19);
    return fact;
}

bool isAsScripted(const Recorded& fact, const Recorded& wanted)
{
    return fact.what == wanted.what && fact.happened == wanted.happened && fact.recorded == wanted.recorded &&
           (fact.where.isEmpty() || wanted.where.isEmpty() || fact.where == wanted.where);
}

class Day : public testing::Test {
protected:
    static void SetUpTestSuite() { ownServer = std::make_unique<SoundServer>(); }
    static void TearDownTestSuite() { ownServer.reset(); }

    bool begin()
    {
        if (screen.display().isEmpty() || !ownServer->start() || !script.faults.isEmpty() || script.lines.empty()) {
            return false;
        }
        now = script.begins;
        open({QStringLiteral("--demo"), QStringLiteral("--fresh")});
        if (!program.waitForKey(QStringLiteral("piece/"), 30'000)) {
            return false;
        }
        file = program.file();
        before = lastSeen = lastEvent(file);
        return before > 0;
    }

    void open(const QStringList& arguments)
    {
        qputenv("MEND_DAY_BEGINS", stamp(now).toLatin1());
        program.start(QStringList{QStringLiteral("--size"), QStringLiteral("1920x1200")} + arguments);
    }

    /// Lets the clock run to that line; in small steps where only the screen can say what calls.
    bool passTo(Instant then)
    {
        while (now < then) {
            const Instant next = hasSound ? then : std::min(then, now + hop);
            if (!hand.passUntil(now, next)) {
                return false;
            }
            now = next;
            if (!hasSound) {
                for (const QString& piece : hand.calling()) {
                    seenCalling.insert({piece, now});
                }
            }
        }
        return true;
    }

    bool follow(const Line& line)
    {
        if (line.kind == Line::Kind::Heard) {
            ownServer->mark();
        }
        if (!passTo(line.at)) {
            return false;
        }
        switch (line.kind) {
        case Line::Kind::Taps:
            return tapAll(line) && isRecorded(line);
        case Line::Kind::Reading:
            return enter(line) && isRecorded(line);
        case Line::Kind::Heard: {
            const sound::Pcm recording = ownServer->sinceMark();
            return ear::holds(recording, sound::Tone::A) || ear::holds(recording, sound::Tone::B);
        }
        case Line::Kind::Seen:
            return true; // judged in the end
        case Line::Kind::PowerCut:
            program.kill();
            now += line.lasts;
            open({file});
            return program.waitForKey(QStringLiteral("rail/"), 20'000).has_value();
        case Line::Kind::SoundDies:
            ownServer->crash();
            hasSound = false;
            return program.waitForSpot(noSound, 10'000, false).has_value();
        case Line::Kind::SoundComesBack:
            hasSound = true;
            return ownServer->start() && program.waitUntilGone(noSound, 30'000, false);
        }
        return false;
    }

    bool tapAll(const Line& line)
    {
        const QString first =
            line.isOfBench() ? line.taps.front() : QStringLiteral("%1, %2").arg(line.taps.front(), line.where);
        return hand.tap(first) && std::all_of(line.taps.begin() + 1, line.taps.end(),
                                              [this](const QString& words) { return hand.tap(words); });
    }

    /// A reading by the digits on the screen: the temperature, and the humidity where the place is asked for it.
    bool enter(const Line& line)
    {
        const auto places = program.spots();
        const auto place = std::ranges::find_if(places, [&](const Spot& spot) {
            return spot.key.startsWith(QLatin1String("place/")) && spot.name.contains(line.where);
        });
        bool done = place != places.end() && hand.tapKey(place->key);
        for (const QString& figure : line.taps) {
            for (const QChar digit : figure) {
                done = done && hand.tapKey(QStringLiteral("pad/%1").arg(digit));
            }
            done = done && hand.tapKey(QStringLiteral("reading/keep"));
        }
        return done;
    }

    /// Whether exactly what the line says has reached the file, and when it says.
    bool isRecorded(const Line& line)
    {
        std::vector<Recorded> facts;
        static_cast<void>(QTest::qWaitFor(
            [&] {
                facts = recordSince(file, lastSeen);
                return static_cast<qsizetype>(facts.size()) >= line.record.size();
            },
            5000));
        bool good = static_cast<qsizetype>(facts.size()) == line.record.size();
        for (std::size_t at = 0; good && at < facts.size(); ++at) {
            good = isAsScripted(facts[at], expected(line, line.record[static_cast<qsizetype>(at)]));
        }
        for (const Recorded& fact : facts) {
            lastSeen = std::max(lastSeen, fact.id);
        }
        EXPECT_TRUE(good) << "the file says: " << testing::PrintToString(facts);
        return good;
    }

    std::vector<Recorded> wholeRecord() const
    {
        std::vector<Recorded> all;
        for (const Line& line : script.lines) {
            for (const QString& item : line.record) {
                all.push_back(expected(line, item));
            }
        }
        return all;
    }

    /// The line that says so; calls are known by their window and come in the hop of the script.
    std::optional<Line> scripted(const Recorded& call) const
    {
        const Instant at = fromRfc3339(call.happened.toStdString()).value_or(Instant{});
        for (const Line& line : script.lines) {
            const bool isCall = line.kind == Line::Kind::Heard || line.kind == Line::Kind::Seen;
            if (isCall && line.where == call.where && line.window == call.what && line.at - hop < at &&
                at < line.at + hop) {
                return line;
            }
        }
        return std::nullopt;
    }

    /// Whether somebody could hear that call, or see it where no sound server lived, before that instant.
    bool reachedSomebody(const Recorded& call, Line::Kind how, Instant deadline) const
    {
        const Instant at = fromRfc3339(call.happened.toStdString()).value_or(Instant{});
        if (how == Line::Kind::Heard) {
            return std::ranges::any_of(hand.heard(), [&](Instant heard) {
                return at <= heard && heard <= at + nextBurst && heard < deadline;
            });
        }
        return std::ranges::any_of(seenCalling, [&](const auto& seen) {
            return seen.first == call.where && seen.second >= at && seen.second <= at + hop && seen.second < deadline;
        });
    }

    inline static std::unique_ptr<SoundServer> ownServer;
    Screen screen{{1920, 1200}};
    Program program{screen.display()};
    Hand hand{screen, program};
    Script script = readScript(QStringLiteral("tests/data/day.txt"));
    Instant now;
    QString file;
    qint64 before = 0;
    qint64 lastSeen = 0;
    bool hasSound = true;
    std::set<std::pair<QString, Instant>> seenCalling;
};

} // namespace

TEST_F(Day, IsRecordedAsItWasScriptedAndNoClosingGoesUnheard)
{
    ASSERT_TRUE(begin()) << qPrintable(script.faults.join(QLatin1Char('\n'))) << qPrintable(program.all());
    for (const Line& line : script.lines) {
        ASSERT_TRUE(follow(line)) << qPrintable(line.text) << "\nin the window:\n" << qPrintable(program.all());
    }
    ASSERT_TRUE(passTo(now + std::chrono::minutes(1)));
    program.askToEnd();
    int code = -1;
    EXPECT_TRUE(program.waitUntilEnded(60'000, &code));
    EXPECT_EQ(code, 0);
    EXPECT_GE(hand.clicks(), 120);
    EXPECT_LE(hand.refused(), 5) << "a button that stands still takes the first tap";
    EXPECT_FALSE(program.desk({QStringLiteral("check"), file}).isEmpty()) << "the file is not whole";

    // The record is the script: nothing is missing, nothing is there twice, nothing came by itself.
    const std::vector<Recorded> record = recordSince(file, before);
    const std::vector<Recorded> wanted = wholeRecord();
    ASSERT_EQ(record.size(), wanted.size());
    for (std::size_t at = 0; at < record.size(); ++at) {
        EXPECT_TRUE(isAsScripted(record[at], wanted[at]))
            << testing::PrintToString(record[at]) << " is not " << testing::PrintToString(wanted[at]);
    }

    // Each call of the script came, in its hop, and reached somebody.
    const std::vector<Recorded> calls = callsSince(file, before);
    EXPECT_EQ(calls.size(), script.of(Line::Kind::Heard).size() + script.of(Line::Kind::Seen).size());
    for (const Recorded& call : calls) {
        const auto line = scripted(call);
        ASSERT_TRUE(line) << testing::PrintToString(call) << " is not in the script";
        EXPECT_TRUE(reachedSomebody(call, line->kind, Instant::max())) << qPrintable(line->text);
    }

    // Whatever window ran out of time to start had called before.
    const CostlyWindows windows = costlyWindows(file, {script.begins, now});
    ASSERT_TRUE(windows.isRead);
    EXPECT_GE(windows.seen, 4);
    for (const Passed& passed : windows.passed) {
        const bool wasCalled = std::ranges::any_of(calls, [&](const Recorded& call) {
            const auto line = scripted(call);
            return line && call.where == passed.piece && call.what == passed.window &&
                   call.happened >= stamp(passed.since) && reachedSomebody(call, line->kind, passed.latestStart);
        });
        EXPECT_TRUE(wasCalled) << qPrintable(passed.piece) << ' ' << qPrintable(passed.window) << " by "
                               << toRfc3339(passed.latestStart);
    }
}

} // namespace mend::test
