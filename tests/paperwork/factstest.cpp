#include "app/paperwork/facts.h"

#include "tests/paperwork/sample.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::paperwork;
using mend::test::Sample;

TEST(Facts, SayOnlyWhatWasTold)
{
    Sample sample;
    sample.file.piece.maker.clear();
    sample.file.piece.size = {};
    for (const papers::Fact& fact : objectFacts(sample.source()).rows) {
        EXPECT_NE(fact.label, QStringLiteral("Maker or origin"));
        EXPECT_NE(fact.label, QStringLiteral("Size"));
        EXPECT_FALSE(fact.words.isEmpty()) << fact.label.toStdString();
    }
}

TEST(Facts, CountAFragmentThatWasFoundLater)
{
    Sample sample;
    sample.file.dossier.visits.back().fragments.in = 7;
    sample.file.dossier.visits.back().fragmentsFound = 1;
    EXPECT_EQ(countFacts(sample.source()).rows.front().words, QStringLiteral("8"));
}

// 25.4 mm are an inch by definition (international yard and pound agreement of 1959).
TEST(Facts, MeasureInInchesWhereTheStudioDoes)
{
    Sample sample;
    EXPECT_EQ(lengthWords(millimetres(127), sample.source()), QStringLiteral("127 mm"));
    sample.studio.inches = true;
    EXPECT_EQ(lengthWords(millimetres(127), sample.source()), QStringLiteral("5.00 in"));
}
