#include "core/bench/benchplan.h"

#include "core/bench/hazardcheck.h"
#include "core/exchange/planreader.h"
#include "core/plan/planner.h"

#include "tests/plan/judge.h"
#include "tests/support/rulefiles.h"
#include "tests/support/testbench.h"

#include <gtest/gtest.h>

#include <map>
#include <random>
#include <set>

using namespace mend;
using namespace mend::bench;
using namespace mend::test;
using namespace std::chrono;

namespace {

const std::string gold = "goldLacquerSeam";
const std::string metal = "metalFilledSeam";
const std::string plain = "invisibleMend";

/// Nine to half past five with an hour at noon, for ten weeks from the day of minute 0.
void keepHours(TestBench& bench)
{
    for (int day = 0; day < 70; ++day) {
        const double midnight = day * 1440.0 - 540;
        bench.roster().openHours.push_back({TestBench::at(midnight + 540), TestBench::at(midnight + 720)});
        bench.roster().openHours.push_back({TestBench::at(midnight + 780), TestBench::at(midnight + 1050)});
    }
}

/// The same air as ever, in every place.
void readAll(TestBench& bench, double roomCelsius, double minute)
{
    for (const PlaceId place : {TestBench::benchPlace, TestBench::shelf, TestBench::tray}) {
        bench.read(place, roomCelsius, 45, minute);
    }
    bench.read(TestBench::humidBox, 23, 75, minute);
    bench.read(TestBench::cabinet, 40, 40, minute);
}

BenchProblem problemAt(const TestBench& bench, double minute, const PlanFacts& facts = {})
{
    return benchProblem(bench.fold(), bench.book(), facts, TestBench::at(minute));
}

int stepOf(const BenchProblem& made, PieceId piece, const std::string& stage, int repetition = 1)
{
    for (std::size_t i = 0; i < made.steps.size(); ++i) {
        if (made.steps[i] == PlanStep{piece, {stage, repetition}}) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

const plan::Lag* lagOf(const BenchProblem& made, int from, int to)
{
    for (const plan::Lag& lag : made.problem.lags) {
        if (lag.from == from && lag.to == to) {
            return &lag;
        }
    }
    return nullptr;
}

/// The same problem after the way to a file and back: the format's own reader finds no fault in it.
void expectWellFormed(const BenchProblem& made)
{
    const auto read = exchange::readPlanProblem(exchange::planProblemText(made.problem));
    for (const auto& fault : read.faults) {
        ADD_FAILURE() << fault.path << ": " << fault.text;
    }
    ASSERT_TRUE(read.problem.has_value());
    EXPECT_EQ(*read.problem, made.problem);
    EXPECT_EQ(made.steps.size(), made.problem.steps.size());
    EXPECT_EQ(made.pieces.size(), made.problem.pieces.size());
}

plan::Planned planned(const BenchProblem& made, std::int64_t steps = 400'000)
{
    plan::Effort effort;
    effort.steps = steps;
    plan::Planned result = plan::planBench(made.problem, effort);
    EXPECT_EQ(result.verdict, plan::Planned::Verdict::Plan);
    if (result.table) {
        EXPECT_TRUE(test::judge(made.problem, *result.table).empty());
    }
    return result;
}

/// Does what a plan says, minute by minute, on the bench that it was made for.
class Doing {
public:
    Doing(TestBench& bench, const BenchProblem& made, const plan::Timetable& table)
        : m_bench(bench), m_now(minuteOf(made.at(made.problem.now)))
    {
        for (std::size_t i = 0; i < made.steps.size(); ++i) {
            const PlanStep& means = made.steps[i];
            const plan::Step& step = made.problem.steps[i];
            if (means.stage.stage.empty() || (step.started && *step.started + step.duration <= made.problem.now)) {
                continue;
            }
            const double start = minuteOf(made.at(table.start[i]));
            if (!step.started) {
                m_acts.push_back({start + ready(means, step.duration), true, means});
            }
            m_acts.push_back({start + step.duration, false, means});
        }
        std::ranges::stable_sort(m_acts, [](const Act& a, const Act& b) {
            return a.minute != b.minute ? a.minute < b.minute : a.begins < b.begins;
        });
    }

    void all()
    {
        for (const Act& act : m_acts) {
            act.begins ? begin(act) : end(act);
        }
    }

    int begun = 0;

private:
    struct Act {
        double minute = 0;
        bool begins = true;
        PlanStep means;
    };

    const rules::Stage& stageOf(const PlanStep& means) const
    {
        const BenchFold fold = m_bench.fold();
        return *procedureOf(*fold.piece(means.piece), m_bench.book())->find(means.stage.stage);
    }

    /// What is made ready before the mixing is no touch yet.
    double ready(const PlanStep& means, plan::Minute duration) const
    {
        const rules::Stage& stage = stageOf(means);
        const double fixed = duration_cast<minutes>(stage.handsOn.fixed.value).count();
        return !stage.mix.empty() && !stage.mixesHere ? std::min<double>(fixed, duration - 1) : 0.0;
    }

    void begin(const Act& act)
    {
        const rules::Stage& stage = stageOf(act.means);
        const std::string name = act.means.stage.stage + " " + std::to_string(act.means.stage.repetition) + " of " +
                                 std::to_string(act.means.piece.value()) + " at " + std::to_string(act.minute);
        while (repetitionsNow(act.means, stage) < act.means.stage.repetition) {
            m_bench.stage(What::MoreToCome, act.means.piece, act.means.stage.stage, act.minute);
        }
        const auto window =
            m_bench.window(act.means.piece, act.means.stage.stage, act.minute, act.means.stage.repetition);
        ASSERT_TRUE(window.has_value()) << name << " is not to be done yet";
        ASSERT_TRUE(window->opens.has_value())
            << name << " stalls, " << m_bench.fold().piece(act.means.piece)->piece.procedure;
        EXPECT_LE(minuteOf(window->opens), act.minute) << name << " is not open yet";
        if (binds(*window)) {
            EXPECT_LE(act.minute + handsOnMinutes(*window), minuteOf(window->closes)) << name << " is begun too late";
        }
        const Start start{act.means.piece, act.means.stage, TestBench::benchPlace};
        const BenchFold fold = m_bench.fold();
        for (const HazardFinding& found :
             hazardsOf(start, fold, m_bench.windows(act.minute), m_bench.book(), TestBench::at(act.minute))) {
            const bool meets = found.hazard->meeting == rules::Meeting::Overlap;
            EXPECT_FALSE(meets && found.verdict == rules::Verdict::Block) << name << ": " << found.hazard->key;
        }
        MixId mix;
        if (!stage.mix.empty()) {
            const auto key = std::pair(act.means.piece, act.means.stage.repetition);
            const auto made = m_mixes.find(key);
            const bool anew = stage.mixesHere || made == m_mixes.end() || made->second.first != stage.mix;
            mix = anew ? m_bench.mix(stage.mix, act.minute) : made->second.second;
            m_mixes[key] = {stage.mix, mix};
        }
        m_bench.stage(What::Begun, act.means.piece, act.means.stage.stage, act.minute, act.means.stage.repetition, mix);
        ++begun;
    }

    void end(const Act& act)
    {
        const auto window =
            m_bench.window(act.means.piece, act.means.stage.stage, act.minute, act.means.stage.repetition);
        ASSERT_TRUE(window.has_value()) << act.means.stage.stage;
        if (binds(*window)) {
            EXPECT_LE(act.minute, minuteOf(window->closes)) << act.means.stage.stage << " ends after its close";
        }
        const auto mix = m_mixes.find({act.means.piece, act.means.stage.repetition});
        const bool mixed = mix != m_mixes.end() && mix->second.first == stageOf(act.means).mix;
        m_bench.done(act.means.piece, act.means.stage.stage, act.minute, act.means.stage.repetition,
                     mixed ? mix->second.second : MixId{}, placeOf(stageOf(act.means)));
    }

    static PlaceId placeOf(const rules::Stage& stage)
    {
        static const std::map<std::string, PlaceId> places{{"bench", TestBench::benchPlace},
                                                           {"shelf", TestBench::shelf},
                                                           {"cabinet", TestBench::cabinet},
                                                           {"humidBox", TestBench::humidBox},
                                                           {"tray", TestBench::tray}};
        return stage.places.empty() ? PlaceId{} : places.at(stage.places.front());
    }

    int repetitionsNow(const PlanStep& means, const rules::Stage& stage) const
    {
        const BenchFold fold = m_bench.fold();
        return repetitionsOf(stage, *fold.piece(means.piece), m_bench.book());
    }

    /// What had closed before the plan was made is past saving.
    bool binds(const Window& window) const { return window.closes && !window.soft && minuteOf(window.closes) > m_now; }

    static double handsOnMinutes(const Window& window)
    {
        return duration<double, std::ratio<60>>(window.handsOn).count();
    }

    TestBench& m_bench;
    double m_now;
    std::vector<Act> m_acts;
    std::map<std::pair<PieceId, int>, std::pair<std::string, MixId>> m_mixes;
};

} // namespace

TEST(BenchProblem, OfAnEmptyBenchHasOnlyItsHours)
{
    TestBench bench(shippedRules());
    keepHours(bench);
    const BenchProblem made = problemAt(bench, 0);
    EXPECT_TRUE(made.problem.steps.empty());
    // 2027-03-01 was a Monday; 14 days of work and as many to end it, two stretches a day.
    EXPECT_EQ(made.problem.now, 540);
    EXPECT_EQ(made.problem.open.front(), (plan::Stretch{540, 720}));
    EXPECT_EQ(made.problem.horizon, 540 + 28 * 1440);
    EXPECT_EQ(made.problem.open.size(), 56U);
}

TEST(BenchProblem, GivesEachStageItsHandsAndItsWaits)
{
    TestBench bench(shippedRules(), 24.0);
    keepHours(bench);
    const PieceId bowl = bench.add(gold, 0, 3, 6).id;
    bench.upTo(bowl, "fillRun", 0);
    const BenchProblem made = problemAt(bench, 100);
    expectWellFormed(made);
    const int fill = stepOf(made, bowl, "fillRun");
    const int wipe = stepOf(made, bowl, "wipeBack");
    const int cure = stepOf(made, bowl, "cureFill");
    ASSERT_GE(std::min({fill, wipe, cure}), 0);
    // Handbook, gold-dusted seam, rows 9 to 11: 10 + 2/cm chip + 0.5/cm seam; 3 + 0.1/cm, rounded up.
    EXPECT_EQ(made.problem.steps[plan::slot(fill)].duration, 19);
    EXPECT_EQ(made.problem.steps[plan::slot(wipe)].duration, 4);
    // Opens 2 minutes after the last touch; hands off 20 minutes after the first, which comes after 10 minutes of
    // making ready: 20 - 9 - 4.
    const plan::Lag* lag = lagOf(made, fill, wipe);
    ASSERT_TRUE(lag != nullptr && lag->most.has_value());
    EXPECT_EQ(lag->least, 2);
    EXPECT_EQ(*lag->most, 7);
    EXPECT_EQ(lagOf(made, wipe, cure)->least, 30);
    EXPECT_FALSE(lagOf(made, wipe, cure)->most.has_value());
}

TEST(BenchProblem, AWarmBenchNarrowsTheWindowsAhead)
{
    const auto mostAt = [](double celsius) {
        TestBench bench(shippedRules(), celsius);
        const PieceId bowl = bench.add(gold, 0, 1, 1).id;
        bench.upTo(bowl, "fillRun", 0);
        const BenchProblem made = problemAt(bench, 100);
        return lagOf(made, stepOf(made, bowl, "fillRun"), stepOf(made, bowl, "wipeBack"))->most.value_or(-1);
    };
    // At the law's highest energy, 70 kJ/mol: exp(70000/8.314462618 * (1/297.15 - 1/301.15)) = 1.457 times faster at
    // 28 C, so 20 minutes are 13 whole ones; a cool bench never lengthens them.
    EXPECT_EQ(mostAt(24) - mostAt(28), 7);
    EXPECT_EQ(mostAt(22), mostAt(24));
}

TEST(BenchProblem, ShowsAnOpenWindowAsTheBenchDoes)
{
    TestBench bench(shippedRules(), 24.0);
    keepHours(bench);
    const PieceId bowl = bench.add(gold, 0, 3, 6).id;
    const double ready = bench.upTo(bowl, "fillRun", 0);
    const MixId mix = bench.mix("fillerPaste", ready + 100);
    bench.begun(bowl, "fillRun", ready + 100, 1, mix);
    bench.done(bowl, "fillRun", ready + 108, 1, mix);
    const double now = ready + 109;
    const auto window = bench.window(bowl, "wipeBack", now);
    const BenchProblem made = problemAt(bench, now);
    expectWellFormed(made);
    const int wipe = stepOf(made, bowl, "wipeBack");
    const plan::Planned result = planned(made);
    ASSERT_TRUE(result.table.has_value());
    const Instant begins = made.at(result.table->start[plan::slot(wipe)]);
    EXPECT_GE(begins, *window->opens);
    EXPECT_LE(begins, *window->latestStart);
    // The filler that was pressed in is in the problem as what the window hangs on.
    const plan::Lag* lag = lagOf(made, stepOf(made, bowl, "fillRun"), wipe);
    ASSERT_TRUE(lag != nullptr && lag->most.has_value());
    const plan::Step& fill = made.problem.steps[plan::slot(stepOf(made, bowl, "fillRun"))];
    const auto end =
        minutes(*fill.started + fill.duration + *lag->most) + minutes(made.problem.steps[plan::slot(wipe)].duration);
    EXPECT_EQ(made.zero + end, floor<minutes>(*window->closes));
}

TEST(BenchProblem, SaysOfWhatCannotBeInTimeThatItIsLost)
{
    TestBench bench(shippedRules(), 24.0);
    keepHours(bench);
    const PieceId bowl = bench.add(gold, 0, 3, 6).id;
    const double ready = bench.upTo(bowl, "fillRun", 0);
    const MixId mix = bench.mix("fillerPaste", ready + 100);
    bench.begun(bowl, "fillRun", ready + 100, 1, mix);
    bench.done(bowl, "fillRun", ready + 108, 1, mix);
    const BenchProblem made = problemAt(bench, ready + 118);
    ASSERT_EQ(made.lost.size(), 1U);
    EXPECT_EQ(made.lost.front(), (PlanStep{bowl, {"wipeBack", 1}}));
    planned(made);
}

TEST(BenchProblem, ALongChipIsFilledInMoreRuns)
{
    TestBench bench(shippedRules(), 24.0);
    const PieceId bowl = bench.add(gold, 0, 40, 0).id;
    bench.upTo(bowl, "fillRun", 0);
    const BenchProblem made = problemAt(bench, 100);
    // 40 cm are six runs at the usual 7.5 cm. Laying, two minutes, wiping, all in whole minutes within 20: a run of
    // 40/6 cm takes 14 + 2 + 4, so six are enough.
    EXPECT_TRUE(made.tooTight.empty());
    EXPECT_GE(stepOf(made, bowl, "fillRun", 6), 0);
    TestBench warm(shippedRules(), 30.0);
    const PieceId dish = warm.add(gold, 0, 40, 0).id;
    warm.upTo(dish, "fillRun", 0);
    const BenchProblem more = problemAt(warm, 100);
    EXPECT_TRUE(more.tooTight.empty());
    EXPECT_GT(more.moreRuns.at(dish), 0);
    EXPECT_GE(stepOf(more, dish, "fillRun", 6 + more.moreRuns.at(dish)), 0);
}

TEST(BenchPlan, SaysByWhenEachStartHasToBeMade)
{
    TestBench bench(shippedRules(), 24.0);
    const PieceId bowl = bench.add(gold, 0, 1, 4).id;
    bench.upTo(bowl, "lineCoat", 0);
    bench.read(TestBench::benchPlace, 24, 45, 2999);
    const auto planAt = [&](double minute) {
        const BenchProblem made = problemAt(bench, minute);
        const plan::Planned result = planned(made);
        return result.table ? plannedHands(made, *result.table) : std::vector<PlannedHands>{};
    };
    const auto of = [](const std::vector<PlannedHands>& hands, const std::string& stage) {
        const auto found = std::ranges::find(hands, stage, [](const PlannedHands& each) { return each.stage.stage; });
        EXPECT_NE(found, hands.end()) << stage;
        return found == hands.end() ? PlannedHands{} : *found;
    };
    // Handbook, gold-dusted seam, row 16: hands off 120 minutes after the first touch of the line, by the clock at 23
    // C; at 24 C the lacquer's highest energy, 41 kJ/mol, makes it 113.4, rounded down; 0.3 minutes a centimetre are 2.
    const std::vector<PlannedHands> anyTime = planAt(3000);
    EXPECT_TRUE(std::ranges::is_sorted(anyTime, {}, &PlannedHands::from));
    EXPECT_EQ(of(anyTime, "dustPowder").startBy, of(anyTime, "lineCoat").from + minutes(113 - 2));
    EXPECT_FALSE(of(anyTime, "lineCoat").startBy.has_value());
    // Row 16b closes with the day: its last start is before the bench shuts.
    keepHours(bench);
    const std::vector<PlannedHands> inHours = planAt(3000);
    const PlannedHands recover = of(inHours, "recoverPowder");
    const auto shuts = std::ranges::find_if(bench.roster().openHours, [&](const InstantRange& open) {
        return open.from <= recover.from && recover.from < open.to;
    });
    ASSERT_NE(shuts, bench.roster().openHours.end());
    EXPECT_EQ(recover.startBy, shuts->to - minutes(5));
}

TEST(BenchProblem, WhoIsAwayIsAPairOfHandsLess)
{
    TestBench bench(shippedRules());
    keepHours(bench);
    bench.roster().people.push_back({PersonId(2), "Helper"});
    PlanFacts facts;
    facts.hours[PersonId(2)] = {{TestBench::at(60), TestBench::at(120)}};
    facts.bookings = {{{TestBench::at(150), TestBench::at(400)}, "customer"}};
    const BenchProblem made = problemAt(bench, 0, facts);
    expectWellFormed(made);
    ASSERT_EQ(made.people.size(), 2U);
    const auto takenAt = [&](double minute) {
        const plan::Minute at = made.minuteUp(TestBench::at(minute));
        return std::ranges::count_if(made.problem.steps, [at](const plan::Step& step) {
            return step.hands && *step.earliest <= at && at < *step.latestEnd;
        });
    };
    EXPECT_EQ(takenAt(30), 1);  // the helper is not there yet
    EXPECT_EQ(takenAt(90), 0);  // both are
    EXPECT_EQ(takenAt(160), 2); // the helper has gone, a customer is there
    EXPECT_EQ(takenAt(200), 0); // shut at noon
    EXPECT_EQ(takenAt(300), 2);
    EXPECT_EQ(takenAt(450), 1);
}

TEST(BenchProblem, WhatIsOnHoldOrAskedAboutStaysOut)
{
    TestBench bench(shippedRules());
    const PieceId held = bench.add(gold).id;
    const PieceId asked = bench.add(gold).id;
    Event hold = bench.event(What::HoldBegun, 5);
    hold.piece = held;
    bench.tell(hold);
    Event ask = bench.event(What::WaitingForOwner, 5);
    ask.piece = asked;
    bench.tell(ask);
    EXPECT_TRUE(problemAt(bench, 10).problem.steps.empty());
}

TEST(BenchProblem, APromiseCountsWithTheWaitBeforeHandingOver)
{
    TestBench bench(shippedRules());
    keepHours(bench);
    const PieceId bowl = bench.add(gold).id;
    bench.upTo(bowl, "inspectAndPack", 0);
    PlanFacts facts;
    facts.promised[bowl] = TestBench::at(1440 * 20);
    const BenchProblem made = problemAt(bench, 3000, facts);
    expectWellFormed(made);
    ASSERT_EQ(made.problem.pieces.size(), 1U);
    // Packing is all that is to do, 30 minutes; lacquer wants 7 days from its own last stage, which lies about 3000
    // minutes back: what is left of the week after packing comes off the promise.
    const Instant lineCoat = TestBench::at(0) + 7 * 24h;
    const auto plain = made.minuteDown(TestBench::at(1440 * 20));
    EXPECT_LT(made.problem.pieces[0].promised, plain);
    EXPECT_NEAR(plain - made.problem.pieces[0].promised, duration_cast<minutes>(lineCoat - TestBench::at(3030)).count(),
                45);
    EXPECT_EQ(made.problem.pieces[0].weight, 1);
}

TEST(BenchProblem, UrushiNeverMakesThePlanImpossible)
{
    TestBench bench(shippedRules(), 22.0);
    keepHours(bench);
    bench.read(TestBench::humidBox, 23, 75, -1);
    const PieceId bowl = bench.add("urushiSeam").id;
    const BenchProblem made = problemAt(bench, 0);
    expectWellFormed(made);
    EXPECT_GE(stepOf(made, bowl, "lacquerEdges"), 0);
    EXPECT_LT(stepOf(made, bowl, "inspectAndPack"), 0);
    EXPECT_FALSE(made.later.empty());
    planned(made);
}

TEST(BenchProblem, OneStateKeepsOthersAwayInThePlanToo)
{
    TestBench bench(shippedRules(), 24.0);
    keepHours(bench);
    // One bowl's line is tacky while another is to be sanded: dust on a tacky film is a blocked start.
    const PieceId line = bench.add(gold, 0, 1, 6).id;
    const double ready = bench.upTo(line, "lineCoat", 0);
    const PieceId sand = bench.add(gold, 0, 1, 6).id;
    bench.upTo(sand, "wetSand", 0);
    const double now = ready + 3000;
    bench.done(line, "lineCoat", now);
    const BenchProblem made = problemAt(bench, now + 1);
    expectWellFormed(made);
    const plan::Planned result = planned(made);
    ASSERT_TRUE(result.table.has_value());
    const auto start = [&](PieceId piece, const std::string& stage) {
        return result.table->start[plan::slot(stepOf(made, piece, stage))];
    };
    EXPECT_GE(start(sand, "wetSand"), start(line, "recoverPowder"));
}

/// The proof of the whole: what the planner makes of the bench can be done on that bench, every stage open when it is
/// begun, off before it closes, and no blocked start among them.
TEST(BenchProblem, WhatIsPlannedCanBeDoneAsPlanned)
{
    int begun = 0;
    const std::vector<std::string> procedures{gold, metal, plain, "reversibleJoin", "urushiSeam"};
    for (unsigned seed = 1; seed <= 20; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        std::mt19937 random(seed);
        TestBench bench(shippedRules(), 23.0 + static_cast<double>(random() % 5));
        keepHours(bench);
        for (int i = 0; i < 3; ++i) {
            const std::string& procedure = procedures[random() % procedures.size()];
            const PieceId piece =
                bench.add(procedure, 0, static_cast<double>(random() % 6), 4 + static_cast<double>(random() % 8)).id;
            const auto& stages = bench.book().procedure(procedure)->stages;
            bench.upTo(piece, stages[random() % stages.size()].key, 0);
        }
        const double now = 4320 + static_cast<double>(random() % 400);
        const double celsius =
            bench.fold().air.at(TestBench::benchPlace).forWaits.readings.front().temperature.celsius();
        readAll(bench, celsius, now - 1);
        const BenchProblem made = problemAt(bench, now);
        expectWellFormed(made);
        const plan::Planned result = planned(made, 100'000);
        if (!result.table) {
            continue;
        }
        // Readings are taken as they were all through the whole plan, so that the air stays what was planned with.
        for (double minute = now; minute < now + 28 * 1440; minute += 180) {
            readAll(bench, celsius, minute);
        }
        Doing doing(bench, made, *result.table);
        doing.all();
        begun += doing.begun;
    }
    EXPECT_GT(begun, 300);
}
