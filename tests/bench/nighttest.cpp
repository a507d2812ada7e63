#include "core/bench/night.h"

#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::bench;
using namespace mend::test;
using namespace std::chrono;

namespace {

const std::string gold = "goldLacquerSeam";

/// A bench that is staffed from 9:00 (minute 0) to 17:30 (510) and again from 9:00 of the next day (1440).
struct Evening {
    explicit Evening(double celsius = 23) : bench(shippedRules(), celsius)
    {
        bench.roster().openHours = {{TestBench::at(0), TestBench::at(510)}, {TestBench::at(1440), TestBench::at(1950)}};
    }
    NightAhead ahead(double minute) const
    {
        return nightAhead(bench.windows(minute), bench.fold(), TestBench::at(minute));
    }
    TestBench bench;
};

bool names(const std::vector<Window>& windows, PieceId piece, const std::string& stage)
{
    return std::ranges::any_of(
        windows, [&](const Window& window) { return window.piece == piece && window.stage.stage == stage; });
}

} // namespace

TEST(Night, SaysWhatWillNotBeCuredByMorning)
{
    // The joins rest 12 h before they are scraped (common practice, no source). Glued at 16:00 they are done at 4:00;
    // glued at 23:00 of the bench's evening only at 11:00, two hours after it opens.
    Evening early;
    const PieceId one = early.bench.add(gold).id;
    early.bench.upTo(one, "scrapeAndKey", 420);
    const NightAhead early500 = early.ahead(500);
    EXPECT_TRUE(early500.isTold);
    EXPECT_DOUBLE_EQ(minuteOf(early500.morning), 1440);
    EXPECT_TRUE(names(early500.overByMorning, one, "scrapeAndKey"));
    EXPECT_TRUE(early500.notCured.empty());

    Evening late;
    const PieceId other = late.bench.add(gold).id;
    late.bench.upTo(other, "scrapeAndKey", 840);
    const NightAhead late900 = late.ahead(900);
    EXPECT_TRUE(names(late900.notCured, other, "scrapeAndKey"));
    EXPECT_TRUE(late900.overByMorning.empty());
}

TEST(Night, CountsAWaitByItsSlowEnd)
{
    // At 20 C twelve hours at 23 C take 12 h * exp(Ea/R (1/293.15 - 1/296.15)): 14.1 h at 50, 15.1 at 70 kJ/mol. With
    // the morning between the two the piece is not promised.
    Evening evening(20);
    const PieceId piece = evening.bench.add(gold).id;
    const double glued = evening.bench.upTo(piece, "scrapeAndKey", 0) - 1;
    evening.bench.roster().openHours = {{TestBench::at(0), TestBench::at(200)},
                                        {TestBench::at(glued + 14.6 * 60), TestBench::at(3000)}};
    const NightAhead night = evening.ahead(210);
    ASSERT_TRUE(names(night.notCured, piece, "scrapeAndKey"));
    EXPECT_LT(*night.notCured.front().opens, night.notCured.front().opensAtLatest);
}

TEST(Night, NamesWhatWouldCloseOnAnEmptyRoom)
{
    Evening evening(24);
    const PieceId piece = evening.bench.add(gold).id;
    evening.bench.upTo(piece, "fillRun", -900);
    const MixId mix = evening.bench.mix("fillerPaste", 500);
    evening.bench.begun(piece, "fillRun", 501, 1, mix);
    evening.bench.done(piece, "fillRun", 505, 1, mix);
    const NightAhead night = evening.ahead(506);
    ASSERT_FALSE(night.closesAlone.empty());
    EXPECT_EQ(night.closesAlone.front().stage.stage, "wipeBack");
    evening.bench.done(piece, "wipeBack", 512);
    EXPECT_FALSE(names(evening.ahead(513).closesAlone, piece, "wipeBack"));
}

TEST(Night, KnowsWhichPlacesHaveToStayOn)
{
    Evening evening;
    const PieceId piece = evening.bench.add(gold).id;
    EXPECT_TRUE(evening.ahead(10).staysOn.empty());
    Event placed = evening.bench.event(What::Placed, 20);
    placed.piece = piece;
    placed.place = TestBench::cabinet;
    evening.bench.tell(placed);
    EXPECT_EQ(evening.ahead(30).staysOn, std::vector{TestBench::cabinet});
}

TEST(Night, WithoutHoursTwelveAreTaken)
{
    Evening evening;
    evening.bench.roster().openHours.clear();
    const NightAhead night = evening.ahead(10);
    EXPECT_FALSE(night.isTold);
    EXPECT_DOUBLE_EQ(minuteOf(night.morning), 10 + 12 * 60);
}

TEST(Night, TellsInTheMorningWhatCameToItsEnd)
{
    Evening evening;
    const PieceId piece = evening.bench.add(gold).id;
    evening.bench.upTo(piece, "scrapeAndKey", 420);
    const auto windows = evening.bench.windows(1440);
    const auto ended = endedMeanwhile(windows, {TestBench::at(510), TestBench::at(1440)});
    EXPECT_TRUE(names(ended, piece, "scrapeAndKey"));
    EXPECT_TRUE(endedMeanwhile(windows, {TestBench::at(1400), TestBench::at(1440)}).empty());
}
