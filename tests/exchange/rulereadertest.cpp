#include "core/exchange/rulereader.h"

#include "core/base/sha256.h"
#include "tests/support/rulefiles.h"

#include <nlohmann/json.hpp>

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

const rules::RuleBook& readBook()
{
    static const rules::RuleBook book = test::shippedRules();
    return book;
}

std::vector<RuleText> withText(const std::string& file, const std::string& text)
{
    std::vector<RuleText> files = test::shippedRuleFiles();
    for (RuleText& each : files) {
        each.text = each.file == file ? text : each.text;
    }
    return files;
}

std::string shippedText(const std::string& file)
{
    for (const RuleText& each : test::shippedRuleFiles()) {
        if (each.file == file) {
            return each.text;
        }
    }
    ADD_FAILURE() << file;
    return "";
}

std::string changed(std::string text, const std::string& from, const std::string& to)
{
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
}

const std::string goldName = "procedures/goldlacquerseam.json";

} // namespace

TEST(RuleReader, FindsNoFaultInTheShippedRules)
{
    const ReadRules read = readRules(test::shippedRuleFiles());
    EXPECT_TRUE(read.isGood()) << told(read.faults);
    EXPECT_EQ(read.book.hazards.size(), 28U);
    std::vector<std::string> keys;
    for (const rules::Procedure& procedure : read.book.procedures) {
        keys.push_back(procedure.key);
    }
    EXPECT_EQ(keys, (std::vector<std::string>{"goldLacquerSeam", "invisibleMend", "metalFilledSeam", "reversibleJoin",
                                              "urushiSeam"}));
}

TEST(RuleReader, ReadsAProcedureBackFromItsCanonicalText)
{
    for (const rules::Procedure& procedure : readBook().procedures) {
        const std::string text = canonicalText(procedure);
        const ReadProcedure back = readProcedure({"stored", text});
        ASSERT_TRUE(back.procedure) << told(back.faults);
        EXPECT_EQ(*back.procedure, procedure);
        EXPECT_EQ(canonicalText(*back.procedure), text);
        EXPECT_EQ(procedure.hash, sha256(text));
        EXPECT_EQ(text.find('\n'), std::string::npos);
        const ReadProcedure own = readProcedure({"file", fileText(procedure)});
        ASSERT_TRUE(own.procedure) << told(own.faults);
        EXPECT_EQ(own.procedure->hash, procedure.hash);
    }
}

TEST(RuleReader, NamesARevisionByItsMeaningNotByItsLayout)
{
    const std::string shipped = shippedText(goldName);
    const rules::RevisionHash hash = readBook().procedure("goldLacquerSeam")->hash;
    const std::string otherLayout = nlohmann::json::parse(shipped).dump(1, '\t');
    EXPECT_EQ(readProcedure({"x", otherLayout}).procedure->hash, hash);
    const std::string otherUnit =
        changed(shipped, R"("minutes": 720, "least": 720, "most": 2880)", R"("hours": 12, "least": 12, "most": 48)");
    EXPECT_EQ(readProcedure({"x", otherUnit}).procedure->hash, hash);
    const std::string oneSecond =
        changed(shipped, R"("seconds": 18, "least": 6, "most": 54)", R"("seconds": 19, "least": 6, "most": 54)");
    EXPECT_NE(readProcedure({"x", oneSecond}).procedure->hash, hash);
}

TEST(RuleReader, TellsTheFaultsOfAllFilesAtOnceWithTheirPlaces)
{
    std::vector<RuleText> files = test::shippedRuleFiles();
    for (RuleText& file : files) {
        if (file.file == "laws.json") {
            file.text = changed(file.text, "\"kind\": \"arrhenius\"", "\"kind\": \"magic\"");
        } else if (file.file == "materials.json") {
            file.text = changed(file.text, "\"family\"", "\"famly\"");
        } else if (file.file == goldName) {
            file.text = changed(file.text, "\"law\": \"epoxy\"", "\"law\": \"glue\"");
        }
    }
    const ReadRules read = readRules(files);
    const std::string all = told(read.faults);
    EXPECT_NE(all.find("laws.json:"), std::string::npos) << all;
    EXPECT_NE(all.find("/laws/0/kind: \"magic\" is none of"), std::string::npos) << all;
    EXPECT_NE(all.find("\"famly\" is not known here"), std::string::npos) << all;
    EXPECT_NE(all.find("/materials/0: \"family\" is missing"), std::string::npos) << all;
    EXPECT_NE(all.find("/stages/6/law: there is no law \"glue\""), std::string::npos) << all;
}

TEST(RuleReader, PointsAtTheVeryLineOfAFaultOfMeaning)
{
    const std::string text = changed(shippedText(goldName), "\"law\": \"epoxy\"", "\"law\": \"glue\"");
    const ReadRules read = readRules(withText(goldName, text));
    ASSERT_EQ(read.faults.size(), 1U) << told(read.faults);
    const std::size_t at = text.find("\"glue\"");
    const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n');
    EXPECT_EQ(read.faults[0].line, line);
    EXPECT_EQ(static_cast<std::size_t>(read.faults[0].column), at - text.rfind('\n', at));
}

TEST(RuleReader, RefusesFilesOfNoKnownKind)
{
    const auto firstText = [](const std::string& text) {
        auto files = test::shippedRuleFiles();
        files.push_back({"own.json", text});
        const ReadRules read = readRules(files);
        return read.faults.empty() ? "" : read.faults[0].text;
    };
    EXPECT_EQ(firstText(R"({"format": "mendbench laws", "version": 2, "laws": []})"),
              "only version 1 of the rule format is known here");
    EXPECT_NE(firstText(R"({"format": "mendbench songs", "version": 1})").find("is no rule format"), std::string::npos);
    EXPECT_EQ(firstText(R"({"version": 1})"), "\"format\" is missing");
    EXPECT_EQ(firstText("[]"), "an object belongs here, not a list");
    EXPECT_NE(firstText("{").find("this is not JSON"), std::string::npos);
    EXPECT_NE(firstText(shippedText("practice.json")).find("given already in practice.json"), std::string::npos);
    EXPECT_EQ(firstText(shippedText("cautions.json")), "\"sheetFirst\" is given twice");
}

TEST(RuleReader, WantsThePracticeFigures)
{
    std::vector<RuleText> files = test::shippedRuleFiles();
    std::erase_if(files, [](const RuleText& file) { return file.file == "practice.json"; });
    const ReadRules read = readRules(files);
    ASSERT_EQ(read.faults.size(), 1U);
    EXPECT_EQ(read.faults[0].text, "no file gives the practice figures");
    EXPECT_FALSE(readRules({}).isGood());
}
