#include "app/program/curb.h"

#include "app/program/banners.h"
#include "app/program/refusedwindow.h"
#include "app/program/saveelsewhere.h"
#include "app/shell/spaceslink.h"
#include "tests/spaces/spacewalk.h"
#include "tests/support/fakeclock.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"
#include "tests/support/testbench.h"

#include <algorithm>
#include <fstream>
#include <gtest/gtest.h>
#include <set>

namespace mend::app {
namespace {

using test::TestBench;

/// The window on a real bench whose file may only be read.
class OnlyRead : public testing::Test {
protected:
    OnlyRead() : source(test::shippedRules(), 24), clock(TestBench::at(110))
    {
        const PieceId piece = source.add("goldLacquerSeam").id;
        source.upTo(piece, "fillRun", 1);
        source.done(piece, "fillRun", 100, 1, source.mix("fillerPaste", 98));
        const auto next = static_cast<std::int64_t>(source.events().size()) + 1;
        bench = std::make_unique<service::BenchService>(
            clock, source.book(), service::BenchRecord{source.roster(), source.events(), EventId(next)},
            [this](const auto& events) { kept += static_cast<int>(events.size()); });
        alerts = std::make_unique<service::AlertService>(*bench);
    }
    void open(bool curbed)
    {
        if (curbed) {
            gate.gate.curb(noWritingWords(), [](const QString& key) { return onlyLooks(key); });
        }
        window = std::make_unique<MainWindow>(gate.gate);
        window->resize(1280, 800);
        link = std::make_unique<SpacesLink>(SpacesLink::Services{*bench, *alerts, clock}, *window, gate.gate,
                                            service::Manner());
        Told& told = window->bench().told();
        auto* at = window.get();
        const auto count = [this](const auto&...) { ++writes; };
        QObject::connect(&told, &Told::acted, at, count);
        QObject::connect(&told, &Told::placed, at, count);
        QObject::connect(&told, &Told::noted, at, count);
        QObject::connect(&told, &Told::skipped, at, count);
        QObject::connect(&told, &Told::holdBegun, at, count);
        QObject::connect(&told, &Told::mixStarted, at, count);
        QObject::connect(&told, &Told::readingEntered, at, count);
        QObject::connect(&told, &Told::personChosen, at, count);
        QObject::connect(&told, &Told::awayTold, at, count);
        QObject::connect(&told, &Told::stateTold, at, count);
        SettingsSpace& settings = link->settings();
        QObject::connect(&settings, &SettingsSpace::studioTold, at, count);
        QObject::connect(&settings, &SettingsSpace::personTold, at, count);
        QObject::connect(&settings, &SettingsSpace::placeTold, at, count);
        QObject::connect(&settings, &SettingsSpace::goingBackWanted, at, count);
        QObject::connect(&link->rules(), &RulesSpace::revised, at, count);
        Extras extras;
        extras.people = {{PersonId(1), QStringLiteral("Mender")}};
        extras.atBench = PersonId(1);
        for (const auto& place : bench->bench().roster.places) {
            PlaceNow shown;
            shown.place = place.id;
            shown.name = service::text(place.name);
            extras.places.push_back(shown);
        }
        MixKind filler;
        filler.material = QStringLiteral("fillerPaste");
        filler.tile = QStringLiteral("Filler");
        extras.mixKinds = {filler};
        window->setBoard(bench->board(), extras);
        window->show();
    }
    std::vector<parts::ActView*> views() const
    {
        std::vector<parts::ActView*> shown;
        const auto all = window->findChildren<parts::ActView*>();
        std::ranges::copy_if(all, std::back_inserter(shown), [](const auto* view) { return view->isVisible(); });
        return shown;
    }
    /// Does everything that can be done in this space, and in what that leads to.
    void doAll(const QString& space, int steps)
    {
        std::set<QString> done;
        for (int step = 0; step < steps; ++step) {
            window->showSpace(space);
            QString next;
            parts::ActView* where = nullptr;
            for (parts::ActView* view : views()) {
                for (const parts::Hit& hit : view->hits()) {
                    const bool leads = hit.key.startsWith(QLatin1String("rail"));
                    if (hit.canAct() && !leads && next.isEmpty() && !done.contains(hit.key)) {
                        next = hit.key;
                        where = view;
                    }
                }
            }
            if (!where) {
                return;
            }
            done.insert(next);
            where->activate(next);
            acts += 1;
        }
    }

    TestBench source;
    test::FakeClock clock;
    GateClock gate;
    std::unique_ptr<service::BenchService> bench;
    std::unique_ptr<service::AlertService> alerts;
    std::unique_ptr<MainWindow> window;
    std::unique_ptr<SpacesLink> link;
    int kept = 0;
    int writes = 0;
    int acts = 0;
};

TEST_F(OnlyRead, NothingThatCanBeTappedWritesF9)
{
    open(true);
    for (const char* space : {"bench", "log", "rules", "settings", "whileaway"}) {
        doAll(QString::fromLatin1(space), 120);
    }
    EXPECT_EQ(kept, 0);
    EXPECT_EQ(writes, 0);
    EXPECT_GT(acts, 40) << "looking around goes on";
}

TEST_F(OnlyRead, TheSameWalkWritesWhereItMay)
{
    open(false);
    doAll(QStringLiteral("bench"), 60);
    EXPECT_GT(writes, 0) << "else the test above could not fail";
}

TEST_F(OnlyRead, AButtonThatWritesSaysWhyItDoesNothing)
{
    open(true);
    int curbed = 0;
    for (parts::ActView* view : views()) {
        for (const parts::Hit& hit : view->hits()) {
            if (hit.curbed) {
                ++curbed;
                EXPECT_FALSE(hit.canAct());
                EXPECT_TRUE(hit.more.contains(noWritingWords())) << qPrintable(hit.key);
            }
        }
    }
    EXPECT_GT(curbed, 3);
    EXPECT_GT(keepPicture(*window, QStringLiteral("readonly-bench")), 8);
}

TEST(SaveElsewhereSpace, TakesAWholePathThatIsFree)
{
    const test::Scratch scratch;
    GateClock clock;
    SaveElsewhere space(clock.gate);
    QStringList told;
    QObject::connect(&space, &SaveElsewhere::placeTold, &space, [to = &told](const QString& path) { *to << path; });
    space.resize(900, 600);
    space.setLook(SpaceWay{{}, parts::Theme::Light}.look());
    space.show();
    std::ofstream(scratch / "bench-2.mendbench") << "taken";
    const auto free = SaveElsewhere::freeName(scratch.folder(), "/gone/bench.mendbench");
    EXPECT_EQ(free, scratch / "bench-3.mendbench");
    space.ask(free);
    ASSERT_TRUE(type(space.page(), QStringLiteral("saveas/path"), QStringLiteral("bench.mendbench")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("saveas/keep")));
    EXPECT_TRUE(says(space.page(), QStringLiteral("whole path")));
    space.ask(scratch / "bench-2.mendbench");
    click(space.page(), QStringLiteral("saveas/keep"));
    EXPECT_TRUE(says(space.page(), QStringLiteral("stands there already")));
    EXPECT_TRUE(told.isEmpty());
    space.ask(free);
    click(space.page(), QStringLiteral("saveas/keep"));
    click(space.page(), QStringLiteral("saveas/keep"));
    EXPECT_EQ(told, QStringList{QString::fromStdString(free.string())}) << "once, however often it is tapped";
    space.showRefused(QStringLiteral("The disk there is full."));
    EXPECT_TRUE(says(space.page(), QStringLiteral("disk there is full")));
    EXPECT_TRUE(click(space.page(), QStringLiteral("saveas/keep")));
    EXPECT_EQ(told.size(), 2);
}

TEST(RefusedWindowWalk, HasSpotsForAFingerInEveryWay)
{
    const test::Scratch scratch;
    for (const SpaceWay& way : spokenWays()) {
        const Spoken spoken(way.language);
        for (const FaultKind kind : {FaultKind::Damaged, FaultKind::Locked, FaultKind::Foreign, FaultKind::Newer}) {
            GateClock clock;
            RefusedWindow window(clock.gate, scratch / "bench.mendbench", {kind, "9"}, TestBench::at(0),
                                 service::Manner());
            way.dress(window);
            window.show();
            const Walk walk = walkSheets({&window.page()}, way.look());
            EXPECT_TRUE(walk.faults.isEmpty()) << qPrintable(walk.faults.join(QLatin1Char('\n')));
            EXPECT_GE(walk.acts, 1);
            keepPicture(window, QStringLiteral("refused-%1-%2").arg(int(kind)).arg(way.size.width()));
        }
    }
}

} // namespace
} // namespace mend::app
