#include "app/papers/pdf.h"
#include "tests/papers/paperfile.h"
#include "tests/paperwork/sample.h"

#include <QTemporaryDir>
#include <gtest/gtest.h>

using namespace mend;
using namespace mend::paperwork;
using mend::test::Sample;
using mend::test::TestBench;
using mend::test::wordsOf;

namespace {

const papers::Table& tableWith(const papers::Paper& paper, const QString& head)
{
    for (const papers::Block& block : paper.blocks) {
        if (const auto* table = std::get_if<papers::Table>(&block); table != nullptr && table->head.contains(head)) {
            return *table;
        }
    }
    static const papers::Table none;
    return none;
}

} // namespace

TEST(Record, LogsEveryStageWithWhoWhenAndTheAir)
{
    const Sample sample;
    const papers::Table log = tableWith(paperOf(Kind::TreatmentRecord, sample.source()), QStringLiteral("Air"));
    ASSERT_GE(log.rows.size(), 3U);
    const auto glued = std::ranges::find_if(
        log.rows, [](const QStringList& row) { return row.value(1).contains(QStringLiteral("Glue is on")); });
    ASSERT_NE(glued, log.rows.end());
    EXPECT_EQ(glued->value(0), QStringLiteral("1 Mar 2027 10:02"));
    EXPECT_EQ(glued->value(2), QStringLiteral("Mender"));
    EXPECT_TRUE(glued->value(3).contains(QStringLiteral("24.1"))) << glued->value(3).toStdString();
    for (std::size_t row = 1; row < log.rows.size(); ++row) {
        EXPECT_EQ(log.rows[row].size(), log.head.size());
    }
}

TEST(Record, NamesEveryMaterialWithItsBatch)
{
    const Sample sample;
    const papers::Table materials = tableWith(paperOf(Kind::TreatmentRecord, sample.source()), QStringLiteral("Batch"));
    const bool there = std::ranges::any_of(
        materials.rows, [](const QStringList& row) { return row.value(1) == QStringLiteral("batch 7"); });
    EXPECT_TRUE(there) << wordsOf(paperOf(Kind::TreatmentRecord, sample.source())).toStdString();
}

TEST(Record, SaysWhatWasDoneOtherwiseThanPlanned)
{
    Sample sample;
    bench::Event skipped = sample.bench.event(bench::What::Skipped, 100);
    skipped.piece = sample.file.piece.id;
    skipped.stage = {"restJoins", 1};
    skipped.note = "joins held by tape";
    sample.bench.tell(skipped);
    sample.refold();
    const QString words = wordsOf(paperOf(Kind::TreatmentRecord, sample.source()));
    EXPECT_TRUE(words.contains(QStringLiteral("otherwise than planned"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("joins held by tape")));
}

TEST(Record, LeavesOutWhatWasTakenBack)
{
    Sample sample;
    const auto count = [&] {
        return tableWith(paperOf(Kind::TreatmentRecord, sample.source()), QStringLiteral("Air")).rows.size();
    };
    const std::size_t before = count();
    const EventId told = sample.bench.done(sample.file.piece.id, "pressSet", 70);
    sample.refold();
    EXPECT_EQ(count(), before + 1);
    bench::Event gone = sample.bench.event(bench::What::Voided, 71);
    gone.target = told;
    gone.piece = sample.file.piece.id;
    sample.bench.tell(gone);
    sample.refold();
    EXPECT_EQ(count(), before);
}

TEST(Record, AMarkStandsOnThePhotoAndInTheWordsUnderIt)
{
    Sample sample;
    const auto picture = [&sample] {
        const papers::Paper paper = paperOf(Kind::TreatmentRecord, sample.source());
        for (const papers::Block& block : paper.blocks) {
            if (const auto* pictures = std::get_if<papers::Pictures>(&block)) {
                return pictures->all.front();
            }
        }
        return papers::Picture{};
    };
    sample.file.photos = {{{std::string(64, '5'), sample.file.piece.id, {}, record::conditionPhoto}, {}}};
    const papers::Picture bare = picture();
    sample.file.photos.front().note.marks = {{record::MarkKind::Loss, 5000, 5000, "at the foot"}};
    const papers::Picture marked = picture();
    EXPECT_NE(marked.image.convertToFormat(QImage::Format_RGB32), bare.image.convertToFormat(QImage::Format_RGB32));
    EXPECT_TRUE(marked.caption.contains(QStringLiteral("1 loss: at the foot"))) << marked.caption.toStdString();
}

TEST(Record, PrintsTwentyFourPhotosBeforeDuringAndAfter)
{
    Sample sample;
    for (int i = 0; i < 24; ++i) {
        store::NotedPhoto photo;
        photo.use.photo = "hash " + std::to_string(i);
        photo.use.purpose = i < 8 ? record::conditionPhoto : i < 16 ? record::duringPhoto : record::finishedPhoto;
        photo.note.words = "view " + std::to_string(i);
        photo.note.marks = {{record::MarkKind::Chip, 5000, 5000, "rim"}};
        sample.file.photos.push_back(photo);
    }
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("record.pdf"));
    ASSERT_TRUE(papers::writePdf(paperOf(Kind::TreatmentRecord, sample.source()), papers::Sheet::A4, path));
    const test::PaperFile file(path);
    EXPECT_EQ(file.faults(), "");
    const QString words = file.words();
    for (const char* each : {"Before", "During", "After", "view 0", "view 23", "chip: rim"}) {
        EXPECT_TRUE(words.contains(QLatin1String(each))) << each;
    }
    EXPECT_EQ(file.unpacked().count("/Subtype /Image"), 24);
}
