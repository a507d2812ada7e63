// Kill -9 at random moments of a random stream of taps.
#include "core/store/backups.h"
#include "core/store/check.h"

#include "tests/store/benchmaker.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <array>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <iostream>
#include <iterator>
#include <random>
#include <set>
#include <sstream>

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace mend;
using namespace mend::store;
using namespace mend::test;

namespace {

constexpr int killsInTheNormalSuite = 60;
constexpr int killsOfOneFile = 20;

struct Victim {
    pid_t pid = 0;
    int output = -1;
};

Victim spawn(const std::filesystem::path& file, int seed, bool withBackup)
{
    std::array<int, 2> ends{};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) {
        std::abort();
    }
    const std::string seedText = std::to_string(seed);
    const pid_t pid = ::fork();
    if (pid == 0) {
        ::dup2(ends[1], STDOUT_FILENO);
        ::execl(MEND_KILL_CHILD, MEND_KILL_CHILD, file.c_str(), seedText.c_str(), withBackup ? "backup" : "taps",
                static_cast<char*>(nullptr));
        std::_Exit(127);
    }
    ::close(ends[1]);
    return {pid, ends[0]};
}

/// Everything the victim acknowledged up to its death.
std::set<std::int64_t> killAfter(const Victim& victim, std::chrono::microseconds delay)
{
    ::usleep(static_cast<useconds_t>(delay.count()));
    ::kill(victim.pid, SIGKILL);
    std::string heard;
    std::array<char, 4096> buffer{};
    for (ssize_t count = 0; (count = ::read(victim.output, buffer.data(), buffer.size())) > 0;) {
        heard.append(buffer.data(), static_cast<std::size_t>(count));
    }
    ::close(victim.output);
    int status = 0;
    ::waitpid(victim.pid, &status, 0);
    EXPECT_TRUE(WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL) << "it ended by itself: " << status;
    std::istringstream numbers(heard);
    return {std::istream_iterator<std::int64_t>(numbers), {}};
}

/// "0 of 3", "1 of 3", "2 of 3", one after the other, and again.
void expectWholeActs(const std::vector<bench::Event>& events)
{
    int next = 0;
    for (const bench::Event& event : events) {
        int at = -1;
        std::string of;
        int size = 0;
        std::istringstream(event.word) >> at >> of >> size;
        ASSERT_EQ(at, next) << "half an act at event " << event.id.value();
        next = at + 1 == size ? 0 : at + 1;
    }
    ASSERT_EQ(next, 0) << "half an act at the end";
}

} // namespace

TEST(Kill, LosesNoAcknowledgedTapAndLeavesNoHalfActF1F3)
{
    const char* const asked = std::getenv("MEND_KILLS");
    const int kills = asked ? std::atoi(asked) : killsInTheNormalSuite;
    const unsigned seed = asked ? static_cast<unsigned>(::getpid()) : 1;
    std::mt19937 random(seed);
    std::unique_ptr<Scratch> scratch;
    std::set<std::int64_t> acknowledged;
    std::size_t stored = 0;
    int hotJournals = 0;
    for (int round = 0; round < kills; ++round) {
        if (round % killsOfOneFile == 0) {
            scratch = std::make_unique<Scratch>();
            acknowledged.clear();
            furnish(*openOrDie(*scratch / "bench.mend"));
        }
        const std::filesystem::path file = *scratch / "bench.mend";
        const bool withBackup = round % 4 == 3;
        const Victim victim = spawn(file, round + 1, withBackup);
        acknowledged.merge(killAfter(victim, std::chrono::microseconds(10'000 + random() % 150'000)));
        hotJournals += std::filesystem::exists(file.native() + "-journal") ? 1 : 0;

        const auto store = openOrDie(file, OpenMode::ReadWrite);
        const auto events = store->allEvents().value();
        for (const bench::Event& event : events) {
            acknowledged.erase(event.id.value());
        }
        ASSERT_TRUE(acknowledged.empty())
            << "seed " << seed << ", kill " << round << ": lost event " << *acknowledged.begin();
        expectWholeActs(events);
        const CheckReport report = checkWhole(*store);
        ASSERT_TRUE(report.isGood()) << report.findings.front().detail;
        const Backups backups(*scratch / "backups");
        backups.sweep();
        for (const Backup& backup : backups.all()) {
            ASSERT_TRUE(checkWhole(*openOrDie(backup.file, OpenMode::ReadOnly)).isGood());
        }
        if (HasFatalFailure()) {
            return;
        }
        stored = std::max(stored, events.size());
    }
    EXPECT_GT(stored, 0U) << "no victim lived long enough to store anything";
    RecordProperty("hotJournals", hotJournals);
    std::cout << kills << " kills, " << hotJournals << " journals left behind, longest file " << stored << " events\n";
}
