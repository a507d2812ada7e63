#include "core/bench/benchplan.h"

#include "core/bench/hazardcheck.h"

#include "tests/bench/planbench.h"
#include "tests/support/rulefiles.h"

#include <cstdlib>
#include <map>
#include <random>

using namespace mend;
using namespace mend::bench;
using namespace mend::test;
using namespace std::chrono;

namespace {

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

/// 20 by itself; where MEND_PLAN_RANDOM asks for other than 1,000 random problems, as many fewer or more.
unsigned benches()
{
    const char* asked = std::getenv("MEND_PLAN_RANDOM");
    return asked != nullptr ? static_cast<unsigned>(std::max(1UL, std::strtoul(asked, nullptr, 10) / 50)) : 20;
}

} // namespace

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

/// The proof of the whole: what the planner makes of the bench can be done on that bench, every stage open when it is
/// begun, off before it closes, and no blocked start among them.
TEST(BenchProblem, WhatIsPlannedCanBeDoneAsPlanned)
{
    int begun = 0;
    const std::vector<std::string> procedures{gold, metal, plain, "reversibleJoin", "urushiSeam"};
    for (unsigned seed = 1; seed <= benches(); ++seed) {
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
    EXPECT_GT(begun, 15 * static_cast<int>(benches()));
}
