#include "core/bench/alertspeech.h"

#include "tests/bench/alertdesk_support.h"

#include <gtest/gtest.h>

namespace mend::bench::test {

TEST(AlertSpeech, SaysTheActTheBenchNameAndWholeMinutes)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    EXPECT_EQ(spokenText(wipe, noon + minutes(48) + seconds(1)), "Wipe. Heron bowl. 6 minutes.");
    EXPECT_EQ(spokenText(wipe, noon + minutes(54)), "Wipe. Heron bowl. 1 minute.");
    EXPECT_EQ(spokenText(wipe, noon + minutes(54) + seconds(1)), "Wipe. Heron bowl. Now.");
    EXPECT_EQ(spokenText(opening("Heron bowl", noon), noon), "Take out. Heron bowl.");
    EXPECT_EQ(spokenText(closed(wipe), noon + hours(2)), "Closed. Wipe. Heron bowl.");
    EXPECT_EQ(spokenText(underHands(wipe, noon)[1], noon), "Wipe done? Heron bowl.");
}

TEST(AlertSpeech, NamesTheNextOfAChainWhereThereIsRoom)
{
    Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    wipe.chainNames = {"Heron bowl", "Tea cup"};
    EXPECT_EQ(spokenText(wipe, noon + minutes(48)), "Wipe. Heron bowl, then Tea cup. 7 minutes.");
    wipe.chainNames[1] = "Large blue and white serving dish";
    EXPECT_EQ(spokenText(wipe, noon + minutes(48)), "Wipe. Heron bowl. 7 minutes.");
}

TEST(AlertSpeech, NeverSaysMoreThanTenWords)
{
    for (const char* name : {"", "Cup", "Large blue and white serving dish with a heron on its inner rim"}) {
        for (const char* act : {"Wipe", "Take out", "Put back into the humid box with care"}) {
            Alert alert = closing(name, noon, noon + minutes(60), minutes(5));
            alert.spoken = act;
            alert.chainNames = {name, "Jug"};
            for (const Alert& each : {alert, closed(alert), underHands(alert, noon)[1], opening(name, noon)}) {
                const std::string text = spokenText(each, noon + minutes(20));
                EXPECT_LE(wordCount(text), 10) << text;
                EXPECT_GE(wordCount(text), 1);
            }
        }
    }
}

} // namespace mend::bench::test
