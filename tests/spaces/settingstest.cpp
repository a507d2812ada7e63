#include "app/settings/settingsspace.h"

#include "tests/spaces/spacewalk.h"

#include <gtest/gtest.h>

namespace mend::app {
namespace {

using std::chrono::hours;
using std::chrono::minutes;

const Instant now_ = std::chrono::sys_days{std::chrono::year{2026} / 11 / 28} + hours(13);

SettingsNow given()
{
    SettingsNow now;
    now.studio.name = "Tideline Mending";
    now.studio.hours = *record::hoursFromText("mon 09:00-12:30 13:00-17:30\ntue 09:00-17:30\n2026-12-24 closed\n");
    now.people = {{PersonId(1), "Ruta"}, {PersonId(2), "Tomasz"}};
    now.places = {{PlaceId(1), "Bench", record::PlaceKind::Bench, 0},
                  {PlaceId(3), "Cabinet", record::PlaceKind::Cabinet, 4}};
    now.sound.devices = {QStringLiteral("Speakers"), QStringLiteral("Headphones")};
    now.pedalKey = QStringLiteral("F13");
    now.languages = {{QStringLiteral("en"), QStringLiteral("English")},
                     {QStringLiteral("de"), QStringLiteral("Deutsch")}};
    now.spoken = QStringLiteral("English");
    now.backups = {{now_ - hours(3), QStringLiteral("bench-2026-11-28T10-00-00.000Z.mendbackup"), 2'500'000},
                   {now_ - hours(27), QStringLiteral("bench-2026-11-27T10-00-00.000Z.mendbackup"), 2'400'000}};
    now.backupFolder = QStringLiteral("/home/ruta/bench/backups");
    now.at = now_;
    return now;
}

std::vector<PaperTextNow> paperTexts()
{
    return {{QStringLiteral("care.general"),
             QStringLiteral("On every care sheet"),
             {QStringLiteral("For display or dry use."), QStringLiteral("No dishwasher, no oven.")},
             false},
            {QStringLiteral("quote.estimate"),
             QStringLiteral("On the quote, below the figures"),
             {QStringLiteral("This is our estimate.")},
             true}};
}

class SettingsScreen : public testing::Test {
protected:
    SettingsScreen()
    {
        space.resize(1148, 704);
        space.setLook(SpaceWay{{}, parts::Theme::Light}.look());
        space.setNow(given());
        space.show();
        auto* at = &space;
        QObject::connect(at, &SettingsSpace::studioTold, at,
                         [this](const service::Studio& studio) { studios.push_back(studio); });
        QObject::connect(at, &SettingsSpace::personTold, at,
                         [this](const record::Person& person) { people.push_back(person); });
        QObject::connect(at, &SettingsSpace::placeTold, at,
                         [this](const record::Place& place) { places.push_back(place); });
        QObject::connect(at, &SettingsSpace::lookWished, at, [this](const LookWishes& look) { looks.push_back(look); });
        QObject::connect(at, &SettingsSpace::soundTestWanted, at, [this] { ++tests; });
        QObject::connect(at, &SettingsSpace::soundHeard, at, [this](bool yes) { heard.push_back(yes); });
        QObject::connect(at, &SettingsSpace::pedalKeyChosen, at, [this](int key) { keys.push_back(key); });
        QObject::connect(at, &SettingsSpace::backupWanted, at, [this] { ++backups; });
    }
    void open(SettingsPage page) { ASSERT_TRUE(click(space.list(), QStringLiteral("settings/%1").arg(int(page)))); }
    void tap(const char* key) { EXPECT_TRUE(click(space.page(), QString::fromLatin1(key))) << key; }
    void keys_(const char* field, const char* words)
    {
        EXPECT_TRUE(type(space.page(), QString::fromLatin1(field), QString::fromLatin1(words))) << field;
    }
    GateClock clock;
    SettingsSpace space{clock.gate};
    std::vector<service::Studio> studios;
    std::vector<record::Person> people;
    std::vector<record::Place> places;
    std::vector<LookWishes> looks;
    std::vector<bool> heard;
    std::vector<int> keys;
    int tests = 0;
    int backups = 0;
};

TEST_F(SettingsScreen, NamesTheStudio)
{
    open(SettingsPage::Studio);
    keys_("studio/name", " Low  Tide ");
    tap("studio/keep");
    ASSERT_EQ(studios.size(), 1U);
    EXPECT_EQ(studios.front().name, "Low Tide");
    EXPECT_EQ(studios.front().hours, given().studio.hours) << "nothing else changes";
}

TEST_F(SettingsScreen, TakesHoursAsAWeek)
{
    open(SettingsPage::Hours);
    EXPECT_EQ(space.page().field(QStringLiteral("hours/0"))->text(), QStringLiteral("09:00-12:30 13:00-17:30"));
    keys_("hours/1", "10:00-16:00");
    keys_("hours/0", "");
    tap("hours/keep");
    ASSERT_EQ(studios.size(), 1U);
    EXPECT_TRUE(studios.front().hours.week[0].empty());
    EXPECT_EQ(studios.front().hours.week[1], (std::vector<record::DayPart>{{minutes(600), minutes(960)}}));
    EXPECT_EQ(studios.front().hours.exceptions, given().studio.hours.exceptions);
}

TEST_F(SettingsScreen, TakesDatesThatAreNotLikeTheirWeekday)
{
    using namespace std::chrono;
    open(SettingsPage::Hours);
    for (const auto& [date, parts] : {std::pair{"24 December", ""}, std::pair{"2026-02-30", ""},
                                      std::pair{"2026-12-23", "17:00-09:00"}, std::pair{"mon", "09:00-10:00"}}) {
        keys_("hours/date", date);
        keys_("hours/date/parts", parts);
        tap("hours/date/keep");
        EXPECT_TRUE(studios.empty()) << date << parts;
        EXPECT_FALSE(space.page().field(QStringLiteral("hours/date"))->accessibleDescription().isEmpty());
    }
    keys_("hours/date", "2026-12-23");
    keys_("hours/date/parts", "09:00-12:00");
    tap("hours/date/keep");
    ASSERT_EQ(studios.size(), 1U);
    EXPECT_EQ(studios.back().hours.exceptions.size(), 2U);
    EXPECT_EQ(studios.back().hours.on(year{2026} / 12 / 23), (std::vector<record::DayPart>{{hours(9), hours(12)}}));
    EXPECT_EQ(studios.back().hours.week, given().studio.hours.week);
    tap("hours/date/2026-12-24/drop");
    ASSERT_EQ(studios.size(), 2U);
    EXPECT_FALSE(studios.back().hours.exceptions.contains(year{2026} / 12 / 24));
}

TEST_F(SettingsScreen, APersonMayKeepHoursOfTheirOwn)
{
    open(SettingsPage::People);
    tap("person/2/hours");
    EXPECT_TRUE(says(space.page(), QStringLiteral("Tomasz")));
    EXPECT_TRUE(space.page().field(QStringLiteral("hours/0"))->text().isEmpty());
    keys_("hours/0", "13:00-17:00");
    tap("hours/keep");
    ASSERT_EQ(studios.size(), 1U);
    EXPECT_EQ(studios.front().hours, given().studio.hours) << "the bench keeps its own";
    EXPECT_EQ(studios.front().ownHours.at(PersonId(2)).week[0], (std::vector<record::DayPart>{{hours(13), hours(17)}}));
    tap("hours/people");
    EXPECT_TRUE(says(space.page(), QStringLiteral("Somebody new")));
}

TEST_F(SettingsScreen, LettersOnTheGlassAreAWishOfThisMachine)
{
    open(SettingsPage::Hands);
    tap("hands/letters/1");
    ASSERT_EQ(looks.size(), 1U);
    EXPECT_TRUE(looks.back().letters);
}

TEST_F(SettingsScreen, PointsAtTheDayWhoseHoursMakeNoSense)
{
    open(SettingsPage::Hours);
    for (const char* wrong : {"17:00-09:00", "nine to five", "09:00-12:00 11:00-13:00", "09:00-25:00"}) {
        keys_("hours/2", wrong);
        tap("hours/keep");
        EXPECT_TRUE(studios.empty()) << wrong;
        EXPECT_FALSE(space.page().field(QStringLiteral("hours/2"))->accessibleDescription().isEmpty()) << wrong;
        EXPECT_TRUE(space.page().field(QStringLiteral("hours/1"))->accessibleDescription().isEmpty()) << wrong;
    }
    keys_("hours/2", "09:00-12:00");
    tap("hours/keep");
    EXPECT_EQ(studios.size(), 1U);
}

TEST_F(SettingsScreen, AddsAndRenamesPeople)
{
    open(SettingsPage::People);
    tap("person/new/keep");
    EXPECT_TRUE(people.empty()) << "nobody without a name";
    keys_("person/new", "Ines");
    tap("person/new/keep");
    keys_("person/2", "Tomas");
    tap("person/2/keep");
    EXPECT_EQ(people, (std::vector<record::Person>{{PersonId(), "Ines"}, {PersonId(2), "Tomas"}}));
}

TEST_F(SettingsScreen, AddsAndChangesPlaces)
{
    open(SettingsPage::Places);
    keys_("place/name", "Humid box");
    tap("place/kind/3");
    keys_("place/slots", "six");
    tap("place/keep");
    EXPECT_TRUE(places.empty());
    keys_("place/slots", "6");
    tap("place/keep");
    tap("place/3");
    keys_("place/slots", "5");
    tap("place/keep");
    EXPECT_EQ(places, (std::vector<record::Place>{{PlaceId(), "Humid box", record::PlaceKind::HumidBox, 6},
                                                  {PlaceId(3), "Cabinet", record::PlaceKind::Cabinet, 5}}));
}

TEST_F(SettingsScreen, AsksAPersonWhetherTheSoundWasHeard)
{
    open(SettingsPage::Sound);
    EXPECT_FALSE(space.page().hit(QStringLiteral("sound/yes"))) << "not before it was played";
    tap("sound/test");
    EXPECT_EQ(tests, 1);
    EXPECT_EQ(space.page().hit(QStringLiteral("sound/yes"))->rect.size(),
              space.page().hit(QStringLiteral("sound/no"))->rect.size());
    tap("sound/no");
    EXPECT_EQ(heard, std::vector<bool>{false});
    EXPECT_TRUE(says(space.page(), QStringLiteral("try it louder")));
    EXPECT_TRUE(says(space.list(), QStringLiteral("was not heard")));
    tap("sound/test");
    tap("sound/yes");
    EXPECT_EQ(heard.back(), true);
    EXPECT_TRUE(says(space.list(), QStringLiteral("was heard")));
}

TEST_F(SettingsScreen, SoundCanBeSetOffAndOnAgain)
{
    std::vector<bool> offs;
    QObject::connect(&space, &SettingsSpace::soundOffChosen, &space,
                     [seen = &offs](bool off) { seen->push_back(off); });
    open(SettingsPage::Sound);
    tap("sound/off/1");
    ASSERT_EQ(offs, std::vector<bool>{true});
    EXPECT_TRUE(says(space.page(), QStringLiteral("Sound is off"))) << "what it means is said";
    tap("sound/off/0");
    EXPECT_EQ(offs.back(), false);
    EXPECT_FALSE(says(space.page(), QStringLiteral("Sound is off")));
}

TEST_F(SettingsScreen, WishesForALook)
{
    open(SettingsPage::Look);
    tap("look/theme/1");
    tap("look/scale/150");
    tap("look/motion/1");
    open(SettingsPage::Hands);
    tap("hands/left/1");
    ASSERT_EQ(looks.size(), 4U);
    EXPECT_EQ(looks.back(), (LookWishes{parts::Theme::Dark, 1.5, true, true, {}}));
    tap("hands/left/1");
    EXPECT_EQ(looks.size(), 4U) << "the same wish is no wish";
}

/// ISO/IEC 7810 ID-1: 85.60 mm x 53.98 mm.
TEST_F(SettingsScreen, DrawsABankCardInItsTrueSizeWhateverTheScale)
{
    open(SettingsPage::ScreenSize);
    for (const double scale : {1.0, 1.5, 2.0}) {
        for (const double dpi : {96.0, 149.0, 220.0}) {
            const auto look = parts::lookOf(parts::Theme::Light, parts::Measure(dpi, scale));
            space.setLook(look);
            const auto hits = space.page().hits();
            const auto frame = std::ranges::find_if(hits, [](const parts::Hit& hit) {
                return hit.name == QStringLiteral("A frame as large as a bank card");
            });
            ASSERT_NE(frame, hits.end());
            EXPECT_NEAR(frame->rect.width() * 25.4 / dpi, 85.60, 0.3) << dpi << " at " << scale;
            EXPECT_NEAR(frame->rect.height() * 25.4 / dpi, 53.98, 0.3) << dpi << " at " << scale;
        }
    }
}

TEST_F(SettingsScreen, TheCardMeasuresTheScreenWithinReason)
{
    SettingsNow now = given();
    now.look.dpi = 100.0;
    space.setNow(now);
    open(SettingsPage::ScreenSize);
    tap("screen/1");
    ASSERT_EQ(looks.size(), 1U);
    EXPECT_NEAR(*looks.back().dpi, 101.0, 1e-9);
    tap("screen/own");
    EXPECT_FALSE(looks.back().dpi);
    now.look.dpi = 71.0;
    space.setNow(now);
    EXPECT_FALSE(space.page().hit(QStringLiteral("screen/-5"))->canAct()) << "no screen reads under 70";
}

TEST_F(SettingsScreen, LearnsThePedalByItsKey)
{
    open(SettingsPage::Hands);
    tap("hands/pedal/choose");
    QTest::keyClick(&space.page(), Qt::Key_F15);
    EXPECT_EQ(keys, std::vector<int>{Qt::Key_F15});
    QTest::keyClick(&space.page(), Qt::Key_F16);
    EXPECT_EQ(keys.size(), 1U) << "only the next key counts";
    tap("hands/pedal/choose");
    QTest::keyClick(&space.page(), Qt::Key_Escape);
    EXPECT_EQ(keys.size(), 1U);
    tap("hands/pedal/none");
    EXPECT_EQ(keys.back(), 0);
}

TEST_F(SettingsScreen, ChoosesUnits)
{
    open(SettingsPage::Units);
    tap("units/fahrenheit");
    tap("units/in");
    ASSERT_EQ(studios.size(), 2U);
    EXPECT_TRUE(studios.back().fahrenheit && studios.back().inches);
}

TEST_F(SettingsScreen, ListsTheBackupsWithDateAndSize)
{
    open(SettingsPage::Backup);
    tap("backup/now");
    EXPECT_EQ(backups, 1);
    EXPECT_TRUE(says(space.page(), QStringLiteral("/home/ruta/bench/backups")));
    EXPECT_TRUE(says(space.page(), QStringLiteral("2.5 MB; checked when it was made")));
    EXPECT_TRUE(says(space.page(), QStringLiteral("3 h ago")));
}

TEST_F(SettingsScreen, GoesBackToABackupOnlyOnceItWasFoundGood)
{
    QStringList picked;
    QStringList gone;
    QObject::connect(&space, &SettingsSpace::backupPicked, &space,
                     [seen = &picked](const QString& file) { *seen << file; });
    QObject::connect(&space, &SettingsSpace::goingBackWanted, &space,
                     [seen = &gone](const QString& file) { *seen << file; });
    const QString file = QStringLiteral("bench-2026-11-27T10-00-00.000Z.mendbackup");
    open(SettingsPage::Backup);
    tap("backup/bench-2026-11-27T10-00-00.000Z.mendbackup");
    EXPECT_EQ(picked, QStringList{file});
    EXPECT_TRUE(says(space.page(), QStringLiteral("being looked through")));
    EXPECT_FALSE(space.page().hit(QStringLiteral("backup/goback"))->canAct());

    SettingsNow now = given();
    now.seen = BackupSeen{file, QStringLiteral("This backup is not as it was made."), 0, 0, 0, {}, 0};
    space.setNow(now);
    EXPECT_TRUE(says(space.page(), QStringLiteral("not as it was made")));
    EXPECT_FALSE(space.page().hit(QStringLiteral("backup/goback"))->canAct());

    now.seen = BackupSeen{file, {}, 41, 8, 1234, now_ - hours(30), 2};
    space.setNow(now);
    for (const char* words : {"Pieces in the house then", "8", "41", "kept aside", "2 of its pictures are gone"}) {
        EXPECT_TRUE(says(space.page(), QString::fromLatin1(words))) << words;
    }
    tap("backup/goback");
    EXPECT_EQ(gone, QStringList{file});
    tap("backup/leave");
    EXPECT_TRUE(says(space.page(), QStringLiteral("Make one now")));
}

TEST_F(SettingsScreen, TheWordsOfAPaperAreRewrittenParagraphByParagraph)
{
    QStringList told;
    QObject::connect(&space, &SettingsSpace::paperTextTold, &space,
                     [to = &told](const QString& key, const QString& words) {
                         *to += {key, words};
                     });
    space.setPaperTexts(paperTexts());
    open(SettingsPage::Papers);
    EXPECT_TRUE(says(space.list(), QStringLiteral("1 of them your own")));
    tap("settings/paper/care.general");
    keys_("paragraph/1", "No oven.");
    keys_("paragraph/2", "Ask us.");
    tap("papertext/keep");
    EXPECT_EQ(told, QStringList({QStringLiteral("care.general"),
                                 QStringLiteral("For display or dry use.\nNo oven.\nAsk us.")}));
}

TEST_F(SettingsScreen, OnlyOwnWordsCanBeSetBack)
{
    QStringList told;
    QObject::connect(&space, &SettingsSpace::paperTextTold, &space,
                     [to = &told](const QString& key, const QString& words) {
                         *to += {key, words};
                     });
    space.setPaperTexts(paperTexts());
    open(SettingsPage::Papers);
    tap("settings/paper/care.general");
    EXPECT_FALSE(space.page().hit(QStringLiteral("papertext/reset")));
    tap("settings/papers");
    tap("settings/paper/quote.estimate");
    tap("papertext/reset");
    EXPECT_EQ(told, QStringList({QStringLiteral("quote.estimate"), QString()}));
}

TEST_F(SettingsScreen, OffersEveryLanguageByItsOwnName)
{
    QStringList chosen;
    QObject::connect(&space, &SettingsSpace::languageChosen, &space,
                     [seen = &chosen](const QString& code) { *seen << code; });
    open(SettingsPage::Language);
    EXPECT_TRUE(says(space.page(), QStringLiteral("Deutsch")));
    EXPECT_TRUE(says(space.list(), QStringLiteral("English"))) << "what is spoken now";
    EXPECT_TRUE(space.page().hit(QStringLiteral("language/"))->chosen) << "nothing was told: as the machine";
    tap("language/de");
    tap("language/");
    EXPECT_EQ(chosen, (QStringList{QStringLiteral("de"), QString()}));
    SettingsNow now = given();
    now.studio.language = "de";
    space.setNow(now);
    EXPECT_TRUE(space.page().hit(QStringLiteral("language/de"))->chosen);
}

class SettingsWalk : public SpaceWalk {};

TEST_P(SettingsWalk, EverySpotOfEveryPageCanBeHitReadAndNamed)
{
    const SpaceWay way = GetParam();
    GateClock clock;
    SettingsSpace space(clock.gate);
    way.dress(space);
    space.setNow(given());
    space.show();
    space.setPaperTexts(paperTexts());
    for (int page = 0; page <= int(SettingsPage::Owners); ++page) {
        space.openSettings(static_cast<SettingsPage>(page));
        if (static_cast<SettingsPage>(page) == SettingsPage::Sound) {
            space.askHeard();
        }
        if (static_cast<SettingsPage>(page) == SettingsPage::Papers) {
            click(space.page(), QStringLiteral("settings/paper/quote.estimate"));
        }
        const Walk found = walkSheets({&space.list(), &space.page()}, way.look());
        EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "") << "page " << page;
        EXPECT_GE(found.acts, 1) << "page " << page;
        EXPECT_GT(keepPicture(space, way.picture(QStringLiteral("settings-%1").arg(page))), 4);
    }
}

INSTANTIATE_TEST_SUITE_P(Everywhere, SettingsWalk, testing::ValuesIn(spokenWays()));

} // namespace
} // namespace mend::app
