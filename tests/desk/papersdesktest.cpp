// Every paper about a piece at a terminal, with the real program.
#include "tests/papers/paperfile.h"
#include "tests/record/somepage.h"
#include "tests/store/benchmaker.h"
#include "tests/support/scratch.h"

#include "core/record/piecenumber.h"

#include <QDir>
#include <gtest/gtest.h>

namespace mend {

namespace {

class PapersDesk : public testing::Test {
protected:
    void SetUp() override
    {
        const auto store = test::openOrDie(file);
        test::furnish(*store, 0);
        const std::vector<bench::Event> told{test::someEvent(1, bench::What::Received, PieceId())};
        number = store->takeIn(test::somePage(), 2027, told).takeValue().number;
    }
    test::Ran papers(const QStringList& more) const
    {
        return test::run(QStringLiteral(MEND_DESK),
                         QStringList{QStringLiteral("papers"), QString::fromStdString(file.string())} + more);
    }

    test::Scratch scratch;
    std::filesystem::path file = scratch / "bench.mend";
    QString to = QString::fromStdString((scratch / "papers").string());
    std::string number;
};

} // namespace

TEST_F(PapersDesk, WritesEveryPaperAndTheTag)
{
    const QString shown = QString::fromStdString(record::shownPieceNumber(number));
    const test::Ran ran = papers({shown, to});
    ASSERT_EQ(ran.code, 0) << ran.out.toStdString();
    for (const char* stem :
         {"intake-receipt", "quote", "treatment-record", "care-sheet", "out-receipt", "notice", "tag"}) {
        const test::PaperFile paper(
            QDir(to).filePath(shown + QLatin1Char('-') + QLatin1String(stem) + QStringLiteral(".pdf")));
        EXPECT_EQ(paper.faults(), "") << stem;
        EXPECT_TRUE(paper.words().contains(shown)) << stem << paper.words().toStdString();
    }
    const test::PaperFile receipt(QDir(to).filePath(shown + QStringLiteral("-intake-receipt.pdf")));
    EXPECT_TRUE(receipt.words().contains(QString::fromStdString(test::somePage().owner.name)))
        << receipt.words().toStdString();
    EXPECT_EQ(receipt.codes(1, 150), QString::fromStdString(number));
    EXPECT_NEAR(receipt.millimetres().width(), 210, 0.5);
}

TEST_F(PapersDesk, PrintsOnLetterWhereItIsAskedTo)
{
    const QString shown = QString::fromStdString(record::shownPieceNumber(number));
    ASSERT_EQ(papers({shown, to, QStringLiteral("--letter")}).code, 0);
    EXPECT_NEAR(test::PaperFile(QDir(to).filePath(shown + QStringLiteral("-quote.pdf"))).millimetres().width(), 215.9,
                0.5);
}

TEST_F(PapersDesk, PrintsTheTagOnTheLabelThatIsThere)
{
    const QString shown = QString::fromStdString(record::shownPieceNumber(number));
    const QString tag = QDir(to).filePath(shown + QStringLiteral("-tag.pdf"));
    ASSERT_EQ(papers({shown, to}).code, 0);
    EXPECT_NEAR(test::PaperFile(tag).millimetres().width(), 62, 0.5);
    ASSERT_EQ(papers({shown, to, QStringLiteral("--label"), QStringLiteral("50x20")}).code, 0);
    EXPECT_NEAR(test::PaperFile(tag).millimetres().width(), 50, 0.5);
    EXPECT_EQ(papers({shown, to, QStringLiteral("--label"), QStringLiteral("50")}).code, 2);
}

TEST_F(PapersDesk, SaysWhatIsWrongWithANumberOrAPlace)
{
    EXPECT_EQ(papers({QStringLiteral("270001-0"), to}).code, 2) << "its check character is wrong, or nobody has it";
    EXPECT_EQ(papers({QStringLiteral("heron"), to}).code, 2);
    const QString shown = QString::fromStdString(record::shownPieceNumber(number));
    EXPECT_EQ(papers({shown, QStringLiteral("/proc/nowhere")}).code, 1);
}

} // namespace mend
