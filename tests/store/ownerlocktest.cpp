#include "core/store/ownerlock.h"

#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <fstream>

#include <sys/wait.h>
#include <unistd.h>

using namespace mend;
using namespace mend::store;
using namespace mend::test;

TEST(OwnerLock, IsHeldByOneAndGivenUpAtTheEnd)
{
    const Scratch scratch;
    const auto file = scratch / "bench.mend";
    {
        const auto first = OwnerLock::take(file);
        ASSERT_TRUE(first.isOk());
        EXPECT_EQ(OwnerLock::take(file).fault().kind, FaultKind::Locked);
        EXPECT_EQ(OwnerLock::take(file, true).fault().kind, FaultKind::Locked) << "a living holder is never pushed out";
    }
    EXPECT_FALSE(std::filesystem::exists(OwnerLock::fileFor(file)));
    EXPECT_TRUE(OwnerLock::take(file).isOk());
}

TEST(OwnerLock, OfADeadProcessIsTakenOverF17)
{
    const Scratch scratch;
    const auto file = scratch / "bench.mend";
    const pid_t pid = ::fork();
    if (pid == 0) {
        auto lock = OwnerLock::take(file);
        std::_Exit(lock.isOk() ? 0 : 1); // dies holding it
    }
    int status = 0;
    ::waitpid(pid, &status, 0);
    ASSERT_EQ(status, 0);
    ASSERT_EQ(OwnerLock::holder(file)->pid, pid);
    const auto lock = OwnerLock::take(file);
    ASSERT_TRUE(lock.isOk());
    EXPECT_EQ(OwnerLock::holder(file)->pid, ::getpid());
}

TEST(OwnerLock, OfAnotherMachineIsLeftUntilAPersonSaysOtherwiseF16F17)
{
    const Scratch scratch;
    const auto file = scratch / "bench.mend";
    std::ofstream(OwnerLock::fileFor(file)) << "4711\nother-studio/abc\n";
    const auto refused = OwnerLock::take(file);
    ASSERT_FALSE(refused.isOk());
    EXPECT_EQ(refused.fault(), (Fault{FaultKind::Locked, "pid 4711 on other-studio/abc"}));
    EXPECT_EQ(OwnerLock::holder(file), (Owner{"other-studio/abc", 4711})) << "theirs stays as it is";
    EXPECT_TRUE(OwnerLock::take(file, true).isOk());
}
