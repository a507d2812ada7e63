#include "tests/app/walker.h"

#include "app/parts/scribe.h"
#include "app/shell/mainwindow.h"
#include "tests/app/details.h"
#include "tests/app/samples.h"
#include "tests/language/spoken.h"

#include <QLocale>
#include <QWidget>
#include <gtest/gtest.h>

namespace mend::app {
namespace {

struct Way {
    QSize size;
    parts::Theme theme;
    double dpi;
    double scale;
    bool rtl;
    bool left;
    QString language = {}; ///< that every word comes in; empty: English
};

std::ostream& operator<<(std::ostream& out, const Way& way)
{
    return out << way.size.width() << "x" << way.size.height() << " theme " << int(way.theme) << " dpi " << way.dpi
               << " scale " << way.scale << (way.rtl ? " rtl" : "") << (way.left ? " left" : "") << " "
               << way.language.toStdString();
}

std::vector<Way> ways()
{
    std::vector<Way> all;
    for (const parts::Theme theme : {parts::Theme::Light, parts::Theme::Dark, parts::Theme::HighContrast}) {
        for (const bool rtl : {false, true}) {
            all.push_back({{1280, 800}, theme, 96, 1.0, rtl, false});
            all.push_back({{1280, 800}, theme, 96, 1.5, rtl, true});
            all.push_back({{1920, 1200}, theme, 149, 1.0, rtl, false});
        }
    }
    all.push_back({{1920, 1200}, parts::Theme::Light, 149, 1.5, false, false});
    all.push_back({{1920, 1080}, parts::Theme::Light, 96, 1.0, false, true});
    all.push_back({{1920, 1080}, parts::Theme::Light, 96, 2.0, false, false});
    all.push_back({{1024, 600}, parts::Theme::Dark, 96, 1.0, false, false});
    all.push_back({{800, 560}, parts::Theme::Light, 96, 1.0, true, false});
    all.push_back({{640, 400}, parts::Theme::Light, 96, 1.0, false, false});
    addSpoken(all);
    return all;
}

class Walked : public testing::TestWithParam<Way> {
protected:
    void dress(MainWindow& window)
    {
        const Way way = GetParam();
        window.setLayoutDirection(way.rtl ? Qt::RightToLeft : Qt::LeftToRight);
        window.resize(way.size);
        window.setLookSettings({way.theme, way.scale, false, way.left, way.dpi});
        window.bench().setManner(samples::manner());
        window.bench().setDetails(&m_details);
        window.addSpace(QStringLiteral("rules"), QStringLiteral("Heron bowl"), new QWidget);
        window.show();
    }

    static std::vector<const parts::ActView*> viewsOf(MainWindow& window)
    {
        std::vector<const parts::ActView*> seen;
        auto& bench = window.bench();
        for (const parts::ActView* view :
             std::vector<const parts::ActView*>{&window.rail(), &window.banners(), &bench.top(), &bench.band(),
                                                &bench.block(), &bench.cards(), &bench.panel(), &window.urgent()}) {
            if (view->isVisible()) {
                seen.push_back(view);
            }
        }
        return seen;
    }

    static Walk walk(MainWindow& window)
    {
        Walk walk;
        walk.wholeLabels = true;
        for (const auto* view : viewsOf(window)) {
            walk.over(*view, window.look());
        }
        walk.gaps(viewsOf(window), window.look());
        return walk;
    }

    const Spoken m_spoken{GetParam().language};
    parts::TapGate m_gate;
    samples::SampleDetails m_details;
};

TEST_P(Walked, EveryActOfTheBenchCanBeHitReadAndNamed)
{
    MainWindow window(m_gate);
    dress(window);
    window.setBanners({{QStringLiteral("sound"), QStringLiteral("Heron bowl"), QStringLiteral("Banded jug")}});
    for (const auto& board : {samples::richBoard(), samples::handsBoard(), samples::quietBoard(),
                              samples::crowdedBoard(9), samples::alarmedBoard(5), samples::emptyBoard()}) {
        window.setBoard(board, samples::richExtras());
        const Walk found = walk(window);
        EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "");
        EXPECT_GT(found.texts, 5);
        EXPECT_GT(found.pairs, 5);
        const auto inField = window.bench().cards().hits();
        const auto inBlock = window.bench().block().hits();
        for (const auto& card : board.cards) {
            const auto isItsAct = [&](const parts::Hit& hit) {
                return hit.kind == parts::HitKind::BenchAct && hit.canAct() &&
                       hit.key.startsWith(QStringLiteral("piece/%1/act/").arg(card.piece.value()));
            };
            const auto acts = std::ranges::count_if(inField, isItsAct) + std::ranges::count_if(inBlock, isItsAct);
            const bool single = planFor(window.size(), window.look(), 8).oneAtATime;
            if (!single) {
                EXPECT_EQ(acts, static_cast<std::ptrdiff_t>(card.acts.size())) << card.benchName;
            }
        }
    }
}

TEST_P(Walked, EveryPageOfThePanelToo)
{
    MainWindow window(m_gate);
    dress(window);
    window.setBoard(samples::richBoard(), samples::richExtras());
    Panel& panel = window.bench().panel();
    std::vector<std::function<void()>> pages{[&] { panel.openMore(PieceId(2)); },
                                             [&] { panel.openWhy(PieceId(1)); },
                                             [&] { panel.openPlace(PlaceId(1)); },
                                             [&] { panel.openPlaces(); },
                                             [&] { panel.openMix(MixId(1)); },
                                             [&] { panel.openMixKinds(); },
                                             [&] { panel.openPeople(); },
                                             [&] { panel.openClosing(); },
                                             [&] { panel.openSound(); },
                                             [&] {
                                                 window.bench().askWhichMix(PieceId(3),
                                                                            {bench::ActKind::Finish, {}, "Glue is on"},
                                                                            {MixId(1)}, std::nullopt);
                                             }};
    for (const char* key : {"time", "place", "note", "skip", "sendback", "hold", "facts"}) {
        pages.push_back([&panel, key] {
            panel.openMore(PieceId(3));
            const QString wanted = QStringLiteral("more/") + QLatin1String(key);
            const auto page = *panel.page();
            const auto choice = std::ranges::find(page.choices, wanted, &PanelPage::Choice::key);
            ASSERT_NE(choice, page.choices.end()) << key;
            choice->act();
        });
    }
    for (const auto& open : pages) {
        open();
        ASSERT_TRUE(panel.isOpen());
        const Walk found = walk(window);
        EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "") << panel.page()->title.toStdString();
        EXPECT_GT(found.acts, 1);
    }
}

TEST_P(Walked, EveryLetterOnTheGlassCanBeHitAndRead)
{
    MainWindow window(m_gate);
    dress(window);
    parts::LetterPad& pad = window.letters();
    pad.setLook(window.look());
    pad.resize(window.width() - window.rail().width(), parts::LetterPad::heightFor(window.look()));
    pad.show();
    for (const char* page : {"letter/capital", "letter/figures", "letter/accents"}) {
        Walk found;
        found.over(pad, window.look());
        found.gaps({&pad}, window.look());
        EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "");
        EXPECT_GT(found.acts, 30);
        pad.activate(QString::fromLatin1(page));
    }
}

TEST_P(Walked, TheMostUrgentThingStandsInEveryOtherSpace)
{
    MainWindow window(m_gate);
    dress(window);
    window.setBoard(samples::richBoard(), samples::richExtras());
    window.showSpace(QStringLiteral("rules"));
    Walk found;
    found.over(window.urgent(), window.look());
    EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "");
    EXPECT_EQ(found.benchActs, 1);
}

INSTANTIATE_TEST_SUITE_P(Everywhere, Walked, testing::ValuesIn(ways()));

/// The walker itself must be able to fail.
class PlantedFaults : public testing::Test {
protected:
    Walk walkOver(parts::Scene scene)
    {
        parts::TapGate gate;
        parts::ActView view(gate);
        view.resize(400, 300);
        view.setParts({{QPoint(), std::make_shared<const parts::Scene>(std::move(scene)), {}}});
        Walk walk;
        walk.over(view, m_look);
        walk.gaps({&view}, m_look);
        return walk;
    }
    parts::Hit spot(const char* key, QRect rect, double side)
    {
        parts::Hit hit;
        hit.key = hit.name = QLatin1String(key);
        hit.kind = parts::HitKind::BenchAct;
        rect.setSize(QSize(m_look.measure.mm(side), m_look.measure.mm(side)));
        hit.rect = rect;
        hit.act = [] {};
        return hit;
    }
    const parts::Look m_look = parts::lookOf(parts::Theme::Light, parts::Measure());
};

TEST_F(PlantedFaults, ATargetOfTenMillimetresIsFound)
{
    parts::Scene good;
    good.hits = {spot("good", QRect(10, 10, 0, 0), 20.0)};
    EXPECT_TRUE(walkOver(good).faults.isEmpty());
    parts::Scene bad;
    bad.hits = {spot("bad", QRect(10, 10, 0, 0), 10.0)};
    EXPECT_EQ(walkOver(bad).faults.size(), 1);
}

TEST_F(PlantedFaults, TargetsTooNearAreFound)
{
    parts::Scene scene;
    scene.hits = {spot("one", QRect(0, 0, 0, 0), 20.0), spot("two", QRect(80, 0, 0, 0), 20.0)};
    EXPECT_EQ(walkOver(scene).faults.size(), 1);
}

TEST_F(PlantedFaults, AMissingNameIsFound)
{
    parts::Scene scene;
    scene.hits = {spot("nameless", QRect(0, 0, 0, 0), 20.0)};
    scene.hits.front().name.clear();
    EXPECT_EQ(walkOver(scene).faults.size(), 1);
}

TEST_F(PlantedFaults, CutOffWordsOverlapsAndWeakInkAreFound)
{
    const auto& t = m_look.tokens();
    const parts::Scribe::Ink ink{parts::Role::Body, t.ink, t.ground};
    parts::Scribe cut(m_look, {400, 300}, false);
    cut.text({0, 0, 60, 24}, QStringLiteral("a line that is far too long"), ink);
    EXPECT_EQ(walkOver(cut.take()).faults.size(), 1);
    parts::Scribe over(m_look, {400, 300}, false);
    over.text({0, 0, 200, 24}, QStringLiteral("one"), ink);
    over.text({8, 2, 200, 24}, QStringLiteral("two"), ink);
    EXPECT_GE(walkOver(over.take()).faults.size(), 1);
    parts::Scribe weak(m_look, {400, 300}, false);
    weak.text({0, 0, 200, 24}, QStringLiteral("pale"), {parts::Role::Body, t.edge, t.ground});
    EXPECT_EQ(walkOver(weak.take()).faults.size(), 1);
    parts::Scribe wrong(m_look, {400, 300}, false);
    wrong.fill({0, 0, 400, 300}, t.block);
    wrong.text({20, 20, 200, 24}, QStringLiteral("on what?"), ink);
    EXPECT_EQ(walkOver(wrong.take()).faults.size(), 1);
}

} // namespace
} // namespace mend::app
