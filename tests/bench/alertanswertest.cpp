#include "core/bench/alertanswer.h"

#include "tests/bench/alertdesk_support.h"

#include <gtest/gtest.h>

namespace mend::bench::test {

TEST(AlertAnswer, ReadsBackEveryWayOfAnswering)
{
    for (const Answered how :
         {Answered::Shown, Answered::HandsOn, Answered::Heard, Answered::AfterStep, Answered::StartAt}) {
        EXPECT_EQ(answeredFromKey(answeredKey(how)), how);
    }
    EXPECT_FALSE(answeredFromKey("dismissed").has_value());
}

TEST(AlertAnswer, BecomesAnEventThatNamesTheAlert)
{
    Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    wipe.key = alertKey(PieceId(12), {"wipeBack", 2}, "closes@5");
    const Event event = answerEvent(wipe, Answered::StartAt, PersonId(3), noon + minutes(50));
    EXPECT_EQ(event.what, What::AlertAnswered);
    EXPECT_EQ(event.word, "12/wipeBack#2/closes@5|startAt");
    EXPECT_EQ(event.until, noon + minutes(50));
    EXPECT_EQ(event.person, PersonId(3));
    EXPECT_EQ(event.piece, wipe.piece);
    EXPECT_FALSE(answerEvent(wipe, Answered::Heard, PersonId(3), noon).until.has_value());
}

} // namespace mend::bench::test
