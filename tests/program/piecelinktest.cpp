#include "app/program/piecelink.h"

#include "core/service/openbench.h"
#include "tests/record/somepage.h"
#include "tests/spaces/spacewalk.h"
#include "tests/support/fakeclock.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"
#include "tests/support/testbench.h"

#include <QDir>
#include <QElapsedTimer>
#include <QPainter>
#include <QTest>
#include <gtest/gtest.h>

namespace mend::app {
namespace {

using bench::What;
using test::TestBench;

std::unique_ptr<store::Store> newBench(const std::filesystem::path& file)
{
    store::OpenOptions options;
    options.mode = store::OpenMode::CreateIfMissing;
    auto store = store::Store::open(file, options).takeValue();
    for (const rules::Procedure& procedure : test::shippedRules().procedures) {
        EXPECT_TRUE(store->putRules({procedure.hash, "the rules of " + procedure.key}).isOk());
    }
    EXPECT_TRUE(store->put(record::Place{PlaceId(1), "Bench", record::PlaceKind::Bench, 0}).isOk());
    return store;
}

/// The window with its file: what is tapped reaches the disk, what is read comes from there.
class PieceAtTheCounter : public testing::Test {
protected:
    PieceAtTheCounter()
        : settings(QString::fromStdString((scratch / "window.ini").native()), QSettings::IniFormat),
          clock(TestBench::at(0)),
          keeping(newBench(scratch / "bench.mend"), [](const auto&) { return std::vector<store::RuleText>{}; })
    {
        service::BenchRecord record;
        record.roster.places = {{PlaceId(1), "Bench", record::PlaceKind::Bench, 0}};
        bench = std::make_unique<service::BenchService>(clock, test::shippedRules(), record,
                                                        [this](const auto& events) { keeping.keep(events); });
        QObject::connect(&keeping, &Keeping::stored, bench.get(), &service::BenchService::stored);
        alerts = std::make_unique<service::AlertService>(*bench);
        door = std::make_unique<service::Door>(clock, *bench, keeping.thread(), service::Door::KeepRules{});
        window = std::make_unique<MainWindow>(gate.gate);
        window->resize(1280, 800);
        spaces = std::make_unique<SpacesLink>(SpacesLink::Services{*bench, *alerts, clock}, *window, gate.gate, manner);
        link = std::make_unique<PieceLink>(PieceLink::Services{*door, *bench, keeping, clock, settings}, *window,
                                           gate.gate, manner, service::Studio{});
        link->connectPapers(*spaces);
        link->papers().setFolder(folder("papers"));
        window->show();
        takeIn();
    }
    ~PieceAtTheCounter() override { keeping.thread().waitUntilStored(std::chrono::seconds(5)); }

    QString folder(const std::string& name) const { return QString::fromStdString((scratch / name).native()); }

    void takeIn()
    {
        std::optional<store::TakenIn> taken;
        door->takeIn(test::somePage(), [&taken](const Result<store::TakenIn>& result) { taken = result.value(); });
        ASSERT_TRUE(until([&] { return taken.has_value(); }));
        piece = taken->piece;
        link->openPiece(piece);
        ASSERT_TRUE(until([&] { return link->space().piece() == piece; }));
    }
    template <class Condition> static bool until(Condition condition)
    {
        QElapsedTimer waited;
        waited.start();
        while (!condition() && waited.elapsed() < 20'000) {
            QCoreApplication::processEvents(QEventLoop::AllEvents, 5);
        }
        return condition();
    }
    service::PieceFile file()
    {
        std::optional<service::PieceFile> read;
        door->openPiece(piece, [&read](const Result<service::PieceFile>& result) { read = result.value(); });
        EXPECT_TRUE(until([&] { return read.has_value(); }));
        return read.value_or(service::PieceFile{});
    }
    QString photoFile(const char* name)
    {
        QImage image(1600, 1200, QImage::Format_RGB32);
        image.fill(QColor(0x70, 0x90, 0xb0));
        const QString path = folder(name);
        EXPECT_TRUE(image.save(path, "JPEG"));
        return path;
    }
    bool tap(parts::SheetSpace& space, const char* key)
    {
        return click(space.list(), QLatin1String(key)) || click(space.page(), QLatin1String(key));
    }

    test::Scratch scratch;
    QSettings settings;
    test::FakeClock clock;
    service::Manner manner;
    GateClock gate;
    std::unique_ptr<service::Door> door; // outlives the file's thread
    Keeping keeping;
    std::unique_ptr<service::BenchService> bench;
    std::unique_ptr<service::AlertService> alerts;
    std::unique_ptr<MainWindow> window;
    std::unique_ptr<SpacesLink> spaces;
    std::unique_ptr<PieceLink> link;
    PieceId piece;
};

TEST_F(PieceAtTheCounter, PhotosOfAFileStandInTheFileAndABadOneSaysSo)
{
    QFile bad(folder("half.jpg"));
    ASSERT_TRUE(bad.open(QIODevice::WriteOnly));
    bad.write("\xFF\xD8\xFF\xE0 and no more");
    bad.close();
    Q_EMIT link->space().photosChosen({photoFile("good.jpg"), bad.fileName(), photoFile("better.jpg")},
                                      QLatin1String(record::duringPhoto));
    EXPECT_TRUE(until([&] { return !file().photos.empty(); }));
    EXPECT_TRUE(
        until([&] { return says(link->space().list(), QStringLiteral("half.jpg")) || file().photos.size() == 1; }));
    const auto photos = file().photos;
    ASSERT_FALSE(photos.empty());
    EXPECT_EQ(photos.front().use.purpose, record::duringPhoto);
    EXPECT_EQ(photos.front().note.visit, 1);
    window->showSpace(QStringLiteral("bench"));
    link->openPiece(piece);
    EXPECT_TRUE(until([&] { return says(link->space().list(), QStringLiteral("Photos")); }));
}

TEST_F(PieceAtTheCounter, APaperIsWrittenWhereItWasSaidAndItIsSaid)
{
    link->space().openPage(PiecePage::Papers);
    ASSERT_TRUE(tap(link->space(), "home/see/paper/treatment-record"));
    ASSERT_TRUE(until([&] { return says(link->space().page(), QStringLiteral("Written:")); }));
    const QDir papers(folder("papers"));
    const QStringList written = papers.entryList({QStringLiteral("*-treatment-record.pdf")});
    ASSERT_EQ(written.size(), 1);
    EXPECT_GT(QFileInfo(papers.filePath(written.front())).size(), 5000);
    EXPECT_TRUE(says(link->space().page(), papers.filePath(written.front())));
}

TEST_F(PieceAtTheCounter, TheTagIsWrittenOnTheLabelThatWasChosen)
{
    const QDir papers(folder("papers"));
    link->space().openPage(PiecePage::Papers);
    const auto writtenWidth = [&]() -> double { // points, from the page box of the file itself
        if (!tap(link->space(), "home/see/paper/tag") ||
            !until([&] { return !papers.entryList({QStringLiteral("*-tag.pdf")}).isEmpty(); })) {
            return 0;
        }
        const QString path = papers.filePath(papers.entryList({QStringLiteral("*-tag.pdf")}).front());
        QFile file(path);
        const QByteArray bytes = file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
        QFile::remove(path);
        const qsizetype box = bytes.indexOf("/MediaBox [0 0 ");
        return bytes.mid(box + 15, bytes.indexOf(' ', box + 15) - box - 15).toDouble();
    };
    constexpr double pointsPerMm = 72 / 25.4;
    EXPECT_NEAR(writtenWidth(), 62 * pointsPerMm, 1);
    ASSERT_TRUE(tap(link->space(), "home/see/tag/100x50"));
    EXPECT_NEAR(writtenWidth(), 100 * pointsPerMm, 1);
}

TEST_F(PieceAtTheCounter, WhereNothingCanBeWrittenItSaysWhatToDoF55)
{
    link->papers().setFolder(QStringLiteral("/proc/nowhere"));
    link->space().openPage(PiecePage::Papers);
    ASSERT_TRUE(tap(link->space(), "home/see/paper/tag"));
    EXPECT_TRUE(until([&] { return says(link->space().page(), QStringLiteral("Choose another folder")); }));
}

TEST_F(PieceAtTheCounter, AHandOverReachesTheFileWithItsSignatureAndItsPapers)
{
    ASSERT_TRUE(tap(link->space(), "home/handover"));
    HandOverSpace& counter = link->handOverSpace();
    ASSERT_TRUE(until([&] { return counter.piece() == piece; }));
    EXPECT_TRUE(window->bench().picture().hideOwners) << "nobody reads another owner's name meanwhile";
    ASSERT_TRUE(tap(counter, "handover/fragments/all"));
    ASSERT_TRUE(tap(counter, "handover/accessory/0"));
    ASSERT_TRUE(tap(counter, "handover/accessory/1"));
    ASSERT_TRUE(tap(counter, "handover/unmended/owner")) << "nothing was done on it yet";
    ASSERT_TRUE(tap(counter, "handover/who/owner"));
    auto& pad = counter.pad();
    QTest::mousePress(&pad, Qt::LeftButton, {}, QPoint(40, 40));
    QTest::mouseMove(&pad, QPoint(160, 70));
    QTest::mouseRelease(&pad, Qt::LeftButton, {}, QPoint(200, 40));
    ASSERT_TRUE(tap(counter, "handover/done")) << counter.open().join(QLatin1Char('\n')).toStdString();
    EXPECT_TRUE(until([&] { return says(counter.page(), QStringLiteral("stands in the file")); }));
    const service::PieceFile now = file();
    EXPECT_TRUE(now.dossier.now().returnedUnmended);
    EXPECT_EQ(now.dossier.now().fragments.out, 5);
    EXPECT_EQ(now.dossier.now().accessories.out, 2);
    EXPECT_TRUE(until([&] { return file().photos.size() == 1; }));
    EXPECT_EQ(file().photos.front().use.purpose, record::signaturePhoto);
    ASSERT_TRUE(tap(counter, "handover/see/paper/all"));
    EXPECT_TRUE(until([&] { return QDir(folder("papers")).entryList({QStringLiteral("*.pdf")}).size() == 3; }));
}

TEST_F(PieceAtTheCounter, AHandOverIsTakenBack)
{
    ASSERT_TRUE(tap(link->space(), "home/handover"));
    HandOverSpace& counter = link->handOverSpace();
    ASSERT_TRUE(until([&] { return counter.piece() == piece; }));
    for (const char* key : {"handover/fragments/all", "handover/accessory/0", "handover/accessory/1",
                            "handover/unmended/owner", "handover/who/owner", "handover/onpaper", "handover/done"}) {
        ASSERT_TRUE(tap(counter, key)) << key;
    }
    EXPECT_EQ(bench->bench().piece(piece), nullptr);
    ASSERT_TRUE(tap(counter, "handover/undo"));
    EXPECT_NE(bench->bench().piece(piece), nullptr);
    EXPECT_FALSE(file().dossier.now().isOver());
}

TEST_F(PieceAtTheCounter, TheWordsOfAPaperAreTheStudiosUntilTheyAreSetBack)
{
    window->showSpace(QStringLiteral("settings"));
    SettingsSpace& space = spaces->settings();
    space.openSettings(SettingsPage::Papers);
    Q_EMIT spaces->settingsShown();
    const char* const key = "settings/paper/care.general";
    ASSERT_TRUE(until([&] { return space.page().hit(QLatin1String(key)) != nullptr; }));
    ASSERT_TRUE(tap(space, key));
    ASSERT_TRUE(type(space.page(), QStringLiteral("paragraph/0"), QStringLiteral("Never in the oven.")));
    ASSERT_TRUE(tap(space, "papertext/keep"));
    EXPECT_TRUE(until([&] { return says(space.page(), QStringLiteral("Never in the oven.")); }));
    ASSERT_TRUE(tap(space, key));
    ASSERT_TRUE(tap(space, "papertext/reset"));
    EXPECT_TRUE(until([&] {
        return space.page().hit(QLatin1String(key)) && !says(space.page(), QStringLiteral("Never in the oven."));
    }));
}

TEST_F(PieceAtTheCounter, TheBenchIsWrittenForTheWall)
{
    window->showSpace(QStringLiteral("log"));
    ASSERT_TRUE(tap(spaces->log(), "log/wall"));
    EXPECT_TRUE(until([&] { return says(spaces->log().page(), QStringLiteral("Written:")); }));
    EXPECT_EQ(QDir(folder("papers")).entryList({QStringLiteral("bench-for-the-wall.pdf")}).size(), 1);
}

} // namespace
} // namespace mend::app
