#include "core/record/benchname.h"

#include <gtest/gtest.h>

using namespace mend::record;

namespace {
const std::vector<std::string> inHand{"Heron bowl", "Celadon dish", "Cup 2"};
}

TEST(BenchName, IsShortSpokenAndHoldsNoOwner)
{
    EXPECT_EQ(faultOfBenchName("Blue jug", "Ana Müller", inHand), std::nullopt);
    EXPECT_EQ(faultOfBenchName(" … ", "Ana Müller", inHand), BenchNameFault::Missing);
    EXPECT_EQ(faultOfBenchName("A very long name for a bowl", "", inHand), BenchNameFault::TooLong);
    EXPECT_EQ(faultOfBenchName("One two six ten red", "", inHand), BenchNameFault::TooLong) << "five words";
    EXPECT_EQ(faultOfBenchName("heron  BOWL", "", inHand), BenchNameFault::Taken);
    EXPECT_EQ(faultOfBenchName("Muller jug", "Ana Müller", inHand), BenchNameFault::HasOwner) << "with or without dots";
    EXPECT_EQ(faultOfBenchName("De jug", "Maria de Vos", inHand), std::nullopt) << "two letters tell nobody";
}

TEST(BenchName, AsksForAWordThatTellsAlikeOnesApart)
{
    using Names = std::vector<std::string>;
    EXPECT_EQ(alikeBenchNames("Herons bowl", inHand), Names{"Heron bowl"});
    EXPECT_EQ(alikeBenchNames("Bowl heron", inHand), Names{"Heron bowl"});
    EXPECT_EQ(alikeBenchNames("Blue heron bowl", inHand), Names{"Heron bowl"});
    EXPECT_EQ(alikeBenchNames("Celadon fish", inHand), Names{"Celadon dish"});
    EXPECT_EQ(alikeBenchNames("Cup 3", inHand), Names{}) << "numbers are heard apart";
    EXPECT_EQ(alikeBenchNames("Heron plate", inHand), Names{});
    EXPECT_EQ(alikeBenchNames("", inHand), Names{});
}
