#include "core/record/sheet.h"

#include <gtest/gtest.h>

#include <random>

using namespace mend::record;

namespace {

/// Any sheet at all, so many levels deep.
Sheet anySheet(std::mt19937& random, int deep)
{
    const auto upTo = [&](int most) { return std::uniform_int_distribution<int>(0, most)(random); };
    switch (upTo(deep > 0 ? 4 : 2)) {
    case 0: {
        std::string text;
        for (int i = upTo(8); i > 0; --i) {
            text += upTo(2) == 0 ? "漆" : std::string(1, static_cast<char>(1 + upTo(126)));
        }
        return Sheet::ofText(text);
    }
    case 1:
        return Sheet::ofNumber(static_cast<std::int64_t>(random()) - 2'147'483'648LL);
    case 2:
        return Sheet::ofFlag(upTo(1) == 0);
    case 3: {
        Sheet list = Sheet::list();
        for (int i = upTo(4); i > 0; --i) {
            list.items.push_back(anySheet(random, deep - 1));
        }
        return list;
    }
    default: {
        Sheet group;
        for (int i = upTo(4); i > 0; --i) {
            group.members.emplace_back("key" + std::to_string(i), anySheet(random, deep - 1));
        }
        return group;
    }
    }
}

} // namespace

TEST(Sheet, ReadsBackWhateverItWrites)
{
    std::mt19937 random(5);
    for (int i = 0; i < 3'000; ++i) {
        const Sheet sheet = anySheet(random, 5);
        const std::string text = sheetText(sheet);
        ASSERT_EQ(sheetFromText(text), sheet) << text;
    }
}

TEST(Sheet, IsOneLineOfJson)
{
    Sheet sheet;
    sheet.members.emplace_back("a \"b\"", Sheet::ofText("line\nend\x01\\"));
    sheet.members.emplace_back("n", Sheet::ofNumber(-7));
    EXPECT_EQ(sheetText(sheet), R"({"a \"b\"":"line\nend\u0001\\","n":-7})");
    EXPECT_EQ(sheetText(Sheet::ofNumber(9007199254740993)), "\"9007199254740993\"") << "no double holds it";
}

TEST(Sheet, TakesNothingElse)
{
    for (const char* const text :
         {"", "{", "[", "\"", "{\"a\"}", "{\"a\":}", "[1,]", "[1 2]", "{\"a\":1,}", "truth", "1.5", "\"\\q\"",
          "\"\\u00g1\"", "{} ", "nul", "[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]"}) {
        EXPECT_FALSE(sheetFromText(text)) << text;
    }
}
