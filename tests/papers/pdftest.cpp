#include "app/papers/pdf.h"

#include "tests/papers/paperfile.h"

#include <QFile>
#include <QPainter>
#include <QTemporaryDir>
#include <gtest/gtest.h>

using namespace mend;
using namespace mend::papers;
using mend::test::PaperFile;

namespace {

/// A photo as a camera makes it: much that changes from dot to dot, and half of it see-through.
QImage photo(int seed)
{
    QImage image(1200, 900, QImage::Format_ARGB32);
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            image.setPixel(x, y, qRgba((x * seed) % 256, (y * 3) % 256, (x * y / 97) % 256, x < 600 ? 255 : 90));
        }
    }
    return image;
}

Paper sample()
{
    Paper paper;
    paper.kind = QStringLiteral("Treatment record");
    paper.number = QStringLiteral("260417-5");
    paper.code = QStringLiteral("2604175");
    paper.studio = QStringLiteral("Kiln Lane Mending, 5 Kiln Lane");
    paper.date = QStringLiteral("25 November 2026");
    paper.blocks = {Heading{QStringLiteral("What was seen")},
                    Paragraph{QStringLiteral("Broken into seven; one chip at the rim is lost.")},
                    Paragraph{QStringLiteral("Not food-safe: display or dry use."), true},
                    Facts{{{QStringLiteral("Owner"), QStringLiteral("Ren\u00e9e M\u00fcller")},
                           {QStringLiteral("Fragments"), QStringLiteral("7 in one bag")}}},
                    Points{{QStringLiteral("Wash by hand."), QStringLiteral("No microwave.")}},
                    Table{{QStringLiteral("When"), QStringLiteral("What")},
                          {{QStringLiteral("24 Nov 14:02"), QStringLiteral("Filler is in")}}},
                    Signature{QStringLiteral("Owner"), QStringLiteral("25 November 2026"), photo(5), {}}};
    return paper;
}

class Pdf : public testing::Test {
protected:
    PaperFile write(const Paper& paper, Sheet sheet = Sheet::A4)
    {
        const QString path = folder.filePath(QStringLiteral("paper.pdf"));
        auto result = writePdf(paper, sheet, path);
        EXPECT_TRUE(result) << path.toStdString();
        if (result) {
            written = result.takeValue();
        }
        return PaperFile(path);
    }

    QTemporaryDir folder;
    Written written;
};

} // namespace

TEST_F(Pdf, IsAWholeFileWithItsWordsToBeFound)
{
    const PaperFile file = write(sample());
    EXPECT_EQ(file.faults(), "");
    const QString words = file.words();
    for (const char* expected : {"Treatment record", "260417-5", "Ren\u00e9e M\u00fcller", "7 in one bag",
                                 "Filler is in", "Not food-safe", "Wash by hand.", "page 1 of 1"}) {
        EXPECT_TRUE(words.contains(QString::fromUtf8(expected))) << expected << " in " << words.toStdString();
    }
}

// ISO 19005-1 (PDF/A-1b): metadata name part and level, an output intent stands there, every face is embedded,
// and nothing is transparent (6.4: no soft mask but None, no blend mode but Normal, constant alpha 1).
TEST_F(Pdf, IsMadeToLast)
{
    Paper paper = sample();
    paper.blocks.emplace_back(Pictures{{{photo(7), QStringLiteral("before")}, {photo(11), QStringLiteral("after")}}});
    const PaperFile file = write(paper);
    const QByteArray all = file.unpacked();
    EXPECT_TRUE(all.contains("<pdfaid:part>1</pdfaid:part>") || all.contains("pdfaid:part=\"1\""));
    EXPECT_TRUE(all.contains("<pdfaid:conformance>B</pdfaid:conformance>") || all.contains("pdfaid:conformance=\"B\""));
    EXPECT_TRUE(all.contains("/OutputIntents"));
    EXPECT_TRUE(all.contains("/GTS_PDFA1"));
    EXPECT_EQ(all.count("/SMask"), all.count("/SMask /None"));
    EXPECT_EQ(all.count("/BM"), all.count("/BM /Normal"));
    EXPECT_EQ(all.count("/CA "), all.count("/CA 1"));
    EXPECT_EQ(all.count("/ca "), all.count("/ca 1"));
    EXPECT_FALSE(all.contains("/JavaScript"));
    ASSERT_FALSE(file.faces().isEmpty());
    for (const QString& face : file.faces()) {
        EXPECT_TRUE(face.contains(QStringLiteral(" yes "))) << face.toStdString();
        EXPECT_FALSE(face.contains(QStringLiteral("Type 3"))) << face.toStdString();
    }
}

TEST_F(Pdf, FitsBothSheets)
{
    const QSizeF a4 = write(sample(), Sheet::A4).millimetres();
    EXPECT_NEAR(a4.width(), 210, 0.5); // ISO 216
    EXPECT_NEAR(a4.height(), 297, 0.5);
    const QSizeF letter = write(sample(), Sheet::Letter).millimetres();
    EXPECT_NEAR(letter.width(), 215.9, 0.5); // 8.5 by 11 inches
    EXPECT_NEAR(letter.height(), 279.4, 0.5);
}

TEST_F(Pdf, ItsCodeHoldsTheNumberAlone) { EXPECT_EQ(write(sample()).codes(1, 150), QStringLiteral("2604175")); }

// What looks like markup or an address is printed as it was typed, and fetches nothing.
TEST_F(Pdf, TakesWordsForWords)
{
    const QString secret = folder.filePath(QStringLiteral("secret.png"));
    QImage(40, 40, QImage::Format_RGB32).save(secret);
    Paper paper = sample();
    const QString typed = QStringLiteral("<b>Eve</b> <img src=\"file://%1\"> &amp; <script>").arg(secret);
    paper.blocks = {Facts{{{QStringLiteral("Owner"), typed}}}, Heading{typed}, Paragraph{typed},
                    Table{{typed}, {{typed}}}};
    const PaperFile file = write(paper);
    const QString words = file.words().remove(QLatin1Char('\n')).remove(QLatin1Char(' '));
    EXPECT_GE(words.count(QString(typed).remove(QLatin1Char(' '))), 4) << words.toStdString();
    EXPECT_FALSE(file.unpacked().contains("/Subtype /Image"));
}

TEST_F(Pdf, SaysTheHeadOfATableOnEveryPage)
{
    Paper paper = sample();
    Table table{{QStringLiteral("When"), QStringLiteral("Stage")}, {}};
    for (int i = 0; i < 120; ++i) {
        table.rows.push_back({QStringLiteral("day %1").arg(i), QStringLiteral("row %1 stands").arg(i)});
    }
    paper.blocks = {table};
    const PaperFile file = write(paper);
    ASSERT_GE(written.pages, 3);
    const QString words = file.words();
    EXPECT_EQ(words.count(QStringLiteral("Stage")), written.pages);
    for (int i = 0; i < 120; ++i) {
        EXPECT_TRUE(words.contains(QStringLiteral("row %1 stands").arg(i))) << i;
    }
    EXPECT_TRUE(words.contains(QStringLiteral("page %1 of %1").arg(written.pages)));
}

TEST_F(Pdf, TwentyFourPhotosStaySmall)
{
    Paper paper = sample();
    Pictures pictures;
    for (int i = 0; i < 24; ++i) {
        pictures.all.push_back({photo(i + 3), QStringLiteral("photo %1").arg(i)});
    }
    paper.blocks.emplace_back(pictures);
    const PaperFile file = write(paper);
    EXPECT_EQ(file.faults(), "");
    EXPECT_LT(file.bytes(), 12'000'000);
    EXPECT_EQ(file.unpacked().count("/Subtype /Image"), 25) << "24 photos and what was signed";
    EXPECT_TRUE(file.words().contains(QStringLiteral("photo 23")));
}

TEST_F(Pdf, KeepsTheOldFileWhereTheNewOneCannotBeWritten)
{
    const auto result = writePdf(sample(), Sheet::A4, folder.filePath(QStringLiteral("no/such/folder/a.pdf")));
    ASSERT_FALSE(result);
    EXPECT_EQ(result.fault().kind, FaultKind::Unwritable);
}

TEST_F(Pdf, ListsWhatNoFaceCanDraw)
{
    Paper paper = sample();
    const QString rare = QString(QChar(0xE123)); // for private use: no face may have it
    paper.blocks = {Paragraph{QStringLiteral("Owner: ") + rare}};
    const PaperFile file = write(paper);
    EXPECT_EQ(written.undrawable, QStringList{rare});
    EXPECT_TRUE(file.words().contains(QStringLiteral("[U+E123]"))) << file.words().toStdString();
}
