#include "tests/paperwork/sample.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::paperwork;
using mend::test::Sample;
using mend::test::wordsOf;

TEST(Care, WarnsOfFoodLeadAndMetal)
{
    const Sample sample;
    const QString words = wordsOf(paperOf(Kind::CareSheet, sample.source()));
    for (const char* each : {"Not food-safe", "lead is unknown", "No microwave", "drinks water", "both hands"}) {
        EXPECT_TRUE(words.contains(QLatin1String(each))) << each << " in " << words.toStdString();
    }
}

TEST(Care, FollowsTheProcedureAndTheBody)
{
    Sample sample;
    sample.file.piece.body = record::Body::Vitrified;
    sample.file.visits.front().procedure = "reversibleJoin";
    const QString words = wordsOf(paperOf(Kind::CareSheet, sample.source()));
    EXPECT_FALSE(words.contains(QStringLiteral("drinks water")));
    EXPECT_FALSE(words.contains(QStringLiteral("No microwave")));
    EXPECT_TRUE(words.contains(QStringLiteral("softens from about 35")));
}

TEST(Care, EveryShippedProcedureHasWordsOfItsOwn)
{
    Sample sample;
    for (const rules::Procedure& procedure : sample.book.procedures) {
        EXPECT_FALSE(sample.words.lines("care." + procedure.key).isEmpty()) << procedure.key;
    }
}

TEST(Care, SaysTheStudiosOwnWords)
{
    Sample sample;
    sample.words = service::PaperWords(sample.words.shipped(), {{"paper.care.general", "Ring us on Mondays."}});
    const QString words = wordsOf(paperOf(Kind::CareSheet, sample.source()));
    EXPECT_TRUE(words.contains(QStringLiteral("Ring us on Mondays.")));
    EXPECT_FALSE(words.contains(QStringLiteral("both hands")));
}

TEST(Notice, NeverThreatensAndCountsTheNoticesBefore)
{
    const Sample sample;
    const QString words = wordsOf(paperOf(Kind::UnclaimedNotice, sample.source()));
    EXPECT_TRUE(words.contains(QStringLiteral("local law"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("Notices before this one\n0")));
}
