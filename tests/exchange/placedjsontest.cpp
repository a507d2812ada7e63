#include "core/exchange/placedjson.h"

#include <gtest/gtest.h>

using namespace mend::exchange;

namespace {

/// The first fault as "line:column pointer text"; "" where the text was taken.
std::string firstFault(std::string_view text)
{
    const PlacedJson json = readPlacedJson(text);
    EXPECT_EQ(json.root.has_value(), json.faults.empty());
    if (json.faults.empty()) {
        return "";
    }
    const JsonFault& fault = json.faults.front();
    return std::to_string(fault.place.line) + ":" + std::to_string(fault.place.column) + " " + fault.path + " " +
           fault.text;
}

} // namespace

TEST(PlacedJson, KnowsWhereEachValueStands)
{
    const PlacedJson json = readPlacedJson("{\n  \"a\": [1, -2.5e1,\n \"\xc3\xa9\", true, null, {\"b\":{}}]\n}");
    ASSERT_TRUE(json.root);
    const JsonNode* list = json.root->member("a");
    ASSERT_NE(list, nullptr);
    EXPECT_EQ(list->place, (TextPlace{2, 8}));
    EXPECT_EQ(list->items[1].place, (TextPlace{2, 12}));
    EXPECT_EQ(list->items[1].number, -25.0);
    EXPECT_EQ(list->items[2].place, (TextPlace{3, 2}));
    EXPECT_EQ(list->items[3].place, (TextPlace{3, 7})); // characters, not bytes
    EXPECT_TRUE(list->items[3].flag);
    EXPECT_EQ(list->items[4].kind, JsonNode::Kind::Null);
    EXPECT_EQ(list->items[5].member("b")->place, (TextPlace{3, 24}));
    EXPECT_EQ(json.root->member("c"), nullptr);
}

TEST(PlacedJson, SkipsWhatLooksLikeStructureInsideTexts)
{
    const PlacedJson json = readPlacedJson(R"({"a\"},{[": "x\\", "b": ":,{\u0041", "c" :7})");
    ASSERT_TRUE(json.root);
    EXPECT_EQ(json.root->member("c")->place, (TextPlace{1, 43}));
    EXPECT_EQ(json.root->member("b")->text, ":,{A");
}

TEST(PlacedJson, TakesAByteOrderMark)
{
    const PlacedJson json = readPlacedJson("\xef\xbb\xbf{\"a\": 1}");
    ASSERT_TRUE(json.root);
    EXPECT_EQ(json.root->member("a")->number, 1);
    EXPECT_EQ(json.root->member("a")->place, (TextPlace{1, 7}));
}

// What a hostile or broken file may hold, each refused with its place (RFC 8259, RFC 3629).
TEST(PlacedJson, RefusesTheSameKeyTwice)
{
    EXPECT_EQ(firstFault("{\"a\": 1,\n \"b\": {\"c\": 1, \"c\": 2}}"), "2:16 /b/c \"c\" is given twice");
}

TEST(PlacedJson, RefusesNumbersThatNothingHolds)
{
    EXPECT_EQ(firstFault("[1, 1e400]"), "1:5 /1 this number is too large");
    EXPECT_EQ(firstFault("[9223372036854775808]"), "1:2 /0 this number is too large"); // 2^63
    EXPECT_EQ(firstFault("[1, -9223372036854775809]"), "1:5 /1 this number is too large");
    EXPECT_EQ(firstFault("[123456789012345678901234567890]"), "1:2 /0 this number is too large");
    EXPECT_EQ(firstFault("[9007199254740992]"), "1:2 /0 this number is too large"); // 2^53
    EXPECT_EQ(firstFault("[9007199254740991, -9007199254740991]"), "");
}

TEST(PlacedJson, RefusesDepthWithoutEndAndWithoutRecursing)
{
    const std::string deep(100'000, '[');
    std::string pointer;
    for (int i = 0; i < 32; ++i) {
        pointer += "/0";
    }
    EXPECT_EQ(firstFault(deep), "1:33 " + pointer + " this is nested too deeply");
    std::string objects;
    for (int i = 0; i < 100'000; ++i) {
        objects += "{\"a\":";
    }
    EXPECT_NE(firstFault(objects).find("nested too deeply"), std::string::npos);
    EXPECT_EQ(firstFault(std::string(32, '[') + std::string(32, ']')), "");
}

TEST(PlacedJson, RefusesTextThatIsNoText)
{
    EXPECT_NE(firstFault("{\"a\": \"\\ud800\"}"), "");        // lone surrogate
    EXPECT_NE(firstFault("{\"a\": \"\\ude00\\ud83d\"}"), ""); // pair in the wrong order
    EXPECT_NE(firstFault("{\"a\": \"\xff\"}"), "");           // no UTF-8
    EXPECT_NE(firstFault("{\"a\": \"\xed\xa0\x80\"}"), "");   // a surrogate in UTF-8
    EXPECT_NE(firstFault("{\"a\": \"\xc0\xaf\"}"), "");       // overlong
    EXPECT_EQ(firstFault("{\"a\": \"\\ud83d\\ude00\"}"), "");
    EXPECT_EQ(firstFault(std::string_view("{}\0{}", 5)), "1:3  this is not JSON: a NUL stands in it");
}

TEST(PlacedJson, RefusesWhatIsNoJsonAtItsPlace)
{
    for (const char* bad : {"", " ", "{", "[1,]", "{\"a\" 1}", "{a: 1}", "[01]", "[+1]", "[NaN]", "[Infinity]", "'a'",
                            "[1] [2]", "// no\n{}", "[\"a\nb\"]", "{\"a\":}", "tru", "[.5]", "[1.]", "\"\\x\""}) {
        EXPECT_NE(firstFault(bad), "") << bad;
    }
    EXPECT_EQ(firstFault("{\n \"a\": 1,\n \"b\" 2\n}").substr(0, 3), "3:6");
    EXPECT_EQ(firstFault(std::string(PlacedJson::longest + 1, ' ')), "1:1  this file is larger than 4 MB");
}

TEST(PlacedJson, FindsTheNearestNodeOfAPointer)
{
    const PlacedJson json = readPlacedJson("{\"a/b\": {\"~\": [10, 20]}}");
    ASSERT_TRUE(json.root);
    EXPECT_EQ(nearestNode(*json.root, "/a~1b/~0/1").number, 20);
    EXPECT_EQ(nearestNode(*json.root, "/a~1b/~0/7").items.size(), 2U);
    EXPECT_EQ(nearestNode(*json.root, "/a~1b/x/y").members.size(), 1U);
    EXPECT_EQ(nearestNode(*json.root, "").members.size(), 1U);
    EXPECT_EQ(pointerStep("a/~"), "a~1~0");
}
