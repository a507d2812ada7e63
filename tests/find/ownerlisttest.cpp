// Owners out of a card file: chosen, looked through and kept by real clicks, on a real file.
#include "app/shell/ownerslink.h"

#include "tests/find/doorhouse.h"

#include <QFile>
#include <QScopeGuard>

namespace mend::app {
namespace {

/// Four that can be read: Tadhg is new, the next two may be Ines, who is here, and the fourth may be Tadhg again.
const char* const cards = "BEGIN:VCARD\nVERSION:4.0\nFN:Tadhg Ó Briain\nTEL:+353 20 913 0101\nEND:VCARD\n"
                          "BEGIN:VCARD\nVERSION:3.0\nFN:Ines V.\nTEL;TYPE=CELL:+44 20 7946 0142\nEND:VCARD\n"
                          "BEGIN:VCARD\nVERSION:3.0\nFN:Inés Vargas\nEMAIL:inesvargas@example.org\nEND:VCARD\n"
                          "BEGIN:VCARD\nVERSION:2.1\nFN:Tadgh O Briain\nEMAIL:tadhg@example.org\nEND:VCARD\n"
                          "BEGIN:VCARD\nVERSION:3.0\nTEL:020 7946 0199\nEND:VCARD\n";

struct OwnersFromAList : testing::Test {
    OwnersFromAList()
    {
        house.takeIn(DoorHouse::pageOf("Heron bowl", "Ines Varga", "020 7946 0142"));
        space.setLook(SpaceWay{{}, parts::Theme::Light}.look());
        space.resize(1148, 704);
        space.show();
        space.openSettings(SettingsPage::Owners);
    }
    QString put(const char* name, const std::string& text) const
    {
        const QString file = QString::fromStdString((house.scratch / name).string());
        QFile out(file);
        EXPECT_TRUE(out.open(QIODevice::WriteOnly));
        out.write(text.data(), static_cast<qint64>(text.size()));
        return file;
    }
    bool says(const char* words) { return mend::app::says(space.page(), QString::fromUtf8(words)); }
    /// Chooses a file as a person does once they are in its folder.
    void choose(const char* name, const std::string& text)
    {
        Q_EMIT space.ownerListChosen(put(name, text));
        EXPECT_TRUE(house.waitFor([&] { return !says("It is being looked through."); }));
    }
    std::vector<record::Customer> kept()
    {
        std::optional<std::vector<record::Customer>> people;
        house.door->allPeople([to = &people](const Result<std::vector<record::Customer>>& all) {
            *to = all ? all.value() : std::vector<record::Customer>();
        });
        house.waitFor([&] { return people.has_value(); });
        return people.value_or(std::vector<record::Customer>());
    }
    void tap(const char* key) { EXPECT_TRUE(click(space.page(), QString::fromLatin1(key))) << key; }

    DoorHouse house;
    SettingsSpace space{house.gate.gate};
    OwnersLink link{*house.door, space};
};

TEST_F(OwnersFromAList, AreShownBeforeAnybodyIsKept)
{
    choose("phone.vcf", cards);
    EXPECT_TRUE(says("4 people stand in it."));
    EXPECT_TRUE(says("Ines Varga"));
    EXPECT_TRUE(says("the contact is the same"));
    EXPECT_TRUE(says("the name is nearly the same"));
    EXPECT_TRUE(says("May be the one in line 1 of the same list."));
    EXPECT_TRUE(says("3 may be here already"));
    EXPECT_TRUE(says("Not as it should be")) << "the card without a name";
    EXPECT_TRUE(says("Take in this one"));
    EXPECT_EQ(kept().size(), 1U) << "nobody yet";
}

TEST_F(OwnersFromAList, OnlyThoseWhoAreChosenAreKeptAndOnce)
{
    choose("phone.vcf", cards);
    tap("owners/line/3"); // it is somebody else, says the mender
    EXPECT_TRUE(says("Take in these 2"));
    tap("owners/keep");
    ASSERT_TRUE(house.waitFor([&] { return says("2 owners are kept"); }));
    const auto people = kept();
    ASSERT_EQ(people.size(), 3U);
    EXPECT_EQ(people[1].name, "Tadhg Ó Briain");
    EXPECT_EQ(people[1].contact, "+353 20 913 0101");
    EXPECT_EQ(people[2].name, "Tadgh O Briain");
    EXPECT_FALSE(space.page().hit(QStringLiteral("owners/keep"))) << "a second tap finds nothing to keep";

    tap("owners/leave");
    choose("phone again.vcf", cards);
    EXPECT_TRUE(says("4 may be here already")) << "all of them are here now";
    EXPECT_TRUE(says("nobody is chosen"));
    click(space.page(), QStringLiteral("owners/keep"));
    EXPECT_FALSE(says("It is being looked through."));
    EXPECT_EQ(kept().size(), 3U);
}

TEST_F(OwnersFromAList, AFileThatIsNotThereIsSaidAndNothingIsKept)
{
    Q_EMIT space.ownerListChosen(QString::fromStdString((house.scratch / "gone.vcf").string()));
    EXPECT_TRUE(house.waitFor([&] { return says("This file cannot be read"); }));
    tap("owners/leave");
    EXPECT_TRUE(says("Choose a card file"));
    EXPECT_EQ(kept().size(), 1U);
}

TEST_F(OwnersFromAList, TheNewestChoiceIsTheOneThatIsShown)
{
    std::string many;
    for (int i = 0; i < 300; ++i) {
        many += "BEGIN:VCARD\nVERSION:4.0\nFN:Person " + std::to_string(1000 + i * 7) + "\nTEL:07700 90" +
                std::to_string(1000 + i) + "\nEND:VCARD\n";
    }
    Q_EMIT space.ownerListChosen(put("many.vcf", many));
    choose("phone.vcf", cards);
    QTest::qWait(300);
    EXPECT_TRUE(says("4 people stand in it."));
    tap("owners/leave");
    choose("many.vcf", many);
    EXPECT_TRUE(says("300 people stand in it."));
    EXPECT_TRUE(says("1 to 50 of 300"));
    tap("owners/later");
    EXPECT_TRUE(says("51 to 100 of 300"));
    EXPECT_TRUE(space.page().hit(QStringLiteral("owners/line/99")));
    EXPECT_FALSE(space.page().hit(QStringLiteral("owners/line/100")));
}

TEST_F(OwnersFromAList, AreFoundInTheFoldersOfTheMachine)
{
    put("phone.vcf", cards);
    put("notes.txt", "not a list");
    QString chosen;
    QObject::connect(&space, &SettingsSpace::ownerListChosen, &space,
                     [to = &chosen](const QString& file) { *to = file; });
    const QByteArray home = qgetenv("HOME");
    qputenv("HOME", QByteArray::fromStdString(house.scratch.folder().string()));
    const auto back = qScopeGuard([home] { qputenv("HOME", home); });
    space.openSettings(SettingsPage::Owners);
    EXPECT_FALSE(space.page().hit(QStringLiteral("owners/file/2"))) << "only lists are offered";
    tap("owners/file/1");
    EXPECT_EQ(chosen, QString::fromStdString((house.scratch / "phone.vcf").string()));
}

class OwnerListWalk : public testing::TestWithParam<SpaceWay> {};

TEST_P(OwnerListWalk, EverySpotCanBeHitReadAndNamed)
{
    const SpaceWay way = GetParam();
    GateClock clock;
    SettingsSpace space(clock.gate);
    way.dress(space);
    space.show();
    space.openSettings(SettingsPage::Owners);
    OwnerListNow list;
    list.file = QStringLiteral("phone.vcf");
    list.faults = {QStringLiteral("Line 12: the card is not closed")};
    for (int i = 0; i < 60; ++i) {
        list.lines.push_back(
            {QStringLiteral("Tadhg Ó Briain %1").arg(i),
             QStringLiteral("+353 20 913 0101 · tadhg@example.org"),
             {QStringLiteral("its letters were guessed")},
             i % 3 == 0 ? QStringLiteral("May be Ines Varga, who is here: the contact is the same.") : QString(),
             i % 3 == 0});
    }
    space.setOwnerList(list);
    const Walk found = walkSheets({&space.list(), &space.page()}, way.look());
    EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "");
    EXPECT_GE(found.acts, 50);
    EXPECT_GT(
        keepPicture(space, QStringLiteral("owners-%1-%2-%3").arg(way.size.width()).arg(int(way.theme)).arg(way.scale)),
        4);
}

INSTANTIATE_TEST_SUITE_P(Everywhere, OwnerListWalk, testing::ValuesIn(spaceWays()));

} // namespace
} // namespace mend::app
