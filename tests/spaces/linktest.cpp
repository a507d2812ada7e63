#include "app/shell/spaceslink.h"

#include "tests/spaces/spacewalk.h"
#include "tests/support/fakeclock.h"
#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

namespace mend::app {
namespace {

using bench::What;
using std::chrono::minutes;
using test::TestBench;

/// The window on a real bench: a gold seam whose filler went in ten minutes ago.
class Linked : public testing::Test {
protected:
    Linked() : source(test::shippedRules(), 24), clock(TestBench::at(110))
    {
        piece = source.add("goldLacquerSeam").id;
        other = source.add("goldLacquerSeam").id;
        source.upTo(piece, "fillRun", 1);
        source.upTo(other, "fillRun", 1);
        const MixId mix = source.mix("fillerPaste", 98);
        filler = source.done(piece, "fillRun", 100, 1, mix);
        const auto next = static_cast<std::int64_t>(source.events().size()) + 1;
        bench = std::make_unique<service::BenchService>(
            clock, source.book(), service::BenchRecord{source.roster(), source.events(), EventId(next)},
            [this](const auto& events) { kept.insert(kept.end(), events.begin(), events.end()); });
        alerts = std::make_unique<service::AlertService>(*bench);
        window = std::make_unique<MainWindow>(gate.gate);
        window->resize(1280, 800);
        link = std::make_unique<SpacesLink>(SpacesLink::Services{*bench, *alerts, clock}, *window, gate.gate,
                                            service::Manner());
        window->show();
    }
    void open(const char* key) { window->showSpace(QString::fromLatin1(key)); }
    std::optional<Instant> wipeCloses() const
    {
        for (const bench::Window& each : bench->board().windows) {
            if (each.piece == piece && each.stage.stage == "wipeBack") {
                return each.closes;
            }
        }
        return std::nullopt;
    }
    TestBench source;
    test::FakeClock clock;
    PieceId piece;
    PieceId other;
    EventId filler;
    std::vector<bench::Event> kept;
    GateClock gate;
    std::unique_ptr<service::BenchService> bench;
    std::unique_ptr<service::AlertService> alerts;
    std::unique_ptr<MainWindow> window;
    std::unique_ptr<SpacesLink> link;
};

TEST_F(Linked, AFactMovedInTheLogMovesItsWindow)
{
    open("log");
    const auto before = wipeCloses();
    ASSERT_TRUE(before);
    ASSERT_TRUE(click(link->log().list(), QStringLiteral("log/%1").arg(filler.value())));
    ASSERT_TRUE(click(link->log().page(), QStringLiteral("log/step/-1")));
    EXPECT_TRUE(says(link->log().page(), QStringLiteral("instead of"))) << "the move is shown before it is kept";
    ASSERT_TRUE(click(link->log().page(), QStringLiteral("log/keep")));
    ASSERT_FALSE(kept.empty());
    EXPECT_EQ(kept.back().what, What::Retold);
    ASSERT_TRUE(wipeCloses());
    EXPECT_LT(*wipeCloses(), *before);
    EXPECT_TRUE(says(link->log().list(), QStringLiteral("told differently")));
}

TEST_F(Linked, AFactTakenBackGoesWithWhatWasToldOnIt)
{
    open("log");
    click(link->log().list(), QStringLiteral("log/%1").arg(filler.value()));
    click(link->log().page(), QStringLiteral("log/takeback"));
    EXPECT_TRUE(says(link->log().page(), QStringLiteral("no longer stands")));
    ASSERT_TRUE(click(link->log().page(), QStringLiteral("log/takebacknow")));
    EXPECT_FALSE(wipeCloses());
    EXPECT_TRUE(std::ranges::any_of(
        kept, [&](const bench::Event& event) { return event.what == What::Voided && event.target == filler; }));
}

TEST_F(Linked, AChangedRuleSaysWhatItWouldDoAndDoesNothingYet)
{
    open("rules");
    const auto before = wipeCloses();
    const std::size_t wipe = *source.book().procedure("goldLacquerSeam")->indexOf("wipeBack");
    link->rules().openStage("goldLacquerSeam", wipe);
    ASSERT_TRUE(click(link->rules().page(), QStringLiteral("rule/stages/%1/handsOn/fixed").arg(wipe)));
    type(link->rules().page(), QStringLiteral("figure/value"), QStringLiteral("5"));
    ASSERT_TRUE(click(link->rules().page(), QStringLiteral("figure/put")));
    EXPECT_TRUE(says(link->rules().page(), QStringLiteral("start by")));
    EXPECT_TRUE(kept.empty());
    EXPECT_EQ(wipeCloses(), before);
}

TEST_F(Linked, OneEventForEachPieceThatAdoptsARevision)
{
    Q_EMIT link->rules().adopted(QStringLiteral("goldLacquerSeam"), {piece, other});
    ASSERT_EQ(kept.size(), 2U);
    EXPECT_EQ(kept[0].what, What::RulesAdopted);
    EXPECT_EQ(kept[1].piece, other);
    EXPECT_EQ(kept[1].rules, source.book().procedure("goldLacquerSeam")->hash);
}

TEST_F(Linked, AfterAGapTheHeatedPlacesAndTheNightAreAskedAbout)
{
    link->nobodyLooked({TestBench::at(-800), TestBench::at(105)});
    EXPECT_EQ(window->spaceShown(), QStringLiteral("whileaway"));
    auto& sheet = link->whileAway().sheet();
    ASSERT_TRUE(click(sheet, QStringLiteral("gap/%1/wentOff").arg(TestBench::cabinet.value())));
    ASSERT_EQ(kept.size(), 1U);
    EXPECT_EQ(kept.back().what, What::GapAnswered);
    EXPECT_EQ(kept.back().word, "wentOff");
    EXPECT_EQ(kept.back().from, TestBench::at(-800));
    const QString night = QStringLiteral("night/%1/").arg(TestBench::benchPlace.value());
    type(sheet, night + QStringLiteral("lowest"), QStringLiteral("12"));
    type(sheet, night + QStringLiteral("highest"), QStringLiteral("19"));
    ASSERT_TRUE(click(sheet, night + QStringLiteral("tell")));
    ASSERT_EQ(kept.size(), 2U);
    EXPECT_EQ(kept.back().word, "between");
    EXPECT_EQ(kept.back().temperature, Temperature::fromCelsius(12));
    EXPECT_EQ(kept.back().amount, 1900);
    ASSERT_TRUE(click(sheet, QStringLiteral("away/bench")));
    EXPECT_EQ(window->spaceShown(), QStringLiteral("bench"));
}

TEST_F(Linked, TheMorningSaysWhatWasOverMeanwhile)
{
    // The other gold seam may be filled 30 min after it was keyed, at about minute 40.
    link->nobodyLooked({TestBench::at(5), TestBench::at(105)});
    EXPECT_TRUE(says(link->whileAway().sheet(), QStringLiteral("Press filler into gaps and chips")));
    link->nobodyLooked({TestBench::at(95), TestBench::at(105)});
    EXPECT_FALSE(says(link->whileAway().sheet(), QStringLiteral("Press filler into gaps and chips")));
}

TEST_F(Linked, AShortGapAsksOnlyAboutHeat)
{
    link->nobodyLooked({TestBench::at(90), TestBench::at(105)});
    EXPECT_TRUE(link->whileAway().sheet().hit(QStringLiteral("gap/%1/unknown").arg(TestBench::humidBox.value())));
    EXPECT_FALSE(link->whileAway().sheet().field(QStringLiteral("night/%1/lowest").arg(TestBench::benchPlace.value())));
}

} // namespace
} // namespace mend::app
