#include "core/bench/alertlist.h"

#include "tests/bench/alertdesk_support.h"

#include <gtest/gtest.h>

namespace mend::bench::test {

TEST(AlertList, PutsTheMostUrgentFirstThenTheEarliestLatestStart)
{
    DeskInputs inputs;
    inputs.now = noon + minutes(58);
    const Alert late = closing("Heron bowl", noon, noon + minutes(70), minutes(5));
    const Alert soon = closing("Tea cup", noon, noon + minutes(64), minutes(5));
    const Alert cheap = closing("Jug", noon, noon + minutes(60), minutes(1), rules::Miss::Minutes);
    const std::vector<Alert> alerts{opening("Dish", noon), cheap, late, soon};
    std::vector<std::string> order;
    for (const Calling& calling : callList({}, alerts, {}, inputs).calling) {
        order.push_back(calling.alert->benchName);
    }
    EXPECT_EQ(order, (std::vector<std::string>{"Tea cup", "Heron bowl", "Jug", "Dish"}));
}

TEST(AlertList, LeavesTheOpeningOutOnceTheClosingCalls)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    Alert opens = opening("Heron bowl", noon);
    opens.stage = wipe.stage;
    const std::vector<Alert> alerts{opens, wipe};
    DeskInputs inputs;
    inputs.now = wipe.due - milliseconds(1);
    EXPECT_EQ(callList({}, alerts, {}, inputs).calling.front().alert->kind, AlertKind::Opens);
    inputs.now = wipe.due;
    const CallList list = callList({}, alerts, {}, inputs);
    ASSERT_EQ(list.calling.size(), 1u);
    EXPECT_EQ(list.calling.front().alert->kind, AlertKind::Closes);
}

TEST(AlertList, KeepsWhatWasHeardUnderAKeyForEachCall)
{
    const Alert wipe = closing("Heron bowl", noon, noon + minutes(60), minutes(5));
    const Call first = callOf(wipe, nullptr, {}, wipe.due);
    const Call last = callOf(wipe, nullptr, {}, *wipe.lastCall);
    EXPECT_EQ(heardKey(wipe.key, first.stage), wipe.key);
    EXPECT_NE(heardKey(wipe.key, last.stage), wipe.key);
}

TEST(AlertList, NamesTheNextInstantAtWhichAnythingChanges)
{
    Soonest soonest(noon);
    soonest.consider(noon + minutes(5));
    soonest.consider(noon);
    soonest.consider(noon - minutes(1));
    soonest.consider(std::nullopt);
    soonest.consider(noon + minutes(3));
    EXPECT_EQ(soonest.at(), noon + minutes(3));
}

} // namespace mend::bench::test
