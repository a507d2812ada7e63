#include "core/exchange/rulereader.h"

#include "tests/support/rulefiles.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::exchange;

namespace {

std::string told(const std::vector<rules::RuleFault>& faults)
{
    std::string text;
    for (const rules::RuleFault& fault : faults) {
        text += fault.file + ":" + std::to_string(fault.line) + ":" + std::to_string(fault.column) + " " + fault.path +
                ": " + fault.text + "\n";
    }
    return text;
}

} // namespace

TEST(RuleReader, FindsNoFaultInTheShippedRules)
{
    const ReadRules read = readRules(test::shippedRuleFiles());
    EXPECT_TRUE(read.isGood()) << told(read.faults);
    EXPECT_EQ(read.book.hazards.size(), 28U);
    EXPECT_NE(read.book.procedure("goldLacquerSeam"), nullptr);
}

TEST(RuleReader, ReadsAProcedureBackFromItsCanonicalText)
{
    const rules::RuleBook book = test::shippedRules();
    for (const rules::Procedure& procedure : book.procedures) {
        const std::string text = canonicalText(procedure);
        const ReadProcedure back = readProcedure({"stored", text});
        ASSERT_TRUE(back.procedure) << told(back.faults);
        EXPECT_EQ(*back.procedure, procedure);
        EXPECT_EQ(canonicalText(*back.procedure), text);
    }
}
