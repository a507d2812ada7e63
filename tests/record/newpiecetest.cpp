#include "core/record/newpiece.h"

#include "core/record/piecenumber.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::record;

namespace {

NewPiece bowl() { return {"Heron bowl", {}, "Ines Varga", {}, "goldLacquerSeam", 7}; }
std::vector<NewPieceFault> faults(const NewPiece& piece)
{
    return faultsOf(piece, std::vector<std::string>{"Egg cup"});
}

} // namespace

TEST(NewPiece, IsGoodWithANameAnOwnerAProcedureAndFragments) { EXPECT_TRUE(faults(bowl()).empty()); }

TEST(NewPiece, ListsEveryFaultAtOnce)
{
    const std::vector<NewPieceFault> all{NewPieceFault::NoBenchName, NewPieceFault::NoOwner, NewPieceFault::NoProcedure,
                                         NewPieceFault::FragmentsOutOfRange};
    EXPECT_EQ(faults(NewPiece()), all);
}

TEST(NewPiece, ABenchNameIsSpokenSoItMustTellPiecesApartAndNoOwner)
{
    NewPiece piece = bowl();
    for (const char* taken : {"Egg cup", "egg  CUP", " Egg cup "}) {
        piece.benchName = taken;
        EXPECT_EQ(faults(piece), std::vector<NewPieceFault>{NewPieceFault::BenchNameTaken}) << taken;
    }
    for (const char* telling : {"Varga bowl", "bowl of ines"}) {
        piece.benchName = telling;
        EXPECT_EQ(faults(piece), std::vector<NewPieceFault>{NewPieceFault::BenchNameHasOwner}) << telling;
    }
    piece.benchName = "Vargas bowl";
    EXPECT_TRUE(faults(piece).empty()) << "another word is another word";
    piece.ownerName = "R. de Castellan";
    piece.benchName = "Bol de mer";
    EXPECT_TRUE(faults(piece).empty()) << "short words tell nobody";
}

TEST(NewPiece, TakesOneToNineHundredAndNinetyNineFragments)
{
    NewPiece piece = bowl();
    for (const auto& [count, good] : {std::pair{0, false}, {1, true}, {999, true}, {1000, false}, {-3, false}}) {
        piece.fragments = count;
        EXPECT_EQ(faults(piece).empty(), good) << count;
    }
}

TEST(NewPiece, AKnownOwnerNeedsNoName)
{
    NewPiece piece = bowl();
    piece.ownerName.clear();
    piece.owner = CustomerId(4);
    EXPECT_TRUE(faults(piece).empty());
}

TEST(NextPieceNumber, FollowsTheHighestOfTheYear)
{
    const std::vector<std::string> taken{*pieceNumber(2026, 3), *pieceNumber(2026, 17), *pieceNumber(2025, 400)};
    EXPECT_EQ(nextPieceNumber(2026, taken), pieceNumber(2026, 18));
    EXPECT_EQ(nextPieceNumber(2027, taken), pieceNumber(2027, 1));
    EXPECT_EQ(nextPieceNumber(2026, std::vector<std::string>{"nonsense"}), pieceNumber(2026, 1));
    EXPECT_FALSE(nextPieceNumber(2026, std::vector<std::string>{*pieceNumber(2026, 9999)}));
}
