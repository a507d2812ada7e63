#include "core/service/whileaway.h"

#include <gtest/gtest.h>

using namespace mend;
using namespace mend::service;
using bench::ActKind;
using bench::Alert;
using bench::AlertKind;
using bench::MissedAlert;
using std::chrono::minutes;

namespace {

Alert alertOf(const char* key, AlertKind kind)
{
    Alert alert;
    alert.key = key;
    alert.kind = kind;
    alert.piece = PieceId(3);
    alert.stage = {"wipeBack", 2};
    alert.benchName = "Heron bowl";
    alert.act = "Wipe back the filler";
    return alert;
}

std::vector<ActKind> kinds(const MissedLine& line)
{
    std::vector<ActKind> all;
    std::ranges::transform(line.answers, std::back_inserter(all), &bench::CardAct::kind);
    return all;
}

} // namespace

TEST(WhileAway, PastItsCloseTheThreeAnswersOfTheCard)
{
    const std::vector<Alert> alerts{alertOf("a", AlertKind::Closed)};
    const auto lines = missedLines({{}, {MissedAlert{"a", false, minutes(42)}}}, alerts);
    ASSERT_EQ(lines.size(), 1U);
    EXPECT_EQ(lines[0].time, QStringLiteral("closed 42 min ago"));
    EXPECT_EQ(kinds(lines[0]), (std::vector{ActKind::WasInTime, ActKind::DoingLate, ActKind::NotDone}));
    EXPECT_EQ(lines[0].answers[0].stage, (bench::StageInstance{"wipeBack", 2}));
}

TEST(WhileAway, WhatCanBeSavedAsksForHandsFirst)
{
    const std::vector<Alert> alerts{alertOf("a", AlertKind::Closes)};
    const auto lines = missedLines({{}, {MissedAlert{"a", true, minutes(18)}}}, alerts);
    ASSERT_EQ(lines.size(), 1U);
    EXPECT_EQ(lines[0].time, QStringLiteral("18 min left"));
    EXPECT_TRUE(lines[0].savable);
    EXPECT_EQ(kinds(lines[0]).front(), ActKind::HandsOnIt);
}

TEST(WhileAway, WhatOnlyOpenedIsNeverCalledMissed)
{
    const std::vector<Alert> alerts{alertOf("a", AlertKind::Opens)};
    const auto lines = missedLines({{}, {MissedAlert{"a", false, minutes(5)}}}, alerts);
    ASSERT_EQ(lines.size(), 1U);
    EXPECT_EQ(lines[0].time, QStringLiteral("may be done since 5 min"));
    EXPECT_EQ(std::ranges::count(kinds(lines[0]), ActKind::NotDone), 0);
}

TEST(WhileAway, KeepsTheOrderOfTheReportAndLeavesOutWhatIsAnswered)
{
    const std::vector<Alert> alerts{alertOf("b", AlertKind::Closed), alertOf("a", AlertKind::Closes)};
    const auto lines = missedLines({{},
                                    {MissedAlert{"a", true, minutes(1)}, MissedAlert{"gone", true, minutes(2)},
                                     MissedAlert{"b", false, minutes(3)}}},
                                   alerts);
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_EQ(lines[0].key, "a");
    EXPECT_EQ(lines[1].key, "b");
}
