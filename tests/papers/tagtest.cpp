#include "app/papers/tag.h"

#include "tests/papers/paperfile.h"

#include <QTemporaryDir>
#include <gtest/gtest.h>

using namespace mend::papers;
using mend::test::PaperFile;

namespace {

const std::vector<Tag> twoTags = {{QStringLiteral("2604175"), QStringLiteral("260417-5"), QStringLiteral("Heron bowl"),
                                   QStringLiteral("7 fragments \u00b7 in 25 Nov 2026")},
                                  {QStringLiteral("2604183"), QStringLiteral("260418-3"),
                                   QStringLiteral("Blue jug with the long spout"),
                                   QStringLiteral("12 fragments, lid \u00b7 in 25 Nov 2026")}};

} // namespace

TEST(Tag, ReadsBackFromALabelPrinterInEverySize)
{
    const QTemporaryDir folder;
    for (const Label label : {Label::Small, Label::Middle, Label::Large}) {
        const QString path = folder.filePath(QStringLiteral("tags.pdf"));
        const auto written = writeTags(twoTags, label, path);
        ASSERT_TRUE(written);
        EXPECT_EQ(written.value().pages, 2);
        const PaperFile file(path);
        EXPECT_EQ(file.faults(), "");
        EXPECT_EQ(file.codes(1, 203), QStringLiteral("2604175"));
        EXPECT_EQ(file.codes(2, 203), QStringLiteral("2604183"));
        EXPECT_NEAR(file.millimetres().width(), millimetresOf(label).width(), 0.5);
        EXPECT_NEAR(file.millimetres().height(), millimetresOf(label).height(), 0.5);
        const QString words = file.words();
        EXPECT_TRUE(words.contains(QStringLiteral("260417-5"))) << words.toStdString();
        EXPECT_TRUE(words.contains(QStringLiteral("Heron bowl"))) << words.toStdString();
    }
}

// A module of the code is at least half a millimetre, so that any reader of labels finds it.
TEST(Tag, HasModulesOfHalfAMillimetre)
{
    for (const Label label : {Label::Small, Label::Middle, Label::Large}) {
        EXPECT_GE((millimetresOf(label).height() - 3) / 29, 0.5);
    }
}

TEST(Tag, SaysNoWhereThereIsNothingToPrint) { EXPECT_FALSE(writeTags({}, Label::Small, QStringLiteral("/nowhere"))); }
