#include "core/service/handingover.h"
#include "tests/paperwork/sample.h"

#include <algorithm>
#include <gtest/gtest.h>

using namespace mend;
using namespace mend::paperwork;
using mend::test::Sample;
using mend::test::wordsOf;

namespace {

void expectAll(const QString& words, std::initializer_list<const char*> expected)
{
    for (const char* each : expected) {
        EXPECT_TRUE(words.contains(QString::fromUtf8(each))) << each << "\nin\n" << words.toStdString();
    }
}

} // namespace

TEST(Receipts, IntakeSaysWhatARecordMustHold)
{
    const Sample sample;
    const QString words = wordsOf(paperOf(Kind::IntakeReceipt, sample.source()));
    expectAll(words, {"Intake receipt",
                      "260417-5",
                      "Heron bowl",
                      "Ren\u00e9e M\u00fcller",
                      "01632 960 123",
                      "small blue bowl with a heron",
                      "82 mm high",
                      "310 g",
                      "porous",
                      "lid; stand (2)",
                      "120.00 GBP",
                      "90.00 GBP to 140.00 GBP, estimate",
                      "rim chip 12 mm",
                      "brown glue from foot to rim",
                      "household glue",
                      "the line may shine",
                      "rejoin, fill, gold line",
                      "Gold-dusted lacquer seam",
                      "Metal may be laid on it.",
                      "kept for the record only",
                      "Not food-safe",
                      "signed on paper",
                      "Monday, 1 March 2027"});
}

TEST(Receipts, WhatIsSeenStandsApartFromWhatIsInferred)
{
    const Sample sample;
    const papers::Paper paper = paperOf(Kind::IntakeReceipt, sample.source());
    int seenAt = -1;
    int inferredAt = -1;
    for (int at = 0; at < static_cast<int>(paper.blocks.size()); ++at) {
        if (const auto* heading = std::get_if<papers::Heading>(&paper.blocks[static_cast<std::size_t>(at)])) {
            seenAt = heading->words == QStringLiteral("Condition") ? at : seenAt;
            inferredAt = heading->words == QStringLiteral("What is inferred from it") ? at : inferredAt;
        }
    }
    ASSERT_GE(seenAt, 0);
    EXPECT_GT(inferredAt, seenAt);
}

TEST(Receipts, AQuoteIsAnEstimate)
{
    const Sample sample;
    expectAll(wordsOf(paperOf(Kind::Quote, sample.source())),
              {"Quote", "90.00 GBP to 140.00 GBP, estimate", "not a fixed price", "Not food-safe"});
}

TEST(Receipts, AQuoteWithoutFiguresSaysSo)
{
    Sample sample;
    sample.file.visits.front().consent.priceFrom.reset();
    sample.file.visits.front().consent.priceTo.reset();
    expectAll(wordsOf(paperOf(Kind::Quote, sample.source())), {"to be agreed before work begins"});
}

TEST(Receipts, AMissingFragmentIsSaidAtTheDoor)
{
    Sample sample;
    bench::VisitFacts& told = sample.file.dossier.visits.back();
    told.fragments = {7, 7};
    EXPECT_FALSE(wordsOf(paperOf(Kind::OutReceipt, sample.source())).contains(QStringLiteral("Less goes out")));
    told.fragments = {7, 6};
    expectAll(wordsOf(paperOf(Kind::OutReceipt, sample.source())),
              {"Less goes out than came in", "Fragments going out"});
}

TEST(Receipts, WhatWasSaidAndSignedAtTheCounterStandsOnTheOutReceipt)
{
    Sample sample;
    service::HandingOver told;
    told.piece = sample.file.piece.id;
    told.fragmentsOut = 6;
    told.missing = "one fragment stays here and is looked for";
    told.takenBy = "her brother";
    told.signedHow = "drawn";
    bench::Event blank;
    blank.happened = blank.recorded = sample.now;
    auto number = sample.bench.events().back().id.value();
    for (bench::Event& event : service::eventsOf(told, blank)) {
        event.id = EventId(++number);
        sample.bench.events().push_back(event);
    }
    sample.refold();
    sample.file.photos = {{{std::string(64, '5'), told.piece, EventId(number), record::signaturePhoto}, {}}};
    const papers::Paper paper = paperOf(Kind::OutReceipt, sample.source());
    EXPECT_TRUE(wordsOf(paper).contains(QStringLiteral("one fragment stays here and is looked for")));
    EXPECT_TRUE(std::ranges::any_of(paper.blocks, [](const papers::Block& block) {
        const auto* signature = std::get_if<papers::Signature>(&block);
        return signature && !signature->drawn.isNull();
    }));
}

TEST(Receipts, OneThatGoesBackUnmendedIsNotSaidToBeDone)
{
    Sample sample;
    bench::Event gone;
    gone.id = EventId(sample.bench.events().back().id.value() + 1);
    gone.what = bench::What::ReturnedUnmended;
    gone.piece = sample.file.piece.id;
    gone.happened = gone.recorded = sample.now;
    gone.note = "it cannot be mended";
    gone.word = "onPaper";
    sample.bench.events().push_back(gone);
    sample.refold();
    const QString words = wordsOf(paperOf(Kind::OutReceipt, sample.source()));
    expectAll(words, {"Given back unmended", "it cannot be mended", "signed on paper"});
    EXPECT_FALSE(words.contains(QStringLiteral("Done")));
}

TEST(Receipts, TheTagSaysNotWhoseItIs)
{
    const Sample sample;
    const papers::Tag tag = tagOf(sample.source());
    EXPECT_EQ(tag.number, QStringLiteral("2604175"));
    const QString all = tag.number + tag.shown + tag.name + tag.line;
    EXPECT_FALSE(all.contains(QStringLiteral("ller"))) << all.toStdString();
    EXPECT_TRUE(tag.line.contains(QStringLiteral("7 fragments"))) << tag.line.toStdString();
    EXPECT_TRUE(tag.line.contains(QStringLiteral("lid; stand (2)"))) << tag.line.toStdString();
}

TEST(Receipts, AFileOfAPaperIsNamedByItsNumberAlone)
{
    const Sample sample;
    for (const Kind kind : allKinds) {
        const QString stem = fileStem(kind, sample.file.piece);
        EXPECT_TRUE(stem.startsWith(QStringLiteral("260417-5-"))) << stem.toStdString();
        for (const QChar letter : stem) {
            EXPECT_TRUE(letter.isLetterOrNumber() || letter == QLatin1Char('-')) << stem.toStdString();
        }
    }
}
