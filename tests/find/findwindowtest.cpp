// Find in the real window on a real file: real keys, real clicks.
#include "tests/find/doorhouse.h"

namespace mend::app {
namespace {

struct Found : testing::Test {
    Found()
    {
        heron = house.takeIn(
            DoorHouse::pageOf("Heron bowl", "Ines Varga", "020 7946 0142", "small blue bowl with a heron"));
        reeds = house.takeIn(DoorHouse::pageOf("Reed dish", "Odile Marsh", "020 7946 0187", "blue dish with reeds"));
        jug = house.takeIn(DoorHouse::pageOf("Milk jug", "Ines Varga", "020 7946 0190", "white jug, no handle"));
    }
    FindSpace& find() { return house.link->find(); }
    QLineEdit* field() { return find().list().field(QStringLiteral("find")); }
    bool answered(const QString& typed, const QString& words)
    {
        type(find().list(), QStringLiteral("find"), typed);
        return house.waitFor([&] { return says(find().list(), words); });
    }
    bool shows(PieceId piece) { return find().list().hit(QStringLiteral("find/piece/%1").arg(piece.value())); }

    DoorHouse house;
    PieceId heron;
    PieceId reeds;
    PieceId jug;
};

TEST_F(Found, OneKeyOpensItFromAnywhereReadyToType)
{
    ASSERT_EQ(house.window->spaceShown(), QStringLiteral("bench"));
    house.window->bench().setFocus();
    QTest::keyClick(&house.window->bench(), Qt::Key_F3);
    EXPECT_EQ(house.window->spaceShown(), QStringLiteral("find"));
    ASSERT_TRUE(field());
    EXPECT_EQ(house.window->focusWidget(), field());
}

TEST_F(Found, WhatItLooksLikeIsEnoughWithSlipsAndInAnyOrder)
{
    house.link->openFind();
    ASSERT_TRUE(answered(QStringLiteral("bleu bowl herron"), QStringLiteral("Heron bowl")));
    EXPECT_TRUE(shows(heron));
    EXPECT_FALSE(shows(jug));
    EXPECT_TRUE(answered(QStringLiteral("reeds blue"), QStringLiteral("Reed dish")));
}

TEST_F(Found, APersonOrAPhoneLeadsToAllTheirPieces)
{
    house.link->openFind();
    ASSERT_TRUE(answered(QStringLiteral("odile"), QStringLiteral("Reed dish")));
    ASSERT_TRUE(answered(QStringLiteral("79460142"), QStringLiteral("Heron bowl")));
    ASSERT_TRUE(answered(QStringLiteral("marsh"), QStringLiteral("Odile Marsh")));
    const auto& hits = find().list().hits();
    const auto person = std::ranges::find_if(
        hits, [](const parts::Hit& hit) { return hit.key.startsWith(QLatin1String("find/person/")); });
    ASSERT_NE(person, hits.end());
    ASSERT_TRUE(click(find().list(), person->key));
    EXPECT_TRUE(house.waitFor([&] { return says(find().list(), QStringLiteral("Pieces of")); }));
    EXPECT_TRUE(shows(reeds));
    EXPECT_FALSE(shows(heron)) << "one person's facts only";
}

TEST_F(Found, AWrongDigitIsSaidAtOnce)
{
    house.link->openFind();
    QString number = QString::fromStdString(house.numberOf(heron));
    number[3] = number[3] == QLatin1Char('9') ? QLatin1Char('1') : QLatin1Char('9');
    ASSERT_TRUE(answered(number, QStringLiteral("one digit is wrong")));
    ASSERT_TRUE(answered(QString::fromStdString(house.numberOf(heron)), QStringLiteral("Heron bowl")));
    EXPECT_FALSE(says(find().list(), QStringLiteral("one digit is wrong")));
}

TEST_F(Found, ThePieceThatIsOpenedSaysWhenItMayGoAndLeadsOn)
{
    house.link->openFind();
    ASSERT_TRUE(answered(QStringLiteral("heron"), QStringLiteral("Heron bowl")));
    ASSERT_TRUE(house.waitFor([&] { return says(find().page(), QStringLiteral("Promised for")); }));
    EXPECT_TRUE(says(find().page(), QStringLiteral("May 14, 2027")));
    EXPECT_TRUE(says(find().page(), QStringLiteral("020 7946 0142")));
    EXPECT_TRUE(says(find().page(), QStringLiteral("5 fragments came in")));
    ASSERT_TRUE(click(find().page(), QStringLiteral("find/open")));
    EXPECT_EQ(house.wanted, heron);
}

TEST_F(Found, WithoutATextItSaysWhatWaitsAndOpensIt)
{
    record::Intake page = DoorHouse::pageOf("Blue cup", "Jun Hollis", "020 7946 0170");
    page.agreed = false;
    const PieceId cup = house.takeIn(page);
    house.link->openFind();
    ASSERT_TRUE(click(find().list(), QStringLiteral("find/list/waits")));
    EXPECT_TRUE(says(find().page(), QStringLiteral("1 piece waits for its owner")));
    ASSERT_TRUE(click(find().page(), QStringLiteral("find/piece/%1").arg(cup.value())));
    EXPECT_TRUE(house.waitFor([&] { return find().page().hit(QStringLiteral("find/open")); }));
    ASSERT_TRUE(click(find().page(), QStringLiteral("find/back")));
    EXPECT_TRUE(says(find().page(), QStringLiteral("1 piece waits for its owner")));
}

TEST_F(Found, WithOwnersHiddenNoNameStandsInTheList)
{
    house.window->bench().hideOwners(true);
    house.link->openFind();
    ASSERT_TRUE(answered(QStringLiteral("blue"), QStringLiteral("Heron bowl")));
    for (const char* name : {"Varga", "Marsh", "7946"}) {
        EXPECT_FALSE(says(find().list(), QString::fromLatin1(name))) << name;
        EXPECT_FALSE(says(find().page(), QString::fromLatin1(name))) << name;
    }
}

TEST_F(Found, EnterTakesTheFirstAndOnceMoreOpensIt)
{
    house.link->openFind();
    ASSERT_TRUE(answered(QStringLiteral("varga"), QStringLiteral("Milk jug")));
    QTest::keyClick(field(), Qt::Key_Return);
    const PieceId first = find().chosen();
    EXPECT_TRUE(first.isSet());
    QTest::qWait(ScanEar::longestPause * 2);
    QTest::keyClick(field(), Qt::Key_Return);
    EXPECT_EQ(house.wanted, first);
}

TEST_F(Found, AScannerBringsThePieceUpFromAnySpace)
{
    house.window->bench().setFocus();
    const QString number = QString::fromStdString(house.numberOf(reeds));
    QTest::keyClicks(&house.window->bench(), number);
    QTest::keyClick(&house.window->bench(), Qt::Key_Return);
    ASSERT_TRUE(house.waitFor([&] { return house.wanted.isSet(); }));
    EXPECT_EQ(house.wanted, reeds);
}

TEST_F(Found, AScannedNumberThatDoesNotHoldTogetherSaysSo)
{
    house.window->bench().setFocus();
    QTest::keyClicks(&house.window->bench(), QStringLiteral("2700012"));
    QTest::keyClick(&house.window->bench(), Qt::Key_Return);
    ASSERT_TRUE(house.waitFor([&] { return house.window->spaceShown() == QLatin1String("find"); }));
    EXPECT_TRUE(says(find().list(), QStringLiteral("one digit is wrong")));
    EXPECT_FALSE(house.wanted.isSet());
}

TEST_F(Found, NothingTypedCanDoHarm)
{
    house.link->openFind();
    for (const char* words : {"\"' OR 1=1 --", "%_*", "<b>bowl</b>", "../../etc", "\\"}) {
        type(find().list(), QStringLiteral("find"), QString::fromLatin1(words));
        EXPECT_TRUE(house.waitFor([&] {
            return says(find().list(), QStringLiteral("Nothing like that")) ||
                   says(find().list(), QStringLiteral("Heron bowl"));
        })) << words;
    }
    ASSERT_TRUE(answered(QStringLiteral("heron"), QStringLiteral("Heron bowl")));
}

} // namespace
} // namespace mend::app
