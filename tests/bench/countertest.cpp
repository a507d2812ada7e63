#include "core/bench/counter.h"

#include "core/bench/handover.h"
#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::bench;
using namespace mend::test;
using std::chrono::days;
using std::chrono::hours;

namespace {

CivilDay utcDay(Instant at) { return CivilDay(std::chrono::floor<days>(at)); }
CivilDay day(const char* text) { return dayFrom(text).value(); }
constexpr double minutesOfADay = 24 * 60;

struct Counting {
    Counting() : bench(shippedRules(), 24) {}
    PieceId mended()
    {
        const PieceId piece = bench.add("goldLacquerSeam").id;
        bench.upTo(piece, "no stage: all of them", 1);
        return piece;
    }
    void tell(PieceId piece, What what, double minute, const std::string& word = {}, std::optional<Instant> until = {})
    {
        Event event = bench.event(what, minute);
        event.piece = piece;
        event.word = word;
        event.until = until;
        bench.tell(event);
    }
    CounterFacts at(double minute) const
    {
        return counterOf(bench.fold(), bench.events(), bench.book(), TestBench::at(minute), utcDay);
    }
    mutable TestBench bench;
};

std::vector<PieceId> in(const std::vector<CounterLine>& list)
{
    std::vector<PieceId> pieces;
    for (const CounterLine& line : list) {
        pieces.push_back(line.piece);
    }
    return pieces;
}

using Pieces = std::vector<PieceId>;

} // namespace

TEST(Counter, SaysWhatMayBeCollectedAndSinceWhen)
{
    Counting counting;
    const PieceId piece = counting.mended();
    EXPECT_TRUE(counting.at(100).mayBeCollected.empty()) << "the epoxy waits";
    const auto from = handOverFrom(*counting.bench.fold().piece(piece), counting.bench.book());
    const double minute = minuteOf(from->at);
    EXPECT_TRUE(counting.at(minute - 1).mayBeCollected.empty());
    EXPECT_EQ(in(counting.at(minute).mayBeCollected), Pieces{piece});
    const CounterFacts later = counting.at(minute + 31 * minutesOfADay);
    EXPECT_EQ(later.mayBeCollected.front().days, 31);
    EXPECT_EQ(in(later.unclaimed), Pieces{piece});
    EXPECT_TRUE(counting.at(minute + 20 * minutesOfADay).unclaimed.empty());
}

TEST(Counter, SaysWhatIsLateAndWhomToCall)
{
    Counting counting;
    const PieceId piece = counting.bench.add("goldLacquerSeam").id; // day 0 is 2027-03-01
    counting.tell(piece, What::Promised, 5, "2027-03-03");
    const CounterFacts soon = counting.at(10);
    EXPECT_EQ(in(soon.toCall), Pieces{piece}) << "no gold seam is dry in two days";
    EXPECT_TRUE(soon.late.empty());
    EXPECT_TRUE(counting.at(2 * minutesOfADay).late.empty()) << "the promised day itself";
    EXPECT_EQ(in(counting.at(3 * minutesOfADay).late), Pieces{piece});
    counting.tell(piece, What::OwnerTold, 20, "phone");
    EXPECT_TRUE(counting.at(30).toCall.empty()) << "the owner knows";
    counting.tell(piece, What::Promised, 40, "2027-03-04");
    EXPECT_EQ(in(counting.at(50).toCall), Pieces{piece}) << "promised anew since";
    counting.tell(piece, What::Promised, 60, "2027-12-01");
    EXPECT_TRUE(counting.at(70).toCall.empty());
    EXPECT_TRUE(counting.at(3 * minutesOfADay).late.empty());
}

TEST(Counter, SaysWhatWaitsForItsOwner)
{
    Counting counting;
    const PieceId asked = counting.bench.add("goldLacquerSeam").id;
    counting.tell(asked, What::WaitingForOwner, 5);
    EXPECT_EQ(in(counting.at(10).waitsForOwner), Pieces{asked});
    counting.tell(asked, What::OwnerAnswered, 15);
    EXPECT_TRUE(counting.at(20).waitsForOwner.empty());
}

TEST(Counter, JudgesAPromiseByTheLongestWaitOfAllMaterials)
{
    Counting counting;
    const PieceId piece = counting.bench.add("goldLacquerSeam").id;
    const PieceState state = *counting.bench.fold().piece(piece);
    const auto judge = [&](const char* promised) {
        return judgePromise(day(promised), state, counting.bench.book(), TestBench::at(1), utcDay);
    };
    const PromiseJudgement tomorrow = judge("2027-03-02");
    ASSERT_TRUE(tomorrow.earliest);
    // Epoxy and lacquer wait seven days after their last stage (common practice, no source).
    EXPECT_GE(*tomorrow.earliest, day("2027-03-08"));
    EXPECT_FALSE(tomorrow.material.empty());
    EXPECT_EQ(tomorrow.daysTooEarly, daysBetween(day("2027-03-02"), *tomorrow.earliest));
    EXPECT_EQ(judgePromise(*tomorrow.earliest, state, counting.bench.book(), TestBench::at(1), utcDay).daysTooEarly, 0);
    EXPECT_EQ(judge("2027-12-01").daysTooEarly, 0);
}

TEST(Counter, NeverPromisesBeforeWhatTheMendedPieceThenWaits)
{
    // Whatever is played ahead is never later than what comes of doing all the work without a pause and more.
    for (const auto& procedure : shippedRules().procedures) {
        Counting counting;
        const PieceId piece = counting.bench.add(procedure.key).id;
        const auto ahead =
            earliestHandOver(*counting.bench.fold().piece(piece), counting.bench.book(), TestBench::at(0));
        ASSERT_TRUE(ahead) << procedure.key;
        EXPECT_GT(ahead->at, TestBench::at(0)) << procedure.key;
        counting.bench.upTo(piece, "no stage: all of them", 60.0 * 24 * 365);
        const auto slow = handOverFrom(*counting.bench.fold().piece(piece), counting.bench.book());
        ASSERT_TRUE(slow) << procedure.key;
        EXPECT_LT(ahead->at, slow->at) << procedure.key;
    }
}

TEST(Counter, NamesTheFirstWholeDayAfterTheWait)
{
    const Instant midnight(std::chrono::sys_days(day("2027-03-08")));
    EXPECT_EQ(collectableDay(midnight, utcDay), day("2027-03-08"));
    EXPECT_EQ(collectableDay(midnight + hours(9), utcDay), day("2027-03-09"));
    EXPECT_EQ(collectableDay(midnight - Span{1}, utcDay), day("2027-03-08"));
}

TEST(Counter, AWaitCanBeShortenedWithAReason)
{
    Counting counting;
    const PieceId piece = counting.mended();
    const auto full = handOverFrom(*counting.bench.fold().piece(piece), counting.bench.book());
    counting.tell(piece, What::WaitShortened, 200, {}, TestBench::at(300));
    const auto shortened = handOverFrom(*counting.bench.fold().piece(piece), counting.bench.book());
    EXPECT_EQ(shortened->at, TestBench::at(300));
    EXPECT_EQ(shortened->fullWait, full->at);
    EXPECT_EQ(in(counting.at(300).mayBeCollected), Pieces{piece});
}
