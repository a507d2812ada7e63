#include "core/exchange/placedjson.h"

#include <gtest/gtest.h>

using namespace mend::exchange;

TEST(PlacedJson, KnowsWhereEachValueStands)
{
    const PlacedJson json = readPlacedJson("{\n  \"a\": [1, -2.5e1,\n \"\xc3\xa9\", true]\n}");
    ASSERT_TRUE(json.root);
    const JsonNode* list = json.root->member("a");
    ASSERT_NE(list, nullptr);
    EXPECT_EQ(list->place, (TextPlace{2, 8}));
    EXPECT_EQ(list->items[1].place, (TextPlace{2, 12}));
    EXPECT_EQ(list->items[1].number, -25.0);
    EXPECT_EQ(list->items[2].place, (TextPlace{3, 2}));
    EXPECT_EQ(list->items[3].place, (TextPlace{3, 7})); // characters, not bytes
}
