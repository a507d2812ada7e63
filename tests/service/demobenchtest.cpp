#include "core/service/demobench.h"

#include "core/bench/alert.h"
#include "core/bench/alertcall.h"
#include "core/bench/card.h"
#include "core/bench/counter.h"
#include "core/record/piecenumber.h"
#include "core/service/demopast.h"
#include "core/service/openbench.h"
#include "core/service/piecefile.h"
#include "core/store/check.h"
#include "tests/support/rulefiles.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <memory>
#include <regex>
#include <set>

namespace mend::service {

using bench::AlertKind;
using bench::Standing;
using std::chrono::hours;
using std::chrono::minutes;

namespace {

const rules::RuleBook& book()
{
    static const rules::RuleBook shipped = test::shippedRules();
    return shipped;
}

Moment momentAt(Instant at) { return {at, {"this boot", hours(7)}}; }

/// The demo as it stands at one instant, looked at through the same functions as the window.
struct Shown {
    explicit Shown(Instant at, const QTimeZone& zone = QTimeZone::utc())
        : now(at), demo(demoBench(book(), momentAt(at), zone).takeValue()),
          bench(bench::fold(demo.roster, demo.events, book())), board(bench::boardOf(bench, book(), at)),
          alerts(bench::alertsFor(bench, board.windows, book(), at))
    {
    }
    const bench::Card* card(const std::string& name) const
    {
        const auto found = std::ranges::find(board.cards, name, &bench::Card::benchName);
        return found == board.cards.end() ? nullptr : &*found;
    }
    /// Calls at `at`, answers and hands considered.
    bool calls(const bench::Alert& alert, Instant at) const
    {
        const auto answer = std::ranges::find(bench.answers, alert.key, &bench::AlertAnswer::key);
        return bench::callOf(alert, answer == bench.answers.end() ? nullptr : &*answer, std::nullopt, at).state ==
               bench::CallState::Calling;
    }

    Instant now;
    DemoBench demo;
    bench::BenchFold bench;
    bench::Board board;
    std::vector<bench::Alert> alerts;
};

class DemoAtEveryHour : public testing::TestWithParam<int> {
protected:
    const Shown& shown = shownAt(GetParam());

private:
    static const Shown& shownAt(int hour)
    {
        static std::map<int, std::unique_ptr<const Shown>> built; // one for all tests of an hour: it takes a while
        auto& shown = built[hour];
        if (!shown) {
            // An odd minute and second, so that nothing falls into place by being round.
            shown = std::make_unique<const Shown>(*fromRfc3339("2026-11-25T00:00:00.000Z") + hours(hour) + minutes(37) +
                                                  Span{12'345});
        }
        return *shown;
    }
};

} // namespace

TEST_P(DemoAtEveryHour, ShowsEightPiecesOfSixOwnersOverAllFiveProcedures)
{
    std::set<std::string> owners;
    std::set<std::string> procedures;
    std::set<std::string> numbers;
    for (const bench::Card& card : shown.board.cards) {
        owners.insert(card.ownerName);
        procedures.insert(card.procedureName);
        numbers.insert(card.number);
        EXPECT_TRUE(record::readPieceNumber(card.number)) << card.number;
    }
    EXPECT_EQ(shown.board.cards.size(), 8U);
    EXPECT_EQ(numbers.size(), 8U);
    EXPECT_EQ(owners.size(), 6U);
    EXPECT_EQ(procedures.size(), 5U);
    EXPECT_EQ(book().procedures.size(), 5U);
}

TEST_P(DemoAtEveryHour, SoundsItsFirstAlertAMinuteAfterOpening)
{
    std::optional<bench::Alert> first;
    for (const bench::Alert& alert : shown.alerts) {
        EXPECT_FALSE(shown.calls(alert, shown.now)) << alert.key << " calls at once";
        EXPECT_FALSE(shown.calls(alert, shown.now + demoFirstAlert - Span{1})) << alert.key << " calls too early";
        if (shown.calls(alert, shown.now + demoFirstAlert)) {
            first = alert;
        }
    }
    ASSERT_TRUE(first);
    EXPECT_EQ(first->due, shown.now + demoFirstAlert);
    EXPECT_EQ(first->kind, AlertKind::Closes);
    EXPECT_EQ(first->urgency, bench::Urgency::A);
    EXPECT_EQ(first->stage.stage, "wipeBack");
}

TEST_P(DemoAtEveryHour, LeavesTimeToWipeTheFillBackOnceItHasSounded)
{
    const bench::Card* card = shown.card("Heron bowl");
    ASSERT_TRUE(card && card->window && card->window->latestStart);
    EXPECT_EQ(card->stage.stage, "wipeBack");
    EXPECT_EQ(card->standing, Standing::Open);
    EXPECT_LE(*card->window->opens, shown.now);
    EXPECT_GE(*bench::remaining(*card->window, shown.now + demoFirstAlert), minutes(1));
    EXPECT_TRUE(card->window->chain.empty()) << "another window wants the same hands first";
    // As the program sees it when the alert has sounded, and it is done a minute later.
    const auto later = bench::boardOf(shown.bench, book(), shown.now + demoFirstAlert);
    EXPECT_EQ(later.cards.front().benchName, "Heron bowl");
    EXPECT_EQ(later.cards.front().standing, Standing::DoNow);
}

TEST_P(DemoAtEveryHour, HasOneGoldWindowOpenForLonger)
{
    int open = 0;
    for (const bench::Window& window : shown.board.windows) {
        open += window.stage.stage == "dustPowder" && bench::phaseOf(window, shown.now) == bench::Phase::Open ? 1 : 0;
    }
    EXPECT_EQ(open, 1);
    const bench::Card* card = shown.card("Celadon dish");
    ASSERT_TRUE(card && card->window);
    EXPECT_EQ(card->standing, Standing::Open);
    EXPECT_EQ(card->window->miss, rules::Miss::Day);
    EXPECT_GT(*bench::remaining(*card->window, shown.now), minutes(20));
}

TEST_P(DemoAtEveryHour, HasOneCureStalledInTheCold)
{
    std::vector<std::string> stalled;
    for (const bench::Card& card : shown.board.cards) {
        if (card.standing == Standing::Stalled) {
            stalled.push_back(card.benchName);
            EXPECT_EQ(card.placeName, "Window sill");
            EXPECT_TRUE(card.seam.stalled);
        }
    }
    EXPECT_EQ(stalled, std::vector<std::string>{"Blue jug"});
}

TEST_P(DemoAtEveryHour, HasOneHazardInForce)
{
    std::vector<std::string> stopped;
    for (const bench::Card& card : shown.board.cards) {
        if (card.standing == Standing::Stopped) {
            stopped.push_back(card.benchName);
            ASSERT_FALSE(card.hazards.empty());
            EXPECT_EQ(card.hazards.front().hazard->key, "INC-01");
            ASSERT_TRUE(card.hazards.front().until) << "it is said until when";
            EXPECT_GT(*card.hazards.front().until, shown.now + minutes(5));
        }
    }
    EXPECT_EQ(stopped, std::vector<std::string>{"Sugar box"});
    EXPECT_TRUE(std::ranges::any_of(shown.board.states, [](const auto& state) { return state.state == "padsDrying"; }));
}

TEST_P(DemoAtEveryHour, HasOneMixRunningOut)
{
    ASSERT_EQ(shown.board.mixes.size(), 1U);
    const bench::MixCard& mix = shown.board.mixes.front();
    ASSERT_TRUE(mix.stiffAt);
    EXPECT_GT(*mix.stiffAt, shown.now + minutes(2));
    EXPECT_LT(*mix.stiffAt, shown.now + minutes(25));
    EXPECT_EQ(mix.on, std::vector<PieceId>{shown.card("Heron bowl")->piece});
}

TEST_P(DemoAtEveryHour, HasOnePieceWaitingInTheCabinet)
{
    const bench::Card* card = shown.card("Lattice plate");
    ASSERT_TRUE(card);
    EXPECT_EQ(card->placeName, "Cabinet");
    EXPECT_EQ(card->standing, Standing::Waiting);
    ASSERT_TRUE(card->countTo);
    EXPECT_GT(*card->countTo, shown.now + minutes(10));
}

TEST_P(DemoAtEveryHour, KeepsTheBenchOpenForAsLongAsTheDemoIsKept)
{
    const bool staysOpen = std::ranges::any_of(shown.demo.roster.openHours, [this](const InstantRange& open) {
        return open.from < shown.now - hours(4) && open.to > shown.now + hours(4);
    });
    EXPECT_TRUE(staysOpen);
}

TEST_P(DemoAtEveryHour, TellsOnlyWhatHasHappened)
{
    std::int64_t id = 0;
    for (const bench::Event& event : shown.demo.events) {
        EXPECT_EQ(event.id.value(), ++id);
        EXPECT_LE(event.happened, shown.now);
        EXPECT_TRUE(event.what != bench::What::Done || !event.rules.empty());
    }
    const auto past = std::ranges::count_if(shown.board.cards,
                                            [](const bench::Card& card) { return card.standing == Standing::Past; });
    EXPECT_EQ(past, 0) << "a bench on which something was missed is a poor welcome";
}

INSTANTIATE_TEST_SUITE_P(Hours, DemoAtEveryHour, testing::Range(0, 24));

TEST(DemoBench, NamesNobodyWhoCouldBeRung)
{
    // Set aside for fiction: NANP 555-0100 to 555-0199; Ofcom's drama ranges 020 7946 0xxx, 01632 960xxx, 07700 900xxx.
    const std::regex fiction(R"(\(\d{3}\) 555-01\d\d|020 7946 0\d{3}|01632 960\d{3}|07700 900\d{3})");
    const Shown shown(*fromRfc3339("2026-11-25T15:00:00.000Z"));
    for (const record::Customer& owner : shown.demo.roster.customers) {
        EXPECT_TRUE(std::regex_match(owner.contact, fiction)) << owner.contact;
    }
}

TEST(DemoBench, StaysOpenOverMidnightWhereverTheStudioIs)
{
    const Instant late = *fromRfc3339("2026-03-28T21:05:00.000Z");
    for (const char* zone : {"Europe/Vienna", "Asia/Kathmandu", "Australia/Lord_Howe", "America/New_York"}) {
        const Shown shown(late, QTimeZone(zone));
        const bool open = std::ranges::any_of(shown.demo.roster.openHours, [&](const InstantRange& range) {
            return range.from < late && range.to > late + std::chrono::hours(3);
        });
        EXPECT_TRUE(open) << zone;
    }
}

TEST(DemoFile, IsWrittenOnceAndReadBackTheSame)
{
    const test::Scratch scratch;
    const auto file = scratch / "demo.mendbench";
    const Instant now = *fromRfc3339("2026-11-25T15:00:00.000Z");
    ASSERT_TRUE(prepareDemo(file, book(), momentAt(now), QTimeZone::utc(), false));

    RuleShelf shelf({std::filesystem::path(MEND_SOURCE_DIR) / "resources" / "rules", {}, {}});
    const auto opened = store::Store::open(file, store::OpenMode::ReadOnly);
    ASSERT_TRUE(opened) << opened.fault().detail;
    const auto read = readBench(*opened.value(), shelf, now);
    ASSERT_TRUE(read) << read.fault().detail;
    const Shown built(now);
    const OpenBench& open = read.value();
    const auto last = built.demo.events.back().id;
    std::vector<bench::Event> ofTheBench;
    std::ranges::copy_if(open.record.events, std::back_inserter(ofTheBench),
                         [&](const bench::Event& event) { return event.id <= last; });
    EXPECT_TRUE(ofTheBench == built.demo.events);
    for (const record::Piece& piece : built.demo.roster.pieces) {
        ASSERT_NE(open.record.roster.piece(piece.id), nullptr);
        EXPECT_EQ(*open.record.roster.piece(piece.id), piece);
    }
    EXPECT_EQ(open.studio, built.demo.studio);
    EXPECT_EQ(open.storedRevisions.size(), 5U) << "every revision that an event uses is in the file";
    EXPECT_EQ(open.record.next.value(), static_cast<std::int64_t>(opened.value()->allEvents().value().size()) + 1);
}

TEST(DemoFile, HasThreeYearsBehindIt)
{
    const test::Scratch scratch;
    const auto file = scratch / "demo.mendbench";
    const Instant now = *fromRfc3339("2026-11-25T15:00:00.000Z");
    ASSERT_TRUE(prepareDemo(file, book(), momentAt(now), QTimeZone::utc(), false));
    const auto store = store::Store::open(file, store::OpenMode::ReadWrite).takeValue();
    const auto pieces = store->pieces().value();
    EXPECT_EQ(pieces.size(), static_cast<std::size_t>(demoPieces));
    EXPECT_EQ(store->customers().value().size(), static_cast<std::size_t>(demoPeople));
    EXPECT_EQ(store->visits().value().size() > pieces.size(), true) << "some came back";
    std::set<std::string> numbers;
    const std::regex fiction(R"(\(\d{3}\) 555-01\d\d|020 7946 0\d{3}|01632 960\d{3}|07700 900\d{3})");
    for (const record::Piece& piece : pieces) {
        EXPECT_TRUE(record::readPieceNumber(piece.number)) << piece.number;
        numbers.insert(piece.number);
    }
    EXPECT_EQ(numbers.size(), pieces.size());
    for (const record::Customer& person : store->customers().value()) {
        EXPECT_TRUE(std::regex_match(person.contact, fiction)) << person.contact;
    }
    const auto events = store->allEvents().value();
    EXPECT_LT(std::ranges::min(events, {}, &bench::Event::happened).happened, now - std::chrono::days(2 * 365 + 300));
    EXPECT_LE(std::ranges::max(events, {}, &bench::Event::happened).happened, now);
    RuleShelf shelf({std::filesystem::path(MEND_SOURCE_DIR) / "resources" / "rules", {}, {}});
    const auto open = readBench(*store, shelf, now).takeValue();
    const auto bench = bench::fold(open.record.roster, open.record.events, open.book);
    const auto facts = bench::counterOf(bench, open.record.events, open.book, now, dayIn(QTimeZone::utc()));
    EXPECT_EQ(facts.mayBeCollected.size(), 3U);
    EXPECT_EQ(facts.late.size(), 2U);
    EXPECT_EQ(facts.waitsForOwner.size(), 5U);
    EXPECT_TRUE(facts.toCall.empty() || facts.toCall.size() <= 2U);
    EXPECT_TRUE(store::checkWhole(*store).isGood());
    EXPECT_FALSE(store->find("heron bowl").value().pieces.empty());
}

namespace {

std::string builtWhen(const std::filesystem::path& file)
{
    const auto opened = store::Store::open(file, store::OpenMode::ReadOnly);
    return opened ? opened.value()->settings().value()["demo.builtAt"] : opened.fault().detail;
}

} // namespace

TEST(DemoFile, IsBuiltAnewWhenOldOrAskedForElseReopened)
{
    const test::Scratch scratch;
    const auto file = scratch / "demo.mendbench";
    const Instant now = *fromRfc3339("2026-11-25T15:00:00.000Z");
    const auto prepare = [&](Instant at, bool fresh) {
        return prepareDemo(file, book(), momentAt(at), QTimeZone::utc(), fresh).isOk();
    };
    ASSERT_TRUE(prepare(now, false));
    ASSERT_TRUE(prepare(now + hours(4) - Span{1}, false));
    EXPECT_EQ(builtWhen(file), toRfc3339(now)) << "a young one is kept";
    ASSERT_TRUE(prepare(now + hours(4), false));
    EXPECT_EQ(builtWhen(file), toRfc3339(now + hours(4))) << "an old one is not";
    ASSERT_TRUE(prepare(now + hours(5), true));
    EXPECT_EQ(builtWhen(file), toRfc3339(now + hours(5))) << "nor one that is asked for anew";
    ASSERT_TRUE(prepare(now, false));
    EXPECT_EQ(builtWhen(file), toRfc3339(now)) << "nor one from a clock that was ahead";
}

TEST(DemoFile, NeverTakesThePlaceOfAnotherBench)
{
    const test::Scratch scratch;
    const auto file = scratch / "own.mendbench";
    const Moment now = momentAt(*fromRfc3339("2026-11-25T15:00:00.000Z"));
    ASSERT_TRUE(store::Store::open(file, store::OpenMode::CreateIfMissing));
    const Outcome refused = prepareDemo(file, book(), now, QTimeZone::utc(), true);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.fault().kind, FaultKind::Conflict);
}

TEST(DemoFile, IsLeftAloneWhileItIsOpen)
{
    const test::Scratch scratch;
    const auto file = scratch / "demo.mendbench";
    const Instant now = *fromRfc3339("2026-11-25T15:00:00.000Z");
    ASSERT_TRUE(prepareDemo(file, book(), momentAt(now), QTimeZone::utc(), false));
    const auto inUse = store::Store::open(file, store::OpenMode::ReadWrite);
    ASSERT_TRUE(inUse);
    const Outcome refused = prepareDemo(file, book(), momentAt(now), QTimeZone::utc(), true);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.fault().kind, FaultKind::Locked);
}

} // namespace mend::service
