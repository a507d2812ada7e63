#include "core/rules/procedurecheck.h"

#include "tests/rules/planted.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::rules;
using namespace mend::test;

TEST(ProcedureCheck, FindsNothingInTheShippedProcedures)
{
    for (const Procedure& procedure : goodBook().procedures) {
        EXPECT_EQ(allTold(procedureFaults(procedure, goodBook())), "") << procedure.key;
    }
}

TEST(ProcedureCheck, FindsARingHoweverLong)
{
    Procedure procedure = goldSeam();
    Lag back;
    back.from = {"burnish", Touch::Last, Which::Same};
    back.span = minutesFigure(1);
    stageOf(procedure, "wetSand").opens.push_back(back);
    const auto faults = procedureFaults(procedure, goodBook());
    ASSERT_EQ(faults.size(), 1U) << allTold(faults);
    EXPECT_NE(faults[0].text.find("ring"), std::string::npos);
}

TEST(ProcedureCheck, TakesTheRepetitionBeforeForNoRing)
{
    Procedure procedure = goldSeam();
    Lag before;
    before.from = {"pareSet", Touch::Last, Which::Previous};
    before.span = minutesFigure(0);
    stageOf(procedure, "glueSet").opens.push_back(before);
    EXPECT_EQ(allTold(procedureFaults(procedure, goodBook())), "");
}

// The practice figure of 49 C is inside the rule's range, so that a studio may choose it where every limit allows it.
TEST(ProcedureCheck, Allows49DegreesWhereEveryLimitInsideDoes)
{
    RuleBook book = goodBook();
    Procedure procedure = goldSeam();
    const auto faultsAt49 = [&] {
        stageOf(procedure, "cureFill").warmCures[2].temperature.value = Temperature::fromCelsius(49);
        return procedureFaults(procedure, book);
    };
    EXPECT_EQ(faultsAt49().size(), 1U);
    for (Material& material : book.materials) {
        if (material.key == "fastAdhesive") {
            material.heatLimits.clear();
        }
    }
    EXPECT_EQ(allTold(faultsAt49()), "");
}
