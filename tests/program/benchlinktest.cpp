#include "app/program/benchlink.h"

#include "app/bench/cardmeasure.h"
#include "tests/spaces/spacewalk.h"
#include "tests/support/fakeclock.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"
#include "tests/support/testbench.h"

#include <QTest>
#include <algorithm>
#include <gtest/gtest.h>

namespace mend::app {
namespace {

using bench::ActKind;
using bench::What;
using test::TestBench;

/// The window tied to its services: one seam whose filler has to be wiped, one that is ready to be filled.
class LivingBench : public testing::Test {
protected:
    LivingBench() : source(test::shippedRules(), 24), clock(TestBench::at(103))
    {
        filled = addNamed("Heron bowl");
        ready = addNamed("Banded jug");
        source.upTo(filled, "fillRun", 1);
        source.upTo(ready, "fillRun", 1);
        source.begun(filled, "fillRun", 100, 1, source.mix("fillerPaste", 98));
        source.done(filled, "fillRun", 103);
        latestStart = *source.window(filled, "wipeBack", 103)->latestStart;
        const auto next = static_cast<std::int64_t>(source.events().size()) + 1;
        bench = std::make_unique<service::BenchService>(
            clock, source.book(), service::BenchRecord{source.roster(), source.events(), EventId(next)},
            [this](const auto& events) { kept.insert(kept.end(), events.begin(), events.end()); });
        alerts = std::make_unique<service::AlertService>(*bench);
        heart = std::make_unique<service::Heartbeat>(clock, *bench, *alerts, service::LastSeen(scratch / "last-seen"));
        window = std::make_unique<MainWindow>(gate.gate);
        window->resize(1280, 800);
        link = std::make_unique<BenchLink>(BenchLink::Services{*bench, *alerts, *heart, clock}, *window,
                                           service::Manner());
        QObject::connect(alerts.get(), &service::AlertService::playWanted, window.get(),
                         [this](const auto& play) { bursts += play.signal == bench::Signal::None ? 0 : 1; });
        window->show();
        heart->begin();
        link->show();
    }
    PieceId addNamed(const char* name)
    {
        record::Piece& piece = source.add("goldLacquerSeam");
        piece.benchName = name;
        return piece.id;
    }
    void comeTo(Instant when)
    {
        clock.set(when);
        heart->lookNow();
    }
    /// A real click, wherever on the Bench that stands.
    bool tap(const QString& key)
    {
        BenchSpace& space = window->bench();
        for (parts::ActView* view : std::initializer_list<parts::ActView*>{&window->banners(), &space.panel(),
                                                                           &space.block(), &space.cards()}) {
            if (const parts::Hit* hit = view->isVisible() ? view->hit(key) : nullptr) {
                QTest::mouseClick(view, Qt::LeftButton, {}, hit->rect.center());
                return true;
            }
        }
        return false;
    }
    QString beginKey() const
    {
        const bench::Card* card = window->bench().picture().card(ready);
        const auto begin = std::ranges::find(card->acts, ActKind::Begin, &bench::CardAct::kind);
        return begin == card->acts.end() ? QString() : actKey(ready, *begin);
    }
    int count(What what) const { return static_cast<int>(std::ranges::count(kept, what, &bench::Event::what)); }
    QString panelText() const
    {
        const auto& page = window->bench().panel().page();
        return page ? page->title + QLatin1Char('\n') + page->text.join(QLatin1Char('\n')) : QString();
    }
    QString bannerWords(const char* key) const
    {
        const parts::Hit* words = window->banners().hit(QStringLiteral("banner/words/") + QLatin1String(key));
        return words && window->banners().isVisible() ? words->name : QString();
    }
    /// Light, dark, and half as large again.
    void keepPictures(const QString& name)
    {
        using parts::Theme;
        for (const auto& [theme, scale, way] :
             {std::tuple{Theme::Dark, 1.0, "dark"}, std::tuple{Theme::Light, 1.5, "150"},
              std::tuple{Theme::Light, 1.0, "light"}}) {
            window->setLookSettings({theme, scale, true, false, 96.0});
            EXPECT_GT(keepPicture(*window, name + QLatin1Char('-') + QLatin1String(way)), 3);
        }
    }
    /// From its card, as a person does: in time to start at its latest start.
    void putOff()
    {
        comeTo(alertOf(filled).due);
        ASSERT_TRUE(tap(moreKey(filled)));
        const auto& choices = window->bench().panel().page()->choices;
        const auto timed = std::ranges::find_if(
            choices, [](const PanelPage::Choice& each) { return each.key.contains(QLatin1String("|startAt|")); });
        ASSERT_NE(timed, choices.end());
        const QString key = timed->key; // a page is built anew with every look
        keepPictures(QStringLiteral("putoff-page"));
        ASSERT_TRUE(tap(key));
    }
    const bench::Alert& alertOf(PieceId piece) const
    {
        return *std::ranges::find_if(alerts->alerts(), [&](const bench::Alert& alert) {
            return alert.piece == piece && alert.kind == bench::AlertKind::Closes;
        });
    }

    test::Scratch scratch;
    TestBench source;
    test::FakeClock clock;
    PieceId filled;
    PieceId ready;
    Instant latestStart;
    std::vector<bench::Event> kept;
    int bursts = 0;
    GateClock gate;
    std::unique_ptr<service::BenchService> bench;
    std::unique_ptr<service::AlertService> alerts;
    std::unique_ptr<service::Heartbeat> heart;
    std::unique_ptr<MainWindow> window;
    std::unique_ptr<BenchLink> link;
};

TEST_F(LivingBench, WhatClosesMeanwhileIsListedAndAskedOnceBeforeSomethingLongIsBegun)
{
    comeTo(latestStart - std::chrono::minutes(1));
    ASSERT_TRUE(tap(beginKey()));
    EXPECT_EQ(count(What::Begun), 0) << "it is asked first";
    EXPECT_TRUE(panelText().contains(QLatin1String("Heron bowl"))) << panelText().toStdString();
    EXPECT_TRUE(panelText().contains(QLatin1String("start by")));
    keepPictures(QStringLiteral("begin-asked"));
    ASSERT_TRUE(tap(QStringLiteral("begin/anyway")));
    EXPECT_FALSE(window->bench().panel().isOpen()) << "once";
    ASSERT_EQ(count(What::Begun), 1);
    const auto begun = std::ranges::find(kept, What::Begun, &bench::Event::what);
    EXPECT_EQ(begun->piece, ready);
}

TEST_F(LivingBench, NotNowLeavesEverythingAsItIs)
{
    comeTo(latestStart - std::chrono::minutes(1));
    ASSERT_TRUE(tap(beginKey()));
    ASSERT_TRUE(tap(QStringLiteral("begin/later")));
    EXPECT_FALSE(window->bench().panel().isOpen());
    EXPECT_EQ(count(What::Begun), 0);
}

TEST_F(LivingBench, NothingIsAskedOnceItHasBeenDone)
{
    comeTo(latestStart - std::chrono::minutes(1));
    bench::Event wiped = bench->told(What::Done);
    wiped.piece = filled;
    wiped.stage = {"wipeBack", 1};
    bench->tell({wiped});
    ASSERT_TRUE(tap(beginKey()));
    EXPECT_FALSE(window->bench().panel().isOpen()) << panelText().toStdString();
    EXPECT_EQ(count(What::Begun), 1);
}

TEST_F(LivingBench, WhatIsPutOffStandsInAStripWithItsCountAndCanBeCalledBack)
{
    EXPECT_TRUE(bannerWords("putoff").isEmpty());
    putOff();
    EXPECT_TRUE(bannerWords("putoff").contains(QLatin1String("1 put off"))) << bannerWords("putoff").toStdString();
    EXPECT_TRUE(bannerWords("putoff").contains(QLatin1String("Heron bowl")));
    keepPictures(QStringLiteral("putoff-strip"));
    ASSERT_TRUE(tap(QStringLiteral("banner/putoff")));
    EXPECT_TRUE(panelText().contains(QLatin1String("Heron bowl"))) << panelText().toStdString();
    EXPECT_TRUE(panelText().contains(QLatin1String("calls again at")));
    keepPictures(QStringLiteral("putoff-list"));
    const int before = bursts;
    clock.pass(std::chrono::seconds(20)); // later than what would join the last burst
    ASSERT_TRUE(tap(QStringLiteral("callnow/") + QString::fromStdString(alertOf(filled).key)));
    EXPECT_EQ(bursts, before + 1) << "it calls at once";
    EXPECT_TRUE(bannerWords("putoff").isEmpty());
}

TEST_F(LivingBench, WhatWasPutOffLeavesTheStripWhenItCallsAgain)
{
    putOff();
    comeTo(*alertOf(filled).lastCall);
    EXPECT_TRUE(bannerWords("putoff").isEmpty()) << "never past the last call";
}

TEST_F(LivingBench, SoundOffIsSaidAcrossTheWindowAndCannotBeClosed)
{
    const int before = bursts;
    alerts->setSoundOff(true);
    comeTo(alertOf(filled).due);
    EXPECT_EQ(bursts, before);
    EXPECT_FALSE(alerts->decision().visible.empty()) << "it is seen all the same";
    EXPECT_FALSE(bannerWords("soundoff").isEmpty());
    EXPECT_FALSE(window->banners().hit(QStringLiteral("banner/soundoff"))) << "there is nothing to close it with";
    keepPictures(QStringLiteral("soundoff"));
    alerts->setSoundOff(false);
    heart->lookNow();
    EXPECT_TRUE(bannerWords("soundoff").isEmpty());
    EXPECT_EQ(bursts, before + 1);
}

} // namespace
} // namespace mend::app
