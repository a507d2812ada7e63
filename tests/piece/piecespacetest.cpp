#include "tests/piece/piecesample.h"

#include "tests/spaces/spacewalk.h"
#include "tests/support/scratch.h"

#include <QApplication>
#include <QClipboard>
#include <QDir>
#include <QDropEvent>
#include <QMimeData>
#include <QRegularExpression>
#include <gtest/gtest.h>

namespace mend::app {
namespace {

const std::string first(64, 'a');

class PieceAtHome : public testing::Test {
protected:
    PieceAtHome()
    {
        space.setManner(samples::pieceManner());
        space.resize(1148, 704);
        space.setLook(SpaceWay{{}, parts::Theme::Light}.look());
        space.setNow(samples::pieceNow());
        space.show();
        QObject::connect(&space, &PieceSpace::photoNoted, &space,
                         [this](const store::PhotoUse& use, const record::PhotoNote& note) {
                             uses.push_back(use);
                             notes.push_back(note);
                         });
        QObject::connect(&space, &PieceSpace::photosChosen, &space,
                         [this](const QStringList& paths, const QString& for_) {
                             chosen = paths;
                             purpose = for_;
                         });
    }

    bool open(PiecePage page) { return click(space.list(), QStringLiteral("home/see/%1").arg(int(page))); }

    GateClock clock;
    PieceSpace space{clock.gate};
    std::vector<store::PhotoUse> uses;
    std::vector<record::PhotoNote> notes;
    QStringList chosen;
    QString purpose;
};

TEST_F(PieceAtHome, KeepsWhatIsSeenApartFromWhatIsInferred)
{
    QStringList order;
    for (const parts::Hit& hit : space.page().hits()) {
        order += hit.name;
    }
    const auto at = [&](const char* words) { return order.indexOf(QRegularExpression(QLatin1String(words))); };
    EXPECT_LT(at("^Seen$"), at("rim chip 12 mm.*"));
    EXPECT_LT(at("rim chip 12 mm.*"), at("^Inferred, not seen$"));
    EXPECT_LT(at("^Inferred, not seen$"), at("joined before.*"));
    EXPECT_TRUE(says(space.page(), QStringLiteral("Signed on paper")));
}

TEST_F(PieceAtHome, EveryPageSaysWhatTheFileHolds)
{
    ASSERT_TRUE(open(PiecePage::Stages));
    EXPECT_TRUE(says(space.page(), QStringLiteral("Wipe back the filler")));
    EXPECT_TRUE(says(space.page(), QStringLiteral("left out")));
    ASSERT_TRUE(open(PiecePage::Visits));
    EXPECT_TRUE(says(space.page(), QStringLiteral("Visit 1")));
    EXPECT_TRUE(says(space.page(), QStringLiteral("a join gave way")));
    ASSERT_TRUE(open(PiecePage::Counts));
    EXPECT_TRUE(says(space.page(), QStringLiteral("lid; stand (2)")));
    ASSERT_TRUE(open(PiecePage::Owner));
    EXPECT_TRUE(says(space.page(), QStringLiteral("by phone")));
    EXPECT_TRUE(says(space.page(), QStringLiteral("96.00")));
    ASSERT_TRUE(open(PiecePage::Papers));
    EXPECT_TRUE(says(space.page(), QStringLiteral("260417-5-treatment-record.pdf")));
}

TEST_F(PieceAtHome, AHiddenOwnerIsNowhere)
{
    auto now = samples::pieceNow();
    now->ownerHidden = true;
    space.setNow(now);
    for (int page = 0; page <= int(PiecePage::Papers); ++page) {
        space.openPage(static_cast<PiecePage>(page));
        for (const char* secret : {"Varga", "960 123", "evening"}) {
            EXPECT_FALSE(says(space.list(), QLatin1String(secret))) << page;
            EXPECT_FALSE(says(space.page(), QLatin1String(secret))) << page;
        }
    }
}

TEST_F(PieceAtHome, AMarkIsPlacedByATapAndThenSaid)
{
    space.openPhoto(first);
    space.setPhoto(first, QImage(800, 600, QImage::Format_RGB32));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/mark/%1").arg(int(record::MarkKind::Crack))));
    const QRectF picture = space.board().pictureRect();
    const QPoint at(int(picture.left() + picture.width() * 0.25), int(picture.top() + picture.height() * 0.75));
    QTest::mouseClick(&space.board(), Qt::LeftButton, {}, at);
    ASSERT_EQ(notes.size(), 1U);
    ASSERT_EQ(notes.back().marks.size(), 2U);
    EXPECT_EQ(notes.back().marks.back().kind, record::MarkKind::Crack);
    EXPECT_NEAR(notes.back().marks.back().x, 2500, 30);
    EXPECT_NEAR(notes.back().marks.back().y, 7500, 30);
    ASSERT_TRUE(type(space.page(), QStringLiteral("markNote"), QStringLiteral("from the rim down")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/keepmark")));
    EXPECT_EQ(notes.back().marks.back().note, "from the rim down");
    EXPECT_EQ(uses.back().photo, first);
    EXPECT_EQ(notes.back().words, "from above") << "what was there stays";
}

TEST_F(PieceAtHome, ATapWithoutAKindMarksNothing)
{
    space.openPhoto(first);
    space.setPhoto(first, QImage(800, 600, QImage::Format_RGB32));
    QTest::mouseClick(&space.board(), Qt::LeftButton, {}, space.board().rect().center());
    EXPECT_TRUE(notes.empty());
}

TEST_F(PieceAtHome, AMarkIsPlacedByKeysAlone)
{
    space.openPhoto(first);
    space.setPhoto(first, QImage(800, 600, QImage::Format_RGB32));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/mark/%1").arg(int(record::MarkKind::Loss))));
    space.board().setFocus();
    for (int i = 0; i < 5; ++i) {
        QTest::keyClick(&space.board(), Qt::Key_Right);
    }
    QTest::keyClick(&space.board(), Qt::Key_Return);
    ASSERT_EQ(notes.size(), 1U);
    EXPECT_NEAR(notes.back().marks.back().x, 6000, 1);
    EXPECT_NEAR(notes.back().marks.back().y, 5000, 1);
}

TEST_F(PieceAtHome, AMarkIsTakenOff)
{
    space.openPhoto(first);
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/see/mark/1")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/dropmark")));
    ASSERT_EQ(notes.size(), 1U);
    EXPECT_TRUE(notes.back().marks.empty());
}

TEST_F(PieceAtHome, PhotosAreDropped)
{
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(QStringLiteral("/photos/one.jpg")),
                  QUrl(QStringLiteral("https://example.org/x.jpg")),
                  QUrl::fromLocalFile(QStringLiteral("/photos/two.jpg"))});
    QDragEnterEvent enters(QPoint(500, 300), Qt::CopyAction, &data, Qt::LeftButton, {});
    QApplication::sendEvent(&space, &enters);
    EXPECT_TRUE(enters.isAccepted());
    QDropEvent drops(QPointF(500, 300), Qt::CopyAction, &data, Qt::LeftButton, {});
    QApplication::sendEvent(&space, &drops);
    EXPECT_EQ(chosen, QStringList({QStringLiteral("/photos/one.jpg"), QStringLiteral("/photos/two.jpg")}))
        << "nothing is fetched from elsewhere";
    EXPECT_EQ(purpose, QLatin1String(record::duringPhoto)) << "work has begun";
}

TEST_F(PieceAtHome, APictureIsPasted)
{
    QImage pasted;
    QObject::connect(&space, &PieceSpace::photoPasted, &space,
                     [to = &pasted](const QImage& picture, const QString&) { *to = picture; });
    QApplication::clipboard()->setImage(QImage(40, 30, QImage::Format_RGB32));
    ASSERT_TRUE(open(PiecePage::Photos));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/see/purpose/condition")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/paste")));
    EXPECT_EQ(pasted.size(), QSize(40, 30));
    QApplication::clipboard()->clear();
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/paste")));
    EXPECT_TRUE(says(space.list(), QStringLiteral("Nothing to paste")));
}

TEST_F(PieceAtHome, PhotosAreChosenFromAFolder)
{
    const test::Scratch scratch;
    const QDir folder(QString::fromStdString(scratch.folder().native()));
    for (const char* name : {"a.jpg", "b.PNG", "letter.txt"}) {
        QFile(folder.filePath(QLatin1String(name))).open(QIODevice::WriteOnly);
    }
    space.setPhotoFolder(folder.absolutePath());
    space.openPage(PiecePage::PickPhotos);
    EXPECT_FALSE(says(space.page(), QStringLiteral("letter.txt")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/see/file/1")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/see/file/2")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/takephotos")));
    chosen.sort();
    EXPECT_EQ(chosen,
              QStringList({folder.filePath(QStringLiteral("a.jpg")), folder.filePath(QStringLiteral("b.PNG"))}));
}

TEST_F(PieceAtHome, TheConditionIsPutRight)
{
    std::optional<record::Visit> told;
    QObject::connect(&space, &PieceSpace::conditionTold, &space,
                     [to = &told](const record::Visit& visit) { *to = visit; });
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/edit")));
    ASSERT_TRUE(type(space.page(), QStringLiteral("seen"), QStringLiteral("rim chip 14 mm")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/keepcondition")));
    ASSERT_TRUE(told);
    EXPECT_EQ(told->condition.seen, "rim chip 14 mm");
    EXPECT_EQ(told->condition.inferred, "joined before with a household glue");
    EXPECT_EQ(told->number, 2);
}

TEST_F(PieceAtHome, AFoundFragmentIsCountedOnlyWithANumber)
{
    int found = 0;
    QObject::connect(&space, &PieceSpace::fragmentFound, &space,
                     [to = &found](int count, const QString&) { *to = count; });
    ASSERT_TRUE(open(PiecePage::Counts));
    click(space.page(), QStringLiteral("home/found"));
    EXPECT_EQ(found, 0);
    ASSERT_TRUE(type(space.page(), QStringLiteral("found"), QStringLiteral("2")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/found")));
    EXPECT_EQ(found, 2);
}

TEST_F(PieceAtHome, WhatGaveWayIsNamedByOneTap)
{
    MixId named;
    QString words;
    QObject::connect(&space, &PieceSpace::faultNamed, &space,
                     [mixTo = &named, noteTo = &words](const bench::StageInstance&, MixId mix, const QString& note) {
                         *mixTo = mix;
                         *noteTo = note;
                     });
    ASSERT_TRUE(open(PiecePage::Visits));
    ASSERT_TRUE(type(space.page(), QStringLiteral("fault"), QStringLiteral("the join at the foot")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/fault/0")));
    EXPECT_EQ(named, MixId(4));
    EXPECT_EQ(words, QStringLiteral("the join at the foot"));
}

TEST_F(PieceAtHome, ANoticeIsOnlyLogged)
{
    QString how;
    bool isNotice = false;
    QObject::connect(&space, &PieceSpace::ownerTold, &space,
                     [howTo = &how, noticeTo = &isNotice](const QString& way, const QString&, bool notice) {
                         *howTo = way;
                         *noticeTo = notice;
                     });
    ASSERT_TRUE(open(PiecePage::Owner));
    EXPECT_TRUE(says(space.page(), QStringLiteral("nothing is ever disposed of")));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/notice/recorded")));
    EXPECT_EQ(how, QStringLiteral("recordedLetter"));
    EXPECT_TRUE(isNotice);
}

TEST_F(PieceAtHome, APaperIsOneTap)
{
    QString wanted;
    QObject::connect(&space, &PieceSpace::paperWanted, &space, [to = &wanted](const QString& key) { *to = key; });
    ASSERT_TRUE(open(PiecePage::Papers));
    ASSERT_TRUE(click(space.page(), QStringLiteral("home/see/paper/treatment-record")));
    EXPECT_EQ(wanted, QStringLiteral("treatment-record"));
}

class PieceWalk : public SpaceWalk {};

TEST_P(PieceWalk, EverySpotCanBeHitReadAndNamed)
{
    const SpaceWay way = GetParam();
    GateClock clock;
    PieceSpace space(clock.gate);
    space.setManner(samples::pieceManner());
    way.dress(space);
    space.setNow(samples::pieceNow());
    space.show();
    for (int page = 0; page <= int(PiecePage::Papers); ++page) {
        if (page == int(PiecePage::Photo)) {
            space.openPhoto(first);
            space.setPhoto(first, samples::pieceNow()->small.at(first));
        } else {
            space.openPage(static_cast<PiecePage>(page));
        }
        const Walk found = walkSheets({&space.list(), &space.page()}, way.look());
        EXPECT_EQ(found.faults.join(QLatin1Char('\n')).toStdString(), "") << "page " << page;
        EXPECT_GT(found.texts, 3);
        EXPECT_GT(keepPicture(space, way.picture(QStringLiteral("piece%1").arg(page))), 4);
    }
}

INSTANTIATE_TEST_SUITE_P(Everywhere, PieceWalk, testing::ValuesIn(spokenWays()));

} // namespace
} // namespace mend::app
