#include "tests/bench/hazardbench.h"

#include <gtest/gtest.h>

#include <random>

using namespace mend;
using namespace mend::test;
using mend::bench::HazardFinding;

namespace {

constexpr int cases = 1000;
constexpr double now = 600;

/// A bench on which anything may have happened in any order.
class RandomBench {
public:
    explicit RandomBench(unsigned seed) : m_random(seed)
    {
        const int pieces = upTo(1, 6);
        for (int i = 0; i < pieces; ++i) {
            addPiece();
        }
        for (const PlaceId place : {HazardBench::cabinet, HazardBench::humidBox}) {
            m_bench.read(place, upTo(20, 46), upTo(40, 90), upTo(0, 590));
        }
        const int states = upTo(0, 4);
        for (int i = 0; i < states; ++i) {
            m_bench.begin(anyState(), upTo(0, 599));
        }
    }

    HazardBench& bench() { return m_bench; }

    PieceId addPiece()
    {
        const auto& procedures = m_bench.book().procedures;
        const rules::Procedure& procedure =
            procedures[static_cast<std::size_t>(upTo(0, static_cast<int>(procedures.size()) - 1))];
        const PieceId piece = m_bench.add(procedure.key, 0, CustomerId(upTo(1, 3)));
        m_pieces.push_back(piece);
        if (upTo(0, 3) == 0) {
            m_bench.piece(piece).materialsInIt = {"oldMend"};
        }
        const int acts = upTo(0, 5);
        for (int i = 0; i < acts; ++i) {
            const std::string stage = anyStage(procedure).key;
            const double minute = upTo(0, 599);
            if (upTo(0, 3) == 0) {
                m_bench.begun(piece, stage, minute);
            } else {
                m_bench.done(piece, stage, minute);
            }
        }
        m_bench.put(piece, PlaceId(upTo(1, 6)), upTo(0, 599));
        return piece;
    }

    bench::Start anyStart()
    {
        const PieceId piece = m_pieces[static_cast<std::size_t>(upTo(0, static_cast<int>(m_pieces.size()) - 1))];
        return startOn(piece);
    }

    bench::Start startOn(PieceId piece)
    {
        const rules::Procedure* procedure = m_bench.book().procedure(m_bench.piece(piece).procedure);
        return {piece, {anyStage(*procedure).key, 1}, PlaceId(upTo(1, 7))};
    }

    std::string anyState()
    {
        const auto& states = m_bench.book().states;
        return states[static_cast<std::size_t>(upTo(0, static_cast<int>(states.size()) - 1))].key;
    }

    /// Whatever is under hands is told done, then every state is told over.
    void endEverything()
    {
        const bench::BenchFold folded = m_bench.fold();
        for (const auto& [id, piece] : folded.pieces) {
            for (const bench::StageRecord& told : piece.stages) {
                if (told.isUnderHands()) {
                    m_bench.done(id, told.at.stage, now, told.at.repetition);
                }
            }
        }
        for (const rules::BenchState& state : m_bench.book().states) {
            m_bench.end(state.key, now);
        }
    }

private:
    int upTo(int least, int most) { return std::uniform_int_distribution<int>(least, most)(m_random); }

    const rules::Stage& anyStage(const rules::Procedure& procedure)
    {
        return procedure.stages[static_cast<std::size_t>(upTo(0, static_cast<int>(procedure.stages.size()) - 1))];
    }

    std::mt19937 m_random;
    HazardBench m_bench;
    std::vector<PieceId> m_pieces;
};

bool isOfHeat(const HazardFinding& finding) { return finding.hazard->meeting == rules::Meeting::HeatLimit; }

/// Whether what was found before is still found: the same row, at least as grave, of at least those
/// pieces. Rows of heat count as one, because a place gives one notice.
bool isKept(const HazardFinding& before, const std::vector<HazardFinding>& after)
{
    return std::ranges::any_of(after, [&](const HazardFinding& each) {
        const bool sameRow = each.hazard == before.hazard || (isOfHeat(each) && isOfHeat(before));
        return sameRow && each.verdict <= before.verdict && std::ranges::includes(each.pieces, before.pieces);
    });
}

} // namespace

TEST(HazardProperty, EndingAllStatesEndsEveryBlockByAState)
{
    int met = 0;
    for (unsigned seed = 0; seed < cases; ++seed) {
        RandomBench random(seed);
        const bench::Start start = random.anyStart();
        const auto isByState = [&](const HazardFinding& finding) {
            return finding.hazard->meeting == rules::Meeting::Overlap && random.bench().book().state(finding.state);
        };
        met += static_cast<int>(std::ranges::count_if(random.bench().asked(start, now), isByState));
        random.endEverything();
        const auto left = random.bench().asked(start, now);
        EXPECT_EQ(std::ranges::count_if(left, isByState), 0) << "seed " << seed << ": " << testing::PrintToString(left);
    }
    EXPECT_GT(met, cases / 10) << "benches too quiet to prove anything";
}

TEST(HazardProperty, AnotherPieceNeverRemovesAHazard)
{
    int met = 0;
    for (unsigned seed = 0; seed < cases; ++seed) {
        RandomBench random(seed);
        const bench::Start start = random.anyStart();
        const auto before = random.bench().asked(start, now);
        const auto standingBefore = random.bench().standing(now);
        random.addPiece();
        const auto after = random.bench().asked(start, now);
        const auto standingAfter = random.bench().standing(now);
        for (const HazardFinding& finding : before) {
            ++met;
            EXPECT_TRUE(isKept(finding, after)) << "seed " << seed << ": " << testing::PrintToString(finding);
        }
        for (const HazardFinding& finding : standingBefore) {
            EXPECT_TRUE(isKept(finding, standingAfter)) << "seed " << seed << ": " << testing::PrintToString(finding);
        }
    }
    EXPECT_GT(met, cases / 4) << "benches too quiet to prove anything";
}

TEST(HazardProperty, TwoStatesMeetWhicheverComesFirst)
{
    const auto& states = hazardBook().states;
    for (const rules::BenchState& one : states) {
        for (const rules::BenchState& other : states) {
            HazardBench bench;
            bench.begin(one.key, 1);
            HazardBench turned;
            turned.begin(other.key, 1);
            const auto found = bench.telling(other.key, 2);
            const auto back = turned.telling(one.key, 2);
            ASSERT_EQ(found.size(), back.size()) << one.key << " and " << other.key;
            for (std::size_t i = 0; i < found.size(); ++i) {
                EXPECT_THAT(back, Meets(found[i].hazard->key)) << one.key << " and " << other.key;
            }
        }
    }
}

TEST(HazardProperty, WhatIsOverByItselfIsOverThen)
{
    int met = 0;
    for (unsigned seed = 0; seed < cases; ++seed) {
        RandomBench random(seed);
        const std::string state = random.anyState();
        for (const HazardFinding& finding : random.bench().telling(state, now)) {
            if (!finding.until) {
                continue;
            }
            ++met;
            const double minute =
                std::chrono::duration<double, std::ratio<60>>(*finding.until - HazardBench::at(0)).count();
            EXPECT_GT(minute, now);
            const auto later = random.bench().telling(state, minute);
            const auto same = std::ranges::find_if(
                later, [&](const HazardFinding& each) { return each.hazard == finding.hazard && each.until; });
            EXPECT_EQ(same, later.end()) << "seed " << seed << ": " << testing::PrintToString(finding);
        }
    }
    EXPECT_GT(met, cases / 20) << "benches too quiet to prove anything";
}

TEST(HazardProperty, AnAnswerTakesAwayItsOwnRowAndAddsNone)
{
    int met = 0;
    for (unsigned seed = 0; seed < cases; ++seed) {
        RandomBench random(seed);
        const bench::Start start = random.anyStart();
        const auto before = random.bench().asked(start, now);
        if (before.empty()) {
            continue;
        }
        ++met;
        random.bench().answer(start.piece, start.stage.stage, before.front().hazard->key + ":said", now);
        const auto after = random.bench().asked(start, now);
        EXPECT_THAT(after, testing::Not(Meets(before.front().hazard->key))) << "seed " << seed;
        for (const HazardFinding& finding : after) {
            EXPECT_TRUE(isKept(finding, before)) << "seed " << seed << ": " << testing::PrintToString(finding);
        }
    }
    EXPECT_GT(met, cases / 4) << "benches too quiet to prove anything";
}
