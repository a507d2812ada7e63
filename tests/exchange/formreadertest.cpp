#include "core/exchange/formreader.h"
#include "core/exchange/formwriter.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::exchange;

namespace {

template <class T> std::vector<rules::RuleFault> readInto(T& value, const std::string& text)
{
    const PlacedJson json = readPlacedJson(text);
    EXPECT_TRUE(json.root) << text;
    FaultList faults("file.json");
    FormReader::read(*json.root, "", faults, value);
    return faults.take();
}

std::string figureText(const std::string& amount)
{
    return "{" + amount + R"("least": 1, "most": 60, "source": "x", "mark": "practice"})";
}

Span spanOf(const std::string& amount)
{
    rules::SpanFigure figure;
    EXPECT_TRUE(readInto(figure, figureText(amount)).empty()) << amount;
    return figure.value;
}

std::string faultOf(const std::string& text)
{
    rules::SpanFigure figure;
    const auto faults = readInto(figure, text);
    return faults.size() == 1 ? faults[0].path + " " + faults[0].text : std::to_string(faults.size()) + " faults";
}

} // namespace

TEST(FormReader, ReadsTimesInTheUnitThatIsNamed)
{
    using namespace std::chrono_literals;
    EXPECT_EQ(spanOf(R"("seconds": 75, )"), 75s);
    EXPECT_EQ(spanOf(R"("minutes": 1.25, )"), 75s);
    EXPECT_EQ(spanOf(R"("hours": 5.5, )"), 330min);
    EXPECT_EQ(spanOf(R"("days": 0.5, )"), 12h);
    EXPECT_EQ(spanOf(R"("seconds": 0.001, )"), 1ms);
}

TEST(FormReader, RefusesAmountsThatAreNone)
{
    EXPECT_EQ(faultOf(figureText("")), " an amount is missing; its unit is one of: seconds, minutes, hours, days");
    EXPECT_EQ(faultOf(figureText(R"("fortnights": 1, )")), "2 faults");
    EXPECT_EQ(faultOf(figureText(R"("minutes": 1, "hours": 1, )")), "/hours one amount in two units: keep one of them");
    EXPECT_EQ(faultOf(figureText(R"("minutes": "20", )")), "/minutes a number belongs here, not a text");
    EXPECT_EQ(faultOf(figureText(R"("seconds": 0.0001, )")), "/seconds this number is finer than can be kept");
    EXPECT_EQ(faultOf(figureText(R"("days": 9e14, )")), "/days this number is too large");
}

TEST(FormReader, TellsAllThatIsWrongInOneObject)
{
    rules::Caution caution;
    const auto faults = readInto(caution, R"({"key": 7, "txt": "a", "source": "", "mark": "rumour"})");
    ASSERT_EQ(faults.size(), 5U);
    EXPECT_EQ(faults[0].text, "a text belongs here, not a number");
    EXPECT_EQ(faults[1].text, "\"text\" is missing");
    EXPECT_EQ(faults[2].path, "/source");
    EXPECT_EQ(faults[3].text, "\"rumour\" is none of: agency, museum, studio, derived, memory, practice");
    EXPECT_EQ(faults[4].text, "\"txt\" is not known here");
    EXPECT_EQ(faults[4].file, "file.json");
    EXPECT_EQ(faults[4].column, 12);
}

TEST(FormReader, RefusesControlCharactersEndlessWordsAndListsThatRepeat)
{
    rules::Material material;
    const auto faults =
        readInto(material, R"({"key": "a", "name": "tab\tin it", "family": "x", "law": ")" + std::string(601, 'l') +
                               R"(", "potReference": {"celsius": 23}, "cautions": ["a", "a", "", 1]})");
    std::string paths;
    for (const rules::RuleFault& fault : faults) {
        paths += fault.path + " ";
    }
    EXPECT_EQ(paths, "/name /law /cautions/1 /cautions/2 /cautions/3 ");
}

TEST(FormReader, WantsAnObjectWhereAnObjectBelongs)
{
    rules::Caution caution;
    const auto faults = readInto(caution, "[1, 2]");
    ASSERT_EQ(faults.size(), 1U);
    EXPECT_EQ(faults[0].text, "an object belongs here, not a list");
}

TEST(FormWriter, LeavesOutWhatHasItsDefaultAndReadsBackEqual)
{
    rules::Hazard hazard;
    hazard.key = "INC-99";
    hazard.title = "Cats and gold leaf";
    hazard.why = "They meet";
    hazard.said = "No cats";
    hazard.startingOne = rules::Verdict::Remind;
    hazard.humidity =
        rules::Figure<Humidity>{percentHumidity(70.5), percentHumidity(0), percentHumidity(100), {"x", {}}};
    hazard.source = {"from memory", rules::Mark::Memory};
    const nlohmann::json json = FormWriter::write(hazard);
    EXPECT_FALSE(json.contains("answers"));
    EXPECT_FALSE(json.contains("nearby"));
    EXPECT_FALSE(json.contains("whenDrier"));
    EXPECT_EQ(json["humidity"].dump(), R"({"least":0,"mark":"agency","most":100,"percent":70.5,"source":"x"})");
    rules::Hazard back;
    EXPECT_TRUE(readInto(back, json.dump()).empty());
    EXPECT_EQ(back, hazard);
}
