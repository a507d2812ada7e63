#include "core/record/piece.h"

#include <gtest/gtest.h>

using namespace mend::record;

TEST(Piece, ReckonsThreeJoinsASetUntilTheOrderIsKnown)
{
    Piece piece;
    piece.fragments = 8;
    EXPECT_EQ(joinsOf(piece), 7);
    EXPECT_EQ(setsOf(piece), 3);
    piece.sets = 5;
    EXPECT_EQ(setsOf(piece), 5);
    piece = Piece{};
    EXPECT_EQ(joinsOf(piece), 0);
    EXPECT_EQ(setsOf(piece), 1);
}

TEST(Piece, PlaceKindsHaveOneWordEach)
{
    for (const auto kind : {PlaceKind::Bench, PlaceKind::Shelf, PlaceKind::Cabinet, PlaceKind::HumidBox,
                            PlaceKind::Tray, PlaceKind::Outside}) {
        EXPECT_EQ(placeKindFromKey(placeKindKey(kind)), kind);
    }
    EXPECT_FALSE(placeKindFromKey("attic").has_value());
}
