#include "core/service/planservice.h"

#include "tests/support/fakeclock.h"
#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <QCoreApplication>
#include <QElapsedTimer>

#include <algorithm>
#include <functional>
#include <gtest/gtest.h>
#include <memory>
#include <thread>

using namespace mend;
using namespace mend::service;
using namespace mend::test;
using bench::ActKind;
using std::chrono::milliseconds;

namespace {

#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
constexpr int slower = 20;
#else
constexpr int slower = 1;
#endif

/// Some seams, one of them filled and to be wiped back, served and planned.
struct PlannedBench {
    explicit PlannedBench(int others, PlanPatience patience = {}) : source(shippedRules(), 24), clock(TestBench::at(0))
    {
        piece = source.add("goldLacquerSeam").id;
        const double ready = source.upTo(piece, "fillRun", 1);
        source.begun(piece, "fillRun", ready + 1, 1, source.mix("fillerPaste", ready));
        source.done(piece, "fillRun", ready + 4);
        for (int i = 0; i < others; ++i) {
            const char* procedures[] = {"goldLacquerSeam", "metalFilledSeam", "invisibleMend"};
            source.add(procedures[i % 3]);
        }
        clock.set(TestBench::at(ready + 8));
        const auto next = EventId(static_cast<std::int64_t>(source.events().size()) + 1);
        bench = std::make_unique<BenchService>(
            clock, source.book(), BenchRecord{source.roster(), source.events(), next}, BenchService::Keep());
        plans = std::make_unique<PlanService>(clock, *bench, Studio(), patience);
    }

    static bool await(const std::function<bool()>& what)
    {
        QElapsedTimer waited;
        waited.start();
        while (!what() && waited.elapsed() < 20'000) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents | QEventLoop::AllEvents, 20);
        }
        return what();
    }
    bool awaitPlan() const
    {
        return await([this] { return bench->plan() && bench->plan()->isWhole(); });
    }
    bool awaitEnd() const
    {
        return await([this] { return !plans->isPlanning(); });
    }
    void tap(ActKind kind, const std::string& stage) const
    {
        bench::Tap tap;
        tap.piece = piece;
        tap.act = {kind, {stage, 1}, {}};
        bench->tap(tap);
    }
    bool wants(const std::string& stage) const
    {
        const auto plan = bench->plan();
        return plan && std::ranges::any_of(plan->hands, [&](const bench::PlannedHands& hands) {
                   return hands.piece == piece && hands.stage == bench::StageInstance{stage, 1};
               });
    }

    TestBench source;
    FakeClock clock;
    PieceId piece;
    std::unique_ptr<BenchService> bench;
    std::unique_ptr<PlanService> plans;
};

} // namespace

TEST(PlanService, PlansNothingBeforeItIsAsked)
{
    const PlannedBench at(2);
    QCoreApplication::processEvents();
    EXPECT_FALSE(at.bench->plan());
    EXPECT_FALSE(at.bench->board().planned);
}

TEST(PlanService, ATapReplacesThePlanAndTheBoardFollows)
{
    const PlannedBench at(2);
    at.plans->begin();
    ASSERT_TRUE(at.awaitPlan());
    EXPECT_TRUE(at.bench->board().planned);
    EXPECT_TRUE(at.wants("wipeBack"));
    at.tap(ActKind::Finish, "wipeBack");
    ASSERT_TRUE(at.awaitEnd());
    EXPECT_FALSE(at.wants("wipeBack"));
    EXPECT_EQ(at.bench->board().hands, at.bench->plan()->hands);
}

/// What was planned for the bench of before the tap and is told only now, nobody sees any more.
TEST(PlanService, AnAnswerToAnOldBenchIsDropped)
{
    PlannedBench at(8);
    at.plans->begin();
    ASSERT_TRUE(at.awaitEnd());
    at.source.add("invisibleMend"); // a piece comes in, and the answer to that
    at.bench->changeRoster(at.source.roster());
    QElapsedTimer waited; // its first answers come meanwhile and wait for the loop of events
    waited.start();
    while (waited.elapsed() < 400) {
        std::this_thread::yield();
    }
    at.tap(ActKind::Finish, "wipeBack");
    bool old = false;
    QObject::connect(at.plans.get(), &PlanService::planned, at.plans.get(),
                     [&at, &old] { old = old || at.wants("wipeBack"); });
    ASSERT_TRUE(at.awaitEnd());
    EXPECT_FALSE(old);
    EXPECT_FALSE(at.wants("wipeBack"));
}

TEST(PlanService, ClosingEndsTheWorkAtOnce)
{
    PlannedBench at(25, {milliseconds(100), milliseconds(60'000), milliseconds(60'000)});
    at.plans->begin();
    ASSERT_TRUE(at.awaitPlan());
    ASSERT_TRUE(at.plans->isPlanning()); // for a better one, a minute long
    QElapsedTimer waited;
    waited.start();
    at.plans.reset();
    EXPECT_LT(waited.elapsed(), 50 * slower);
}

TEST(PlanService, ATapEndsTheWorkOnTheBenchOfBefore)
{
    const PlannedBench at(12, {milliseconds(100), milliseconds(60'000), milliseconds(60'000)});
    at.plans->begin();
    ASSERT_TRUE(at.awaitPlan());
    ASSERT_TRUE(at.plans->isPlanning());
    at.tap(ActKind::Finish, "wipeBack");
    EXPECT_TRUE(PlannedBench::await([&at] { return !at.wants("wipeBack"); })); // not a minute later
}

/// Time alone asks anew, but only where it has overtaken the plan, and without hurry where nothing closes.
TEST(PlanService, TimeAsksAnewOnlyWhenItHasOvertakenThePlan)
{
    PlannedBench at(1);
    at.plans->begin();
    ASSERT_TRUE(at.awaitEnd());
    const Instant until = bench::goodUntil(*at.bench->plan());
    at.plans->look(until - milliseconds(1));
    EXPECT_FALSE(at.plans->isPlanning());
    at.clock.set(until);
    at.plans->look(until);
    EXPECT_TRUE(at.plans->isPlanning());
    ASSERT_TRUE(at.awaitEnd());
    EXPECT_EQ(at.bench->plan()->at(), std::chrono::ceil<std::chrono::minutes>(until));
}

TEST(PlanService, AnIdleBenchIsLeftAlone)
{
    PlannedBench at(1);
    at.tap(ActKind::Finish, "wipeBack");
    at.plans->begin();
    ASSERT_TRUE(at.awaitEnd());
    const auto anyCloses = [&at] {
        return std::ranges::any_of(at.bench->board().windows,
                                   [](const bench::Window& each) { return each.closes.has_value(); });
    };
    ASSERT_FALSE(anyCloses());
    at.clock.pass(std::chrono::minutes(3)); // the first planned start has passed
    at.bench->refresh(at.clock.now().utc);
    at.plans->look(at.clock.now().utc);
    EXPECT_FALSE(at.plans->isPlanning());
    at.plans->setWatched(true);
    at.plans->look(at.clock.now().utc);
    EXPECT_TRUE(at.plans->isPlanning());
}
