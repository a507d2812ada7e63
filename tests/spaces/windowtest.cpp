#include "app/daylog/daylogspace.h"
#include "app/rules/rulesspace.h"
#include "app/settings/settingsspace.h"
#include "app/shell/mainwindow.h"
#include "app/whileaway/whileawayspace.h"
#include "tests/app/samples.h"
#include "tests/spaces/spacewalk.h"
#include "tests/support/rulefiles.h"

#include <gtest/gtest.h>

namespace mend::app {
namespace {

/// The one window with every space of this floor in it, as the program puts them.
struct WholeWindow {
    explicit WholeWindow(const SpaceWay& way)
    {
        window.setLayoutDirection(way.rtl ? Qt::RightToLeft : Qt::LeftToRight);
        window.resize(way.size);
        window.bench().setManner(samples::manner());
        window.addSpace(QStringLiteral("log"), QStringLiteral("Log"), log);
        window.addSpace(QStringLiteral("rules"), QStringLiteral("Rules"), rules);
        window.addSpace(QStringLiteral("settings"), QStringLiteral("Settings"), settings);
        window.addSpace(QStringLiteral("whileaway"), {}, away);
        const auto dress = [this] {
            for (auto* space : std::initializer_list<parts::SheetSpace*>{log, rules, settings}) {
                space->setLook(window.look());
            }
            away->setLook(window.look());
        };
        QObject::connect(&window, &MainWindow::lookChanged, &window, dress);
        window.setLookSettings({way.theme, way.scale, false, false, way.dpi});
        window.setBoard(samples::richBoard(), samples::richExtras());
        RulesNow now;
        now.book = std::make_shared<const rules::RuleBook>(test::shippedRules());
        rules->setNow(now);
        window.show();
    }

    std::vector<parts::SheetView*> sheetsOf(const QString& key)
    {
        if (key == QStringLiteral("whileaway")) {
            return {&away->sheet()};
        }
        const std::map<QString, parts::SheetSpace*> spaces{
            {QStringLiteral("log"), log}, {QStringLiteral("rules"), rules}, {QStringLiteral("settings"), settings}};
        return {&spaces.at(key)->list(), &spaces.at(key)->page()};
    }

    GateClock clock;
    MainWindow window{clock.gate};
    DayLogSpace* log = new DayLogSpace(clock.gate);
    RulesSpace* rules = new RulesSpace(clock.gate);
    SettingsSpace* settings = new SettingsSpace(clock.gate);
    WhileAwaySpace* away = new WhileAwaySpace(clock.gate);
};

const std::array<QString, 4> keys{QStringLiteral("log"), QStringLiteral("rules"), QStringLiteral("settings"),
                                  QStringLiteral("whileaway")};

class WindowWalk : public SpaceWalk {};

TEST_P(WindowWalk, EverySpaceStandsInTheOneWindowWithTheMostUrgentThingInSight)
{
    const SpaceWay way = GetParam();
    WholeWindow whole(way);
    for (const QString& key : keys) {
        whole.window.showSpace(key);
        EXPECT_EQ(whole.window.spaceShown(), key);
        EXPECT_TRUE(whole.window.urgent().isVisible()) << key.toStdString();
        Walk found = walkSheets(whole.sheetsOf(key), whole.window.look());
        std::vector<const parts::ActView*> views{&whole.window.rail(), &whole.window.urgent()};
        for (auto* sheet : whole.sheetsOf(key)) {
            if (sheet->isVisible()) {
                views.push_back(sheet);
            }
        }
        found.gaps(views, whole.window.look());
        EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "") << key.toStdString();
        EXPECT_GT(keepPicture(whole.window, way.picture(QStringLiteral("window-%1").arg(key))), 4);
    }
}

INSTANTIATE_TEST_SUITE_P(
    Everywhere, WindowWalk,
    testing::Values(SpaceWay{{1280, 800}, parts::Theme::Light, 96, 1.0, false},
                    SpaceWay{{1280, 800}, parts::Theme::Dark, 96, 1.0, false},
                    SpaceWay{{1280, 800}, parts::Theme::Light, 96, 1.5, false},
                    SpaceWay{{1920, 1200}, parts::Theme::HighContrast, 149, 1.0, true},
                    SpaceWay{{1280, 800}, parts::Theme::Light, 96, 1.0, false, QStringLiteral("en_XA")},
                    SpaceWay{{1280, 800}, parts::Theme::Light, 96, 1.5, false, QStringLiteral("en_XA")},
                    SpaceWay{{1280, 800}, parts::Theme::Light, 96, 1.0, true, QStringLiteral("he_XB")},
                    SpaceWay{{1280, 800}, parts::Theme::Dark, 96, 1.5, true, QStringLiteral("he_XB")},
                    SpaceWay{{1280, 800}, parts::Theme::Light, 96, 1.0, false, QStringLiteral("de")},
                    SpaceWay{{1280, 800}, parts::Theme::Light, 96, 1.5, false, QStringLiteral("de")}));

TEST(SpacesInTheWindow, TheRailNamesOnlySpacesThatHaveAWord)
{
    WholeWindow whole({{1280, 800}});
    QStringList words;
    for (const parts::Hit& hit : whole.window.rail().hits()) {
        words << hit.name;
    }
    EXPECT_TRUE(words.join(QLatin1Char(' ')).contains(QStringLiteral("Rules")));
    for (const QString& word : words) {
        EXPECT_FALSE(word.trimmed().isEmpty());
    }
    EXPECT_EQ(std::ranges::count_if(whole.window.rail().hits(), &parts::Hit::isButton), 4);
    whole.window.showSpace(QStringLiteral("whileaway"));
    EXPECT_TRUE(whole.away->isVisible());
}

} // namespace
} // namespace mend::app
