#include "core/service/heartbeat.h"

#include "tests/support/fakeclock.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::service;
using namespace mend::test;

namespace {

/// A filler window that runs, with a heart that is beaten by hand through its timer's slot.
struct Living {
    Living() : source(shippedRules(), 24), clock(TestBench::at(103))
    {
        piece = source.add("goldLacquerSeam").id;
        source.upTo(piece, "fillRun", 1);
        source.begun(piece, "fillRun", 100);
        source.done(piece, "fillRun", 103);
        bench =
            std::make_unique<BenchService>(clock, source.book(),
                                           BenchRecord{source.roster(), source.events(),
                                                       EventId(static_cast<std::int64_t>(source.events().size()) + 1)},
                                           nullptr);
        alerts = std::make_unique<AlertService>(*bench);
        QObject::connect(alerts.get(), &AlertService::playWanted, [this](const bench::Play& play) {
            played.push_back({clock.now().utc, play.signal});
        });
        heart = std::make_unique<Heartbeat>(clock, *bench, *alerts, LastSeen(lastSeenFile()));
    }
    std::filesystem::path lastSeenFile() const { return scratch / "last-seen"; }
    /// Moves the clock from one aimed-at instant to the next, as the timer would.
    void liveUntil(double minute)
    {
        while (heart->ticker().aimedAt() < TestBench::at(minute)) {
            clock.set(std::max(heart->ticker().aimedAt(), clock.now().utc));
            beat();
        }
        clock.set(TestBench::at(minute));
        beat();
    }
    void beat() { Q_EMIT heart->ticker().ticked(clock.now()); }

    struct Played {
        Instant at;
        bench::Signal signal;
    };
    Scratch scratch;
    TestBench source;
    FakeClock clock;
    PieceId piece;
    std::unique_ptr<BenchService> bench;
    std::unique_ptr<AlertService> alerts;
    std::unique_ptr<Heartbeat> heart;
    std::vector<Played> played;
};

} // namespace

TEST(Heartbeat, SoundsACostlyWindowBeforeItsLatestStartAndNeverEarly)
{
    Living living;
    living.heart->begin();
    const auto window = living.bench->board().cards.front().window;
    ASSERT_TRUE(window && window->latestStart);
    const auto times = bench::alertTimes(*window->opens, *window->closes, window->handsOn);
    ASSERT_TRUE(times);
    living.liveUntil(119);
    const auto first = std::ranges::find(living.played, bench::Signal::A, &Living::Played::signal);
    ASSERT_NE(first, living.played.end());
    EXPECT_GE(first->at, times->first);
    EXPECT_LT(first->at, times->first + std::chrono::milliseconds(250));
    EXPECT_LT(first->at, *window->latestStart);
}

TEST(Heartbeat, SaysThatTheClockWasSetAndKeepsRealTime)
{
    Living living;
    living.heart->begin();
    const Span before = *living.bench->board().cards.front().window->closes - living.clock.now().utc;
    std::optional<Span> step;
    QObject::connect(living.heart.get(), &Heartbeat::clockStepped, [&](Span amount) { step = amount; });
    living.clock.setWall(std::chrono::hours(1));
    living.clock.pass(std::chrono::seconds(5));
    living.beat();
    ASSERT_TRUE(step);
    EXPECT_EQ(*step, Span(std::chrono::hours(1)));
    const Span after = *living.bench->board().cards.front().window->closes - living.clock.now().utc;
    EXPECT_EQ(after, before - std::chrono::seconds(5));
}

TEST(Heartbeat, TellsWhatWasMissedWhileAsleep)
{
    Living living;
    living.heart->begin();
    std::optional<bench::MissedReport> report;
    QObject::connect(living.alerts.get(), &AlertService::missedWhileAsleep,
                     [&](const bench::MissedReport& missed) { report = missed; });
    living.clock.pass(std::chrono::hours(8));
    living.beat();
    ASSERT_TRUE(report);
    ASSERT_EQ(report->lines.size(), 1U);
    EXPECT_FALSE(report->lines.front().savable);
}

TEST(Heartbeat, LooksAtOnceWhenTheClockWasSetAndAimsAnew)
{
    Living living;
    living.heart->begin();
    const Span before = living.heart->ticker().aimedAt() - living.clock.now().utc;
    const Instant closes = *living.bench->board().cards.front().window->closes;
    std::optional<Span> step;
    QObject::connect(living.heart.get(), &Heartbeat::clockStepped, [&](Span amount) { step = amount; });
    living.clock.setWall(-std::chrono::hours(1));
    living.heart->lookNow(); // no tick has come, and none of real time has gone by
    EXPECT_EQ(step, Span(-std::chrono::hours(1)));
    EXPECT_EQ(*living.bench->board().cards.front().window->closes, closes - std::chrono::hours(1));
    EXPECT_EQ(living.heart->ticker().aimedAt() - living.clock.now().utc, before);
    EXPECT_TRUE(living.played.empty());
}

TEST(Heartbeat, TellsWhatWasMissedAsSoonAsTheMachineWakes)
{
    Living living;
    living.heart->begin();
    std::optional<bench::MissedReport> report;
    std::optional<InstantRange> asleep;
    QObject::connect(living.alerts.get(), &AlertService::missedWhileAsleep,
                     [&](const bench::MissedReport& missed) { report = missed; });
    QObject::connect(living.heart.get(), &Heartbeat::sleptThrough, [&](InstantRange range) { asleep = range; });
    const auto times = bench::callTimes(*living.bench->board().cards.front().window);
    ASSERT_TRUE(times);
    const Span slept = times->first - living.clock.now().utc + std::chrono::seconds(10);
    living.clock.pass(slept); // boot time counts sleep in
    living.heart->lookNow();
    ASSERT_TRUE(report);
    EXPECT_TRUE(report->lines.front().savable);
    ASSERT_TRUE(asleep);
    EXPECT_EQ(asleep->to - asleep->from, slept);
    ASSERT_EQ(living.played.size(), 1U);
    EXPECT_EQ(living.played.front().signal, bench::Signal::A);
    report.reset();
    living.heart->lookNow(); // woken by the kernel's timer and by the desktop: told once
    EXPECT_FALSE(report);
    EXPECT_EQ(living.played.size(), 1U);
}

TEST(Heartbeat, AsksWhenTheClockIsBehindTheLastRun)
{
    Living living;
    LastSeen(living.lastSeenFile()).touch(living.clock.now().utc + std::chrono::days(1));
    std::optional<Instant> last;
    QObject::connect(living.heart.get(), &Heartbeat::clockBehind, [&](Instant seen, Instant) { last = seen; });
    living.heart->begin();
    EXPECT_EQ(last, living.clock.now().utc + std::chrono::days(1));
}

TEST(Heartbeat, BeatsOnceAMinuteWhereNothingRuns)
{
    const TestBench source(shippedRules(), 24);
    FakeClock clock(TestBench::at(0.5));
    BenchService bench(clock, source.book(), {}, nullptr);
    AlertService alerts(bench);
    const Scratch scratch;
    Heartbeat heart(clock, bench, alerts, LastSeen(scratch / "last-seen"));
    heart.begin();
    EXPECT_EQ(heart.ticker().aimedAt(), TestBench::at(1));
}

TEST(Heartbeat, LooksOnceATickWhateverTheTickChanges)
{
    Living living;
    living.heart->begin();
    const auto window = living.bench->board().cards.front().window;
    const auto times = bench::alertTimes(*window->opens, *window->closes, window->handsOn);
    int looks = 0;
    int changes = 0;
    QObject::connect(living.alerts.get(), &AlertService::decided, [&] { ++looks; });
    QObject::connect(living.bench.get(), &BenchService::benchChanged, [&] { ++changes; });
    living.clock.set(times->first); // the card calls and the alert is shown: a new board and a fact
    living.beat();
    EXPECT_EQ(changes, 1);
    EXPECT_EQ(looks, 1);
    EXPECT_FALSE(living.bench->bench().answers.empty());
}

TEST(Heartbeat, AFactOfTheProgramIsInTheBenchAsIfItWereFoldedAnew)
{
    Living living;
    living.heart->begin();
    living.liveUntil(119);
    EXPECT_EQ(living.bench->bench(), bench::fold(living.source.roster(), living.bench->events(), living.bench->book()));
}
