#include "core/service/cardwording.h"

#include <gtest/gtest.h>

namespace mend::service {
namespace {

using namespace std::chrono;
using bench::CountKind;
using bench::Reason;
using bench::ReasonKind;
using bench::Standing;

const Instant cardNow = sys_days{2026y / November / 28} + hours{13} + minutes{42};

bench::Card cardWith(CountKind counts, Span to)
{
    bench::Card card;
    card.piece = PieceId(1);
    card.benchName = "Heron bowl";
    card.number = "2604175";
    card.ownerName = "Ines Varga";
    card.placeName = "Bench";
    card.act = "Wipe back the filler";
    card.stage = {"wipeBack", 2};
    card.repetitions = 4;
    card.standing = Standing::Open;
    card.counts = counts;
    card.countTo = cardNow + to;
    return card;
}

struct Counted {
    CountKind kind;
    Standing standing;
    Span to;
    const char* digits;
    const char* below;
    bool seconds;
};

const Counted counted[] = {
    {CountKind::StartBy, Standing::Open, minutes{2} + seconds{12}, "2:12", "start by 13:44", true},
    {CountKind::StartBy, Standing::Open, -minutes{2}, "0:00", "should have begun 13:40", false},
    {CountKind::StartBy, Standing::UnderHands, minutes{7}, "7:00", "hands off by 13:49", true},
    {CountKind::UnderHands, Standing::UnderHands, -minutes{7}, "7:00", "since 13:35", true},
    {CountKind::Opens, Standing::Waiting, minutes{14}, "14:00", "opens 13:56", true},
    {CountKind::Ends, Standing::Waiting, minutes{70}, "1 h 10", "until 14:52", false},
    {CountKind::Late, Standing::Past, -minutes{42}, "42 min", "closed 13:00", false},
    {CountKind::Counted, Standing::UnderHands, seconds{95}, "1:35", "in place by 13:43", true},
    {CountKind::Nothing, Standing::Stopped, minutes{37}, "–", "not before 14:19", false},
};

TEST(CardWording, CountsToWhatTheCardSays)
{
    for (const Counted& each : counted) {
        bench::Card card = cardWith(each.kind, each.to);
        card.standing = each.standing;
        const CountWords words = countWords(card, cardNow, {});
        if (each.kind == CountKind::Counted) {
            // Counted windows are under hands and still say when the join must sit.
            EXPECT_EQ(words.digits.toStdString(), each.digits);
            continue;
        }
        EXPECT_EQ(words.digits.toStdString(), each.digits);
        EXPECT_EQ(words.below.toStdString(), each.below);
        EXPECT_EQ(words.seconds, each.seconds) << each.below;
    }
}

TEST(CardWording, TakesTheLatestStartFromTheOneFunction)
{
    bench::Card card = cardWith(CountKind::StartBy, minutes{50});
    bench::Window window;
    window.closes = cardNow + minutes{60};
    window.latestStart = cardNow + minutes{3}; // a chain has moved it
    card.window = window;
    EXPECT_EQ(countWords(card, cardNow, {}).digits, countDigits(*bench::remaining(window, cardNow)));
    EXPECT_EQ(countWords(card, cardNow, {}).digits.toStdString(), "3:00");
}

TEST(CardWording, SaysARangeOfClockTimes)
{
    bench::Card card = cardWith(CountKind::Ends, minutes{70});
    card.countToAtLatest = cardNow + minutes{95};
    EXPECT_EQ(countWords(card, cardNow, {}).below.toStdString(), "about 14:52 to 15:17");
}

Names someNames()
{
    Names names;
    names.pieces[PieceId(2)] = QStringLiteral("Celadon dish");
    names.places[PlaceId(3)] = QStringLiteral("Humid box");
    names.mixes[MixId(4)] = QStringLiteral("Filler");
    names.acts[{PieceId(2), {"dust", 1}}] = QStringLiteral("Dust the gold");
    return names;
}

TEST(CardWording, HasALineForEveryKindOfReason)
{
    struct Row {
        Reason reason;
        const char* words = "";
    };
    const Row rows[] = {
        {{.kind = ReasonKind::Hazard, .text = "No flame: pads are drying", .until = cardNow + minutes{37}},
         "No flame until 14:19: pads are drying"},
        {{.kind = ReasonKind::Hazard, .text = "No flame: pads are drying"}, "No flame: pads are drying"},
        {{.kind = ReasonKind::MissCosts, .text = "cut back, fill again", .miss = rules::Miss::Afternoon},
         "a miss costs an afternoon: cut back, fill again"},
        {{.kind = ReasonKind::Sooner, .span = minutes{3}, .temperature = Temperature::fromCelsius(26.4)},
         "3 min sooner: it is 26.4 °C"},
        {{.kind = ReasonKind::ChainThen, .piece = PieceId(2), .stage = {"dust", 1}},
         "then Celadon dish: dust the gold"},
        {{.kind = ReasonKind::TwoNeedHands, .piece = PieceId(2)}, "Two need your hands: Celadon dish as well"},
        {{.kind = ReasonKind::MixLeft, .span = minutes{7}, .mix = MixId(4)}, "Filler mix: 7 min left"},
        {{.kind = ReasonKind::TestByTouch}, "test by touch"},
        {{.kind = ReasonKind::Stalled, .temperature = Temperature::fromCelsius(16.5)},
         "Stalled at 16.5 °C: check by touch"},
        {{.kind = ReasonKind::StaleReading, .span = hours{26}, .place = PlaceId(3)},
         "reading of Humid box is 1 day 2 h old"},
        {{.kind = ReasonKind::NoReading, .place = PlaceId(3)}, "no reading of Humid box: reckoned at the rule's own"},
        {{.kind = ReasonKind::MayStay}, "may stay longer"},
        {{.kind = ReasonKind::Late, .span = minutes{42}}, "closed 42 min ago"},
        {{.kind = ReasonKind::Hold}, "on hold"},
        {{.kind = ReasonKind::Fits, .until = cardNow + minutes{20}}, "fits: start by 14:02"},
        {{.kind = ReasonKind::Fits}, "fits"},
        {{.kind = ReasonKind::Clashes, .until = cardNow + minutes{22}, .piece = PieceId(2), .stage = {"dust", 1}},
         "would clash: Celadon dish, dust the gold, closes 14:04"},
        {{.kind = ReasonKind::Clashes}, "does not fit now: a window would close meanwhile"},
        {{.kind = ReasonKind::NotBefore, .until = cardNow + minutes{18}}, "cannot begin before 14:00"},
        {{.kind = ReasonKind::UnsureIfFits, .piece = PieceId(2)}, "unsure whether it fits beside Celadon dish"},
        {{.kind = ReasonKind::HeatOver, .temperature = Temperature::fromCelsius(49), .place = PlaceId(3)},
         "Humid box is 49.0 °C: too warm for what is in it"},
        {{.kind = ReasonKind::Caution, .text = "gloves"}, "gloves"},
    };
    for (const Row& row : rows) {
        EXPECT_EQ(reasonWords(row.reason, someNames(), cardNow, {}).toStdString(), row.words);
    }
}

TEST(CardWording, PutsTheWholeCardIntoOneSentence)
{
    bench::Card card = cardWith(CountKind::StartBy, minutes{2});
    card.seam.closes = cardNow + minutes{7};
    EXPECT_EQ(cardSentence(card, {}, cardNow, {}).toStdString(),
              "Wipe back the filler. 2 of 4. open. Heron bowl. 260417-5. Ines Varga. Bench. 2:00, start by 13:44. "
              "closes 13:49");
    bench::Reason caution{.kind = bench::ReasonKind::Caution};
    caution.text = "No flame until pads are dry.";
    card.reasons = {caution, caution};
    EXPECT_FALSE(cardSentence(card, {}, cardNow, {}).contains(QStringLiteral(".."))) << "nothing is read out twice";
    EXPECT_TRUE(cardSentence(card, {}, cardNow, {}).endsWith(QStringLiteral("dry. No flame until pads are dry")));
}

TEST(CardWording, HasWordsForEveryActAndState)
{
    using bench::ActKind;
    QStringList words;
    for (const auto kind : {ActKind::HandsOnIt, ActKind::Begin, ActKind::Finish, ActKind::Confirm, ActKind::NotYet,
                            ActKind::WasInTime, ActKind::DoingLate, ActKind::NotDone, ActKind::AskHazard,
                            ActKind::HandOver, ActKind::EndHold, ActKind::SendBack}) {
        words << actWords({kind, {}, {}});
    }
    for (const auto standing :
         {Standing::DoNow, Standing::Open, Standing::Past, Standing::UnderHands, Standing::Stopped, Standing::Stalled,
          Standing::Waiting, Standing::Free, Standing::OnHold, Standing::Ready}) {
        words << standingWords(standing);
    }
    EXPECT_FALSE(words.contains(QString()));
    EXPECT_EQ(words.removeDuplicates(), 0);
    EXPECT_EQ(actWords({ActKind::Finish, {}, "Wiped back"}).toStdString(), "Wiped back");
}

} // namespace
} // namespace mend::service
