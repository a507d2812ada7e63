#include "core/store/inhand.h"

#include "tests/store/benchmaker.h"

#include <gtest/gtest.h>

#include <vector>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
using bench::Event;
using bench::What;

namespace {

const PieceId bowl(1);
const PieceId dish(2);

Event naming(std::int64_t id, What what, std::int64_t target, PieceId piece = PieceId())
{
    Event event = someEvent(id, what, piece);
    event.target = EventId(target);
    return event;
}

bool bowlIsInHand(const std::vector<Event>& told) { return isInHand(told, bowl); }

} // namespace

TEST(InHand, UntilItGoesHomeAndAgainWhenItComesBack)
{
    EXPECT_TRUE(bowlIsInHand({}));
    EXPECT_TRUE(bowlIsInHand({someEvent(1, What::Done, bowl)}));
    EXPECT_FALSE(bowlIsInHand({someEvent(1, What::Done, bowl), someEvent(2, What::HandedOver, bowl)}));
    EXPECT_FALSE(bowlIsInHand({someEvent(1, What::ReturnedUnmended, bowl), someEvent(2, What::Noted, bowl)}));
    EXPECT_TRUE(bowlIsInHand({someEvent(1, What::HandedOver, bowl), someEvent(2, What::Placed, bowl)}));
}

TEST(InHand, GoesByWhenItHappenedNotByWhenItWasTold)
{
    Event late = someEvent(2, What::Done, bowl);
    late.happened = benchStart - std::chrono::hours(1); // told after the hand-over, done before it
    EXPECT_FALSE(bowlIsInHand({someEvent(1, What::HandedOver, bowl), late}));
}

TEST(InHand, FollowsWhatWasTakenBackAndThatTakenBackAgain)
{
    const Event home = someEvent(1, What::HandedOver, bowl);
    EXPECT_TRUE(bowlIsInHand({home, naming(2, What::Voided, 1)}));
    EXPECT_FALSE(bowlIsInHand({home, naming(2, What::Voided, 1), naming(3, What::Voided, 2)}));
}

TEST(InHand, FollowsWhatWasMovedToAnotherPiece)
{
    const std::vector<Event> told{someEvent(1, What::HandedOver, bowl), naming(2, What::Retold, 1, dish)};
    EXPECT_TRUE(isInHand(told, bowl));
    EXPECT_FALSE(isInHand(told, dish));
    std::vector<Event> back = told;
    back.push_back(naming(3, What::Voided, 2));
    EXPECT_FALSE(isInHand(back, bowl));
    EXPECT_TRUE(isInHand(back, dish));
}
