#include "core/store/findkeys.h"

#include <gtest/gtest.h>

#include <algorithm>

using namespace mend;
using namespace mend::store;
using Words = std::vector<std::string>;

TEST(FindKeys, BringsBothEncodingsToOneWordF45)
{
    EXPECT_EQ(findWords("Mu\xcc\x88ller"), Words{"muller"});
    EXPECT_EQ(findWords("Müller"), Words{"muller"});
    EXPECT_EQ(findWords("Ｂｏｗｌ ２"), (Words{"2", "bowl"})) << "full width";
    EXPECT_EQ(findWords("STRAẞE straße"), Words{"strasse"});
    EXPECT_EQ(findWords(std::string(500, 'a')).front().size(), longestFindWord);
}

TEST(FindKeys, TwoWordsOneSlipApartShareAKey)
{
    const auto share = [](const char* one, const char* other) {
        const Words a = nearKeys(one);
        const Words b = nearKeys(other);
        return std::ranges::any_of(a, [&](const std::string& key) { return std::ranges::find(b, key) != b.end(); });
    };
    for (const char* const typed : {"herron", "hron", "haron", "ehron", "hreon", "heronn", "eron"}) {
        EXPECT_TRUE(share(typed, "heron")) << typed;
        EXPECT_EQ(wordDistance(typed, "heron"), 2) << typed;
    }
    EXPECT_FALSE(share("crane", "heron"));
    EXPECT_TRUE(nearKeys("cup").empty()) << "too short to be mistaken for another";
}

TEST(FindKeys, TellsHowFarATypedWordIs)
{
    EXPECT_EQ(wordDistance("heron", "heron"), 0);
    EXPECT_EQ(wordDistance("her", "heron"), 1);
    EXPECT_EQ(wordDistance("herr", "herons"), 3) << "half typed, with a slip";
    EXPECT_EQ(wordDistance("cup", "cap"), notAlike);
    EXPECT_EQ(wordDistance("crane", "heron"), notAlike);
}

TEST(FindKeys, KnowsAPhoneFromAnyOfItsDigitsOn)
{
    const Words tails = phoneTails({CustomerId(1), "Ana", "+44 20 7946 0618"});
    EXPECT_EQ(tails.size(), 9U);
    EXPECT_NE(std::ranges::find(tails, "0618"), tails.end());
    EXPECT_NE(std::ranges::find(tails, "442079460618"), tails.end());
    EXPECT_TRUE(phoneTails({CustomerId(1), "Ana", "ana2077@example.org"}).empty());
}
