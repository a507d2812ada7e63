#include "core/rules/vocabulary.h"

#include "tests/rules/planted.h"

#include <gtest/gtest.h>

#include <array>

using namespace mend;
using namespace mend::rules;
using namespace mend::test;

TEST(Vocabulary, TellsWhatCouldHaveBeenSaidInstead)
{
    Faults faults;
    checkWords({"bench", "attic"}, knownPlaces(), "/places", "place", faults);
    const auto told = faults.take();
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told[0].path, "/places/1");
    EXPECT_EQ(told[0].text, "\"attic\" is no place: bench, shelf, cabinet, humidBox, tray, outside");
}

TEST(Vocabulary, TakesAnyPieceWhereNoConditionIsGiven)
{
    Faults faults;
    checkCondition("", "/opens/0", faults);
    checkCondition("porous", "/opens/1", faults);
    checkCondition("haunted", "/opens/2", faults);
    const auto told = faults.take();
    ASSERT_EQ(told.size(), 1U) << allTold(told);
    EXPECT_EQ(told[0].path, "/opens/2/when");
}

TEST(Vocabulary, LetsLettersDigitsAndHyphensNameARow)
{
    Faults faults;
    for (const std::string_view good : {"goldLacquerSeam", "INC-01", "a"}) {
        EXPECT_TRUE(checkKey(good, "/key", faults)) << good;
    }
    for (const std::string_view bad : {"", "1st", "gold seam", "-x", "n\u00e9"}) {
        EXPECT_FALSE(checkKey(bad, "/key", faults)) << bad;
    }
    EXPECT_EQ(faults.take().size(), 5U);
}

TEST(Vocabulary, NoticesAKeyGivenTwice)
{
    struct Row {
        std::string key;
    };
    Faults faults;
    checkKeys(std::vector<Row>{{"one"}, {"two"}, {"one"}}, "/laws", faults);
    const auto told = faults.take();
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told[0].path, "/laws/2/key");
}

TEST(Vocabulary, MissesNoMaterialAndNoCautionThatIsNotThere)
{
    Faults faults;
    checkMaterial("fastAdhesive", goodBook(), "/materials/0", faults);
    checkMaterial("moonDust", goodBook(), "/materials/1", faults);
    checkCautions({"beBrave"}, goodBook(), "", faults);
    const auto told = faults.take();
    ASSERT_EQ(told.size(), 2U) << allTold(told);
    EXPECT_EQ(told[0].path, "/materials/1");
    EXPECT_EQ(told[1].path, "/cautions/0");
}
