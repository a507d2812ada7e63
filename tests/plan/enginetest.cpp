#include "core/plan/engine.h"

#include <gtest/gtest.h>

namespace mend::plan {
namespace {

TEST(Engine, PushesStartsAlongDifferencesAndIntoTheHours)
{
    StartRanges hours(0, 200);
    hours.cut(15, 99);
    Engine engine;
    const int first = engine.addVariable(10, 200);
    const int second = engine.addVariable(0, 200, &hours);
    engine.addDifference(first, second, 8);
    ASSERT_TRUE(engine.propagate());
    EXPECT_EQ(engine.lowest(second), 100); // 18 is shut
    EXPECT_EQ(engine.highest(first), 192);
}

TEST(Engine, ARingThatCannotCloseIsAContradiction)
{
    Engine engine;
    const int fill = engine.addVariable(0, 1000);
    const int wipe = engine.addVariable(0, 1000);
    engine.addDifference(fill, wipe, 30);
    engine.addDifference(wipe, fill, -20);
    EXPECT_FALSE(engine.propagate());
    EXPECT_FALSE(engine.learn());
}

TEST(Engine, AConditionThatCannotHoldIsFound)
{
    Engine engine;
    const int a = engine.addVariable(5, 9);
    const int b = engine.addVariable(0, 9);
    const int choice = engine.addChoice();
    engine.addDifference(a, b, 6, isTrue(choice));
    ASSERT_TRUE(engine.propagate());
    EXPECT_TRUE(engine.fails(isTrue(choice)));
}

/// Three that cannot all be true, told as pairs: whatever is decided, the lesson learned leads out.
TEST(Engine, LearnsItsWayOutOfAWrongDecision)
{
    Engine engine;
    const int a = engine.addChoice();
    const int b = engine.addChoice();
    const int c = engine.addChoice();
    ASSERT_TRUE(engine.addClause({!isTrue(a), isTrue(b)}));
    ASSERT_TRUE(engine.addClause({!isTrue(a), isTrue(c)}));
    ASSERT_TRUE(engine.addClause({!isTrue(b), !isTrue(c)}));
    ASSERT_TRUE(engine.propagate());
    engine.decide(isTrue(a));
    ASSERT_FALSE(engine.propagate());
    ASSERT_TRUE(engine.learn());
    ASSERT_TRUE(engine.propagate());
    EXPECT_EQ(engine.depth(), 0);
    EXPECT_TRUE(engine.fails(isTrue(a)));
}

TEST(Engine, TheCostLimitSaysHowLateEachPieceMayBe)
{
    Engine engine;
    const int one = engine.addVariable(10, 500);
    const int other = engine.addVariable(20, 500);
    engine.addCostTerm({one, 1, 5, 40});
    engine.addCostTerm({other, 1, 0, 0});
    engine.limitCost(10 + 20 + 60);
    ASSERT_TRUE(engine.propagate());
    EXPECT_EQ(engine.highest(one), 45); // 30 more minutes at 1, then each minute costs 6
    EXPECT_EQ(engine.highest(other), 80);
    engine.limitCost(29);
    EXPECT_FALSE(engine.propagate());
}

TEST(Engine, ForgettingKeepsWhatWasTold)
{
    Engine engine;
    const int a = engine.addChoice();
    const int b = engine.addChoice();
    ASSERT_TRUE(engine.addClause({isTrue(a), isTrue(b)}));
    engine.forget();
    ASSERT_TRUE(engine.propagate());
    engine.decide(!isTrue(a));
    ASSERT_TRUE(engine.propagate());
    EXPECT_TRUE(engine.holds(isTrue(b)));
}

} // namespace
} // namespace mend::plan
