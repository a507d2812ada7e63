#include "tests/paperwork/sample.h"

#include "core/service/cardwording.h"

#include <gtest/gtest.h>

using namespace mend;
using mend::test::Sample;
using mend::test::TestBench;
using mend::test::wordsOf;

TEST(Wall, SaysTheSameTimesAsTheCards)
{
    const Sample sample;
    const double minute = 64;
    const bench::Board board = bench::boardOf(sample.folded, sample.book, TestBench::at(minute));
    ASSERT_FALSE(board.cards.empty());
    const service::Manner manner = sample.source().manner;
    const papers::Paper paper = paperwork::wallList(board, sample.studio, manner, TestBench::at(minute));
    const QString words = wordsOf(paper);
    for (const bench::Card& card : board.cards) {
        EXPECT_TRUE(words.contains(service::cardActWords(card))) << words.toStdString();
        for (const auto& at : {card.seam.latestStart, card.seam.closes}) {
            if (at) {
                EXPECT_TRUE(words.contains(service::clockTime(*at, TestBench::at(minute), manner)));
            }
        }
    }
    EXPECT_FALSE(words.contains(QString::fromUtf8("M\u00fcller"))) << "the wall names no owner";
}
