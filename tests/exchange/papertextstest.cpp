#include "core/exchange/papertexts.h"

#include <gmock/gmock.h>

#include <fstream>
#include <sstream>

using namespace mend::exchange;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

namespace {

std::string shipped()
{
    std::ifstream file(MEND_SOURCE_DIR "/resources/papers/texts.json");
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

std::string with(const std::string& texts)
{
    return R"({"format": "mendbench paper texts", "version": 1, "texts": [)" + texts + "]}";
}

} // namespace

TEST(PaperTexts, TheShippedFileHasNoFault)
{
    const auto read = readPaperTexts(shipped());
    EXPECT_THAT(read.faults, IsEmpty());
    ASSERT_TRUE(read.texts.contains("care.food"));
    EXPECT_THAT(read.texts.at("care.food").lines.front(), HasSubstr("Not food-safe"));
    for (const char* key : {"goldLacquerSeam", "metalFilledSeam", "urushiSeam", "invisibleMend", "reversibleJoin"}) {
        EXPECT_TRUE(read.texts.contains(std::string("care.") + key)) << key;
    }
}

TEST(PaperTexts, TellsAllFaultsWithTheirPlaces)
{
    const auto read = readPaperTexts(with(R"({"key": "a", "says": "x", "lines": ["one"]},
{"key": "a", "says": "x", "lines": ["two"]},
{"says": "x", "lines": [""]},
{"key": "c", "lines": []})"));
    ASSERT_THAT(read.faults, SizeIs(5));
    EXPECT_EQ(read.faults[0].path, "/texts/1/key");
    EXPECT_EQ(read.faults[0].place.line, 2);
    EXPECT_EQ(read.faults[1].path, "/texts/2/key");
    EXPECT_EQ(read.faults[2].path, "/texts/2/lines/0");
    EXPECT_EQ(read.faults[3].path, "/texts/3/says");
    EXPECT_EQ(read.faults[4].path, "/texts/3/lines");
}

TEST(PaperTexts, RefusesAnotherFileAndWhatIsNoJson)
{
    EXPECT_THAT(readPaperTexts(R"({"format": "mendbench cautions"})").faults, SizeIs(1));
    EXPECT_THAT(readPaperTexts("{").faults, testing::Not(IsEmpty()));
    EXPECT_THAT(readPaperTexts(with(R"({"key": 4, "says": "x", "lines": ["one"]})")).faults, SizeIs(1));
}
