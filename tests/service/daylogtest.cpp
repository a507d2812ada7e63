#include "core/service/daylog.h"

#include "core/bench/alertanswer.h"
#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::service;
using namespace mend::test;
using bench::What;

namespace {

struct Day {
    Day() : bench(shippedRules(), 24)
    {
        piece = bench.add("goldLacquerSeam").id;
        bench.upTo(piece, "fillRun", 1);
        mix = bench.mix("fillerPaste", 98);
        filler = bench.done(piece, "fillRun", 100, 1, mix);
    }
    std::vector<LogLine> log(double now = 110)
    {
        return dayLog(bench.events(), bench::fold(bench.roster(), bench.events(), bench.book()), bench.book(),
                      {TestBench::at(-600), TestBench::at(now + 1)}, TestBench::at(now), Manner());
    }
    LogLine line(EventId event, double now = 110)
    {
        const auto all = log(now);
        const auto found = std::ranges::find(all, event, &LogLine::event);
        return found == all.end() ? LogLine() : *found;
    }
    TestBench bench;
    PieceId piece;
    MixId mix;
    EventId filler;
};

} // namespace

TEST(DayLog, SaysWhatWasToldNewestFirst)
{
    Day day;
    const auto log = day.log();
    ASSERT_GE(log.size(), 3U);
    EXPECT_EQ(log.front().event, day.filler);
    const rules::Stage* stage = day.bench.book().procedure("goldLacquerSeam")->find("fillRun");
    EXPECT_EQ(log.front().words.toStdString(), stage->done);
    EXPECT_EQ(log.front().pieceName, QStringLiteral("Piece 1"));
    EXPECT_EQ(log.front().person, QStringLiteral("Mender"));
    EXPECT_TRUE(std::ranges::is_sorted(log, std::greater{}, &LogLine::happened));
    for (const LogLine& line : log) {
        EXPECT_FALSE(line.words.isEmpty()) << line.event.value();
    }
}

TEST(DayLog, MarksWhatWasTakenBackAndKeepsItInSight)
{
    Day day;
    bench::Event voided = day.bench.event(What::Voided, 105);
    voided.target = day.filler;
    day.bench.tell(voided);
    const LogLine line = day.line(day.filler);
    EXPECT_TRUE(line.takenBack);
    EXPECT_FALSE(line.canMove);
    EXPECT_FALSE(line.canTakeBack);
    EXPECT_EQ(day.log().front().event, day.filler) << "the taking back is no line of its own";
}

TEST(DayLog, ShowsAMovedFactWhereItStandsNow)
{
    Day day;
    bench::Event again = day.bench.event(What::Retold, 105);
    again.target = day.filler;
    again.happened = TestBench::at(90);
    again.piece = day.piece;
    day.bench.tell(again);
    EXPECT_EQ(day.line(day.filler).happened, TestBench::at(90));
    EXPECT_TRUE(day.line(day.filler).toldAgain);
}

TEST(DayLog, LetsADayPassBeforeAFactIsFixed)
{
    Day day;
    EXPECT_TRUE(day.line(day.filler, 110).canMove);
    EXPECT_TRUE(day.line(day.filler, 100 + 24 * 60 - 1).canMove);
    EXPECT_FALSE(day.line(day.filler, 100 + 24 * 60).canMove);
    EXPECT_FALSE(day.line(day.filler, 100 + 24 * 60).canTakeBack);
}

TEST(DayLog, LeavesOutWhatTheProgramNotedByItself)
{
    Day day;
    bench::Event shown = day.bench.event(What::AlertAnswered, 106);
    shown.piece = day.piece;
    shown.word = bench::answerWord("1/wipeBack#1/closes", bench::Answered::Shown);
    const EventId own = day.bench.tell(shown);
    shown.word = bench::answerWord("1/wipeBack#1/closes", bench::Answered::HandsOn);
    const EventId person = day.bench.tell(shown);
    EXPECT_FALSE(day.line(own).event.isSet());
    EXPECT_EQ(day.line(person).words, QStringLiteral("Hands on it"));
}

TEST(MoveFault, AFactIsNotOfTheFutureNorOfTheDayBefore)
{
    const Instant now = TestBench::at(0);
    EXPECT_EQ(moveFault(now, now), MoveFault::None);
    EXPECT_EQ(moveFault(now + Span(1), now), MoveFault::Future);
    EXPECT_EQ(moveFault(now - std::chrono::hours(24), now), MoveFault::TooLongAgo);
    EXPECT_EQ(moveFault(now - std::chrono::hours(24) + Span(1), now), MoveFault::None);
}
