#include "tests/piece/piecesample.h"
#include "tests/spaces/spacewalk.h"

#include <gtest/gtest.h>

namespace mend::app {
namespace {

class AtTheCounter : public testing::Test {
protected:
    AtTheCounter()
    {
        space.setManner(samples::pieceManner());
        space.resize(1148, 704);
        space.setLook(SpaceWay{{}, parts::Theme::Light}.look());
        space.setNow(samples::handOverNow());
        space.show();
        QObject::connect(&space, &HandOverSpace::handedOver, &space,
                         [this](const service::HandingOver& handed, const QImage& drawn) {
                             told.push_back(handed);
                             signature = drawn;
                         });
    }

    bool tap(const char* key)
    {
        const QString wanted = QLatin1String(key);
        return click(space.list(), wanted) || click(space.page(), wanted);
    }
    /// A real stroke over the pad.
    void sign()
    {
        auto& pad = space.pad();
        QTest::mousePress(&pad, Qt::LeftButton, {}, QPoint(40, 60));
        for (int x = 40; x < 200; x += 20) {
            QTest::mouseMove(&pad, QPoint(x, 60 + x % 40));
        }
        QTest::mouseRelease(&pad, Qt::LeftButton, {}, QPoint(200, 60));
    }
    void answerAllButFragments()
    {
        ASSERT_TRUE(tap("handover/accessory/0"));
        ASSERT_TRUE(tap("handover/accessory/1"));
        ASSERT_TRUE(tap("handover/early/still"));
        ASSERT_TRUE(tap("handover/paid"));
        ASSERT_TRUE(tap("handover/who/owner"));
        sign();
    }

    GateClock clock;
    HandOverSpace space{clock.gate};
    std::vector<service::HandingOver> told;
    QImage signature;
};

TEST_F(AtTheCounter, SaysFromWhenInWordsAndWhatIsOwed)
{
    EXPECT_TRUE(says(space.list(), QStringLiteral("3 December 2026")));
    EXPECT_TRUE(says(space.page(), QStringLiteral("its lacquer wants that long")));
    EXPECT_TRUE(says(space.page(), QStringLiteral("96.00")));
}

TEST_F(AtTheCounter, TellsTheWholeHandOverAtOnce)
{
    answerAllButFragments();
    ASSERT_TRUE(tap("handover/fragments/all"));
    ASSERT_TRUE(tap("handover/done"));
    ASSERT_EQ(told.size(), 1U);
    service::HandingOver expected;
    expected.piece = PieceId(17);
    expected.fragmentsOut = 7;
    expected.accessoriesOut = 3;
    expected.waitReason = "The owner lets it stand untouched until then";
    expected.paid = Money(9600, "GBP");
    expected.takenBy = "Ines Varga";
    expected.signedHow = "drawn";
    EXPECT_EQ(told.front(), expected);
    EXPECT_GT(signature.width(), 100);
}

TEST_F(AtTheCounter, AMissingFragmentIsSaidAndMustBeAnswered)
{
    answerAllButFragments();
    ASSERT_TRUE(type(space.list(), QStringLiteral("fragments"), QStringLiteral("6")));
    EXPECT_TRUE(says(space.list(), QStringLiteral("1 fragment is missing")));
    ASSERT_TRUE(tap("handover/done"));
    EXPECT_TRUE(told.empty());
    EXPECT_TRUE(says(space.page(), QStringLiteral("Say what becomes of that which is missing")));
    ASSERT_TRUE(tap("handover/missing/stays"));
    ASSERT_TRUE(tap("handover/done"));
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told.front().fragmentsOut, 6);
    EXPECT_EQ(told.front().missing, "It stays here and is looked for");
}

TEST_F(AtTheCounter, AnAccessoryThatIsNotTickedIsMissing)
{
    ASSERT_TRUE(tap("handover/accessory/0"));
    EXPECT_TRUE(says(space.list(), QStringLiteral("2 things that came with it are missing")));
}

TEST_F(AtTheCounter, EverythingThatIsOpenIsListedAndNothingTold)
{
    ASSERT_TRUE(tap("handover/done"));
    EXPECT_TRUE(told.empty());
    EXPECT_EQ(space.open().size(), 6);
    for (const QString& words : space.open()) {
        EXPECT_TRUE(says(space.page(), words)) << words.toStdString();
    }
}

TEST_F(AtTheCounter, MoreThanCameInIsAskedAbout)
{
    ASSERT_TRUE(type(space.list(), QStringLiteral("fragments"), QStringLiteral("8")));
    EXPECT_TRUE(says(space.list(), QStringLiteral("More go out than came in")) ||
                space.list()
                    .field(QStringLiteral("fragments"))
                    ->accessibleDescription()
                    .contains(QStringLiteral("More go out")));
}

TEST_F(AtTheCounter, WhatWasSignedOnPaperNeedsNoDrawing)
{
    ASSERT_TRUE(tap("handover/onpaper"));
    EXPECT_FALSE(space.pad().isVisible());
    EXPECT_EQ(space.told().signedHow, "onPaper");
}

TEST_F(AtTheCounter, ASignatureIsWipedOff)
{
    sign();
    EXPECT_EQ(space.told().signedHow, "drawn");
    ASSERT_TRUE(tap("handover/wipe"));
    EXPECT_TRUE(space.pad().picture().isNull());
    EXPECT_EQ(space.told().signedHow, "");
}

TEST_F(AtTheCounter, AnotherPieceBeginsAnew)
{
    answerAllButFragments();
    auto other = samples::handOverNow();
    other->file.piece.id = PieceId(18);
    space.setNow(other);
    service::HandingOver blank;
    blank.piece = PieceId(18);
    EXPECT_EQ(space.told(), blank);
    EXPECT_TRUE(space.pad().isEmpty());
}

TEST_F(AtTheCounter, WhatChangesMeanwhileKeepsTheAnswers)
{
    answerAllButFragments();
    const auto before = space.told();
    space.setNow(samples::handOverNow());
    EXPECT_EQ(space.told(), before);
}

TEST_F(AtTheCounter, OneWithWorkToDoGoesBackUnmendedWithAReason)
{
    auto now = samples::handOverNow();
    now->facts.from.reset();
    now->facts.collectable.reset();
    now->facts.against = {service::HandOverFacts::Against::WorkToDo};
    space.setNow(now);
    EXPECT_TRUE(says(space.page(), QStringLiteral("It can only go back unmended")));
    ASSERT_TRUE(tap("handover/unmended/owner"));
    EXPECT_EQ(space.told().unmended, "The owner wants it back");
}

TEST_F(AtTheCounter, AfterwardsItCanBeTakenBackAndThePapersWritten)
{
    QStringList wanted;
    bool undone = false;
    QObject::connect(&space, &HandOverSpace::paperWanted, &space, [to = &wanted](const QString& key) { *to += key; });
    QObject::connect(&space, &HandOverSpace::undoWanted, &space, [to = &undone] { *to = true; });
    HandedOver done;
    done.words = QStringLiteral("Heron bowl is handed over");
    done.papers = {{QStringLiteral("out-receipt"), QStringLiteral("Receipt at hand-over"), {}}};
    done.canUndo = true;
    space.setDone(done);
    EXPECT_TRUE(says(space.page(), QStringLiteral("not stored yet")));
    ASSERT_TRUE(tap("handover/see/paper/all"));
    ASSERT_TRUE(tap("handover/see/paper/out-receipt"));
    EXPECT_EQ(wanted, QStringList({QStringLiteral("all"), QStringLiteral("out-receipt")}));
    ASSERT_TRUE(tap("handover/undo"));
    EXPECT_TRUE(undone);
}

class HandOverWalk : public SpaceWalk {};

TEST_P(HandOverWalk, EverySpotCanBeHitReadAndNamed)
{
    const SpaceWay way = GetParam();
    GateClock clock;
    HandOverSpace space(clock.gate);
    space.setManner(samples::pieceManner());
    way.dress(space);
    space.setNow(samples::handOverNow());
    space.show();
    const auto look = [&](const char* step) {
        const Walk found = walkSheets({&space.list(), &space.page()}, way.look());
        EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "") << step;
        EXPECT_GT(keepPicture(space, way.picture(QStringLiteral("handover-%1").arg(QLatin1String(step)))), 4);
    };
    look("begin");
    type(space.list(), QStringLiteral("fragments"), QStringLiteral("6"));
    click(space.list(), QStringLiteral("handover/accessory/0"));
    click(space.page(), QStringLiteral("handover/done"));
    look("short");
    HandedOver done;
    done.words = QStringLiteral("Heron bowl is handed over");
    done.papers = {{QStringLiteral("out-receipt"), QStringLiteral("Receipt at hand-over"), {}}};
    done.canUndo = true;
    space.setDone(done);
    look("done");
}

INSTANTIATE_TEST_SUITE_P(Everywhere, HandOverWalk, testing::ValuesIn(spokenWays()));

} // namespace
} // namespace mend::app
