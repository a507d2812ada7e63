#include "core/rules/keep.h"

#include "tests/support/rulefiles.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::rules;

namespace {

/// The shipped files with one text changed in one of them.
exchange::ReadRules readWith(const std::string& file, const std::string& from, const std::string& to)
{
    auto files = test::shippedRuleFiles();
    for (auto& each : files) {
        if (each.file == file) {
            const std::size_t at = each.text.find(from);
            EXPECT_NE(at, std::string::npos);
            each.text.replace(at, from.size(), to);
        }
    }
    return exchange::readRules(files);
}

const std::string goldFile = "procedures/goldlacquerseam.json";

} // namespace

TEST(Keep, RefusesABrokenFileAndKeepsTheLastGoodBook)
{
    const RuleBook good = test::shippedRules();
    exchange::ReadRules broken =
        readWith(goldFile, "\"fillRun\", \"touch\": \"first\"", "\"nothing\", \"touch\": \"first\"");
    ASSERT_FALSE(broken.isGood());
    const auto faults = broken.faults;
    const Swap swap = keepOrRefuse(good, std::move(broken.book), std::move(broken.faults));
    EXPECT_FALSE(swap.taken);
    EXPECT_EQ(swap.inForce, good);
    EXPECT_EQ(swap.faults, faults);
    ASSERT_FALSE(swap.faults.empty());
    EXPECT_EQ(swap.faults[0].file, goldFile);
    EXPECT_GT(swap.faults[0].line, 1);
}

TEST(Keep, TakesAGoodBookAndForgetsNoRevision)
{
    const RuleBook good = test::shippedRules();
    const RevisionHash before = good.procedure("goldLacquerSeam")->hash;
    exchange::ReadRules newer = readWith(goldFile, "\"revision\": 1", "\"revision\": 2");
    ASSERT_TRUE(newer.isGood());
    const Swap swap = keepOrRefuse(good, newer.book, newer.faults);
    EXPECT_TRUE(swap.taken);
    EXPECT_EQ(swap.inForce.procedure("goldLacquerSeam")->revision, 2);
    ASSERT_NE(swap.inForce.revision(before), nullptr);
    EXPECT_EQ(swap.inForce.revision(before)->revision, 1);
    // And once more: what was former stays so, once.
    const Swap again = keepOrRefuse(swap.inForce, newer.book, {});
    EXPECT_EQ(again.inForce, swap.inForce);
}

TEST(Keep, LetsAStudiosRevisionStandBesideTheShippedOne)
{
    auto files = test::shippedRuleFiles();
    Procedure own = *test::shippedRules().procedure("goldLacquerSeam");
    own.revision = 2;
    own.stages[*own.indexOf("wipeBack")].closes[0].span.value = std::chrono::minutes(15);
    files.push_back({"own/gold.json", exchange::fileText(own)});
    const exchange::ReadRules read = exchange::readRules(files);
    ASSERT_TRUE(read.isGood()) << read.faults[0].file << read.faults[0].path << read.faults[0].text;
    EXPECT_EQ(read.book.procedures.size(), 5U);
    ASSERT_EQ(read.book.formerRevisions.size(), 1U);
    EXPECT_EQ(read.book.formerRevisions[0].find("wipeBack")->closes[0].span.value, std::chrono::minutes(20));
    EXPECT_EQ(read.book.procedure("goldLacquerSeam")->find("wipeBack")->closes[0].span.value, std::chrono::minutes(15));
}

TEST(Keep, AsksForANewNumberWhereTwoRevisionsShareOne)
{
    auto files = test::shippedRuleFiles();
    Procedure own = *test::shippedRules().procedure("goldLacquerSeam");
    files.push_back({"own/gold.json", exchange::fileText(own)});
    const exchange::ReadRules read = exchange::readRules(files);
    ASSERT_EQ(read.faults.size(), 1U);
    EXPECT_EQ(read.faults[0].file, "own/gold.json");
    EXPECT_EQ(read.faults[0].path, "/revision");
}
