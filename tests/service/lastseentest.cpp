#include "core/service/lastseen.h"

#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <fstream>

using namespace mend;
using namespace mend::service;

TEST(LastSeen, RemembersToTheMillisecond)
{
    const test::Scratch scratch;
    const LastSeen lastSeen(scratch / "deeper" / "last-seen");
    EXPECT_FALSE(lastSeen.read().has_value());
    const Instant now{std::chrono::milliseconds(1'900'000'000'123)};
    lastSeen.touch(now);
    EXPECT_EQ(lastSeen.read(), now);
}

TEST(LastSeen, ABrokenFileIsNoMemory)
{
    const test::Scratch scratch;
    std::ofstream(scratch / "last-seen") << "yesterday\n";
    EXPECT_FALSE(LastSeen(scratch / "last-seen").read().has_value());
}
