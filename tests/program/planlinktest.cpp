#include "app/program/planlink.h"

#include "tests/spaces/spacewalk.h"
#include "tests/support/fakeclock.h"
#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <QElapsedTimer>
#include <QTest>

#include <algorithm>
#include <gtest/gtest.h>
#include <memory>

namespace mend::app {
namespace {

using test::TestBench;

/// The window with its plan: one seam to be wiped back, others to be worked on, two people.
class LivingPlan : public testing::Test {
protected:
    LivingPlan() : source(test::shippedRules(), 24), clock(TestBench::at(0))
    {
        source.roster().people = {{PersonId(1), "Ruta"}, {PersonId(2), "Jonas"}};
        filled = named("Heron bowl", "goldLacquerSeam");
        const double ready = source.upTo(filled, "fillRun", 1);
        source.begun(filled, "fillRun", ready + 1, 1, source.mix("fillerPaste", ready));
        source.done(filled, "fillRun", ready + 4);
        fresh = named("Reed cup", "invisibleMend");
        named("Banded jug", "metalFilledSeam");
        bench::Event came = source.event(bench::What::PersonCame, ready + 5);
        came.person = PersonId(1);
        source.tell(came);
        clock.set(TestBench::at(ready + 8));
        const auto next = static_cast<std::int64_t>(source.events().size()) + 1;
        bench = std::make_unique<service::BenchService>(
            clock, source.book(), service::BenchRecord{source.roster(), source.events(), EventId(next)},
            [this](const auto& events) { kept.insert(kept.end(), events.begin(), events.end()); });
        plans = std::make_unique<service::PlanService>(clock, *bench, service::Studio());
        window = std::make_unique<MainWindow>(gate.gate);
        window->resize(1280, 800);
        link = std::make_unique<PlanLink>(PlanLink::Services{*bench, *plans, clock}, *window, gate.gate,
                                          service::Manner());
        window->show();
        plans->begin();
        await([this] { return !plans->isPlanning(); });
    }

    template <class What> static void await(const What& what)
    {
        QElapsedTimer waited;
        waited.start();
        while (!what() && waited.elapsed() < 20'000) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents | QEventLoop::AllEvents, 20);
        }
        EXPECT_TRUE(what());
    }

    PieceId named(const char* name, const char* procedure)
    {
        record::Piece& piece = source.add(procedure);
        piece.benchName = name;
        return piece.id;
    }

    static bool clickIn(parts::ActView& view, const QString& key)
    {
        const parts::Hit* hit = view.hit(key);
        if (!hit) {
            return false;
        }
        QTest::mouseClick(&view, Qt::LeftButton, {}, hit->rect.center());
        return true;
    }

    static QStringList namesWith(const parts::ActView& view, const QString& begin)
    {
        QStringList names;
        for (const parts::Hit& hit : view.hits()) {
            if (hit.key.startsWith(begin)) {
                names << hit.name;
            }
        }
        return names;
    }

    PlanSpace& space() { return link->space(); }

    TestBench source;
    test::FakeClock clock;
    PieceId filled;
    PieceId fresh;
    std::vector<bench::Event> kept;
    GateClock gate;
    std::unique_ptr<service::BenchService> bench;
    std::unique_ptr<service::PlanService> plans;
    std::unique_ptr<MainWindow> window;
    std::unique_ptr<PlanLink> link;
};

const QString wipe = QStringLiteral("plan/do/1/wipeBack/1");

TEST_F(LivingPlan, TheListThreadsAndCardsTellTheSameHands)
{
    window->showSpace(QStringLiteral("plan"));
    const parts::Hit* row = space().list().hit(wipe);
    ASSERT_NE(row, nullptr);
    EXPECT_TRUE(row->name.contains(QLatin1String("Heron bowl"))) << qPrintable(row->name);
    const bench::Card* card = nullptr;
    for (const bench::Card& each : bench->board().cards) {
        card = each.piece == filled ? &each : card;
    }
    ASSERT_TRUE(card && card->window && card->window->latestStart);
    const QString startBy = service::clockTime(*card->window->latestStart, clock.now().utc, service::Manner());
    EXPECT_TRUE(row->more.contains(startBy)) << qPrintable(row->more);
    const QStringList rows = namesWith(space().list(), QStringLiteral("plan/do/"));
    const QStringList threads = namesWith(space().threads(), QStringLiteral("plan/thread/"));
    EXPECT_FALSE(threads.isEmpty());
    QStringList knots;
    for (const parts::Hit& hit : space().threads().hits()) {
        if (hit.key.startsWith(QLatin1String("plan/thread/"))) {
            knots << hit.more.split(QStringLiteral(", "));
        }
    }
    EXPECT_EQ(knots.size(), rows.size()); // today's: one knot for each row
}

TEST_F(LivingPlan, ATapOnTheBenchChangesTheListInFront)
{
    window->showSpace(QStringLiteral("plan"));
    ASSERT_NE(space().list().hit(wipe), nullptr);
    bench::Tap tap;
    tap.piece = filled;
    tap.act = {bench::ActKind::Finish, {"wipeBack", 1}, {}};
    bench->tap(tap);
    await([this] { return !space().list().hit(wipe); });
}

TEST_F(LivingPlan, TheWeekShowsMoreThanTodayAndGroupsByPersonAndPlace)
{
    window->showSpace(QStringLiteral("plan"));
    const auto today = namesWith(space().list(), QStringLiteral("plan/do/")).size();
    ASSERT_TRUE(clickIn(space().head(), QStringLiteral("plan/week")));
    EXPECT_GT(space().list().contentHeight(), 0);
    EXPECT_TRUE(space().head().hit(QStringLiteral("plan/week"))->chosen);
    ASSERT_TRUE(clickIn(space().head(), QStringLiteral("plan/byplace")));
    EXPECT_FALSE(namesWith(space().list(), QStringLiteral("plan/group/")).isEmpty());
    ASSERT_TRUE(clickIn(space().head(), QStringLiteral("plan/today")));
    ASSERT_TRUE(clickIn(space().head(), QStringLiteral("plan/inorder")));
    EXPECT_EQ(namesWith(space().list(), QStringLiteral("plan/do/")).size(), today);
    EXPECT_TRUE(namesWith(space().list(), QStringLiteral("plan/group/")).isEmpty());
}

TEST_F(LivingPlan, ARowLeadsToItsPiece)
{
    window->showSpace(QStringLiteral("plan"));
    PieceId wanted;
    QObject::connect(link.get(), &PlanLink::pieceWanted, link.get(), [&wanted](PieceId piece) { wanted = piece; });
    ASSERT_TRUE(clickIn(space().list(), wipe));
    EXPECT_EQ(wanted, filled);
}

/// By keys alone, as everywhere.
TEST_F(LivingPlan, TheReachIsChosenByKeys)
{
    window->showSpace(QStringLiteral("plan"));
    space().head().setFocus();
    space().head().setFocusKey(QStringLiteral("plan/week"));
    QTest::keyClick(&space().head(), Qt::Key_Return);
    EXPECT_TRUE(space().head().hit(QStringLiteral("plan/week"))->chosen);
}

} // namespace
} // namespace mend::app
