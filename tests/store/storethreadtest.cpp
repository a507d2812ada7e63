#include "core/store/storethread.h"

#include "tests/store/benchmaker.h"
#include "tests/support/scratch.h"

#include <gtest/gtest.h>

#include <atomic>
#include <fstream>
#include <future>

using namespace mend;
using namespace mend::store;
using namespace mend::test;
using namespace std::chrono_literals;
using bench::Event;
using bench::What;

namespace {

/// What was heard from the store, collected.
struct Ear {
    std::mutex mutex;
    std::vector<EventId> stored;
    std::vector<FaultKind> failed;
    std::vector<EventId> refused;
    int relieved = 0;

    StoreNews news()
    {
        StoreNews news;
        news.stored = [this](std::span<const EventId> ids) {
            const std::lock_guard held(mutex);
            stored.insert(stored.end(), ids.begin(), ids.end());
        };
        news.writeFailed = [this](const Fault& fault) {
            const std::lock_guard held(mutex);
            failed.push_back(fault.kind);
        };
        news.writesAgain = [this] {
            const std::lock_guard held(mutex);
            ++relieved;
        };
        news.refused = [this](std::span<const Event> events, const Fault&) {
            const std::lock_guard held(mutex);
            for (const Event& event : events) {
                refused.push_back(event.id);
            }
        };
        return news;
    }
    template <class Read> auto heard(Read read)
    {
        const std::lock_guard held(mutex);
        return read();
    }
};

std::vector<EventId> numbers(std::int64_t first, std::int64_t last)
{
    std::vector<EventId> ids;
    for (std::int64_t id = first; id <= last; ++id) {
        ids.emplace_back(id);
    }
    return ids;
}

std::unique_ptr<Store> furnished(const std::filesystem::path& file)
{
    auto store = openOrDie(file);
    furnish(*store);
    return store;
}

constexpr Patience quick{20ms, 300ms, 20ms};

} // namespace

TEST(StoreThread, StoresInTheOrderInWhichItWasTold)
{
    const Scratch scratch;
    Ear ear;
    {
        StoreThread thread(furnished(scratch / "bench.mend"), ear.news(), quick);
        for (int id = 1; id <= 20; ++id) {
            thread.append({someEvent(id, What::Done)});
        }
        EXPECT_TRUE(thread.waitUntilStored(10s));
        EXPECT_TRUE(thread.unstored().empty());
    }
    EXPECT_EQ(ear.stored, numbers(1, 20));
    EXPECT_EQ(openOrDie(scratch / "bench.mend")->allEvents().value().size(), 20U);
}

TEST(StoreThread, WaitsForAnotherProgramAndSaysSoOnceItTakesTooLongF18)
{
    const Scratch scratch;
    Ear ear;
    StoreThread thread(furnished(scratch / "bench.mend"), ear.news(), quick);
    // Another program holds the file, as a copying tool would.
    Database other = Database::open(scratch / "bench.mend", Access::ReadWrite);
    other.run("BEGIN EXCLUSIVE");
    thread.append({someEvent(1, What::Done)});
    thread.append({someEvent(2, What::Done), someEvent(3, What::Done)});
    std::this_thread::sleep_for(150ms);
    EXPECT_EQ(thread.unstored().size(), 3U); // in sight
    EXPECT_EQ(ear.heard([&] { return ear.failed.size(); }), 0U) << "told before its time";
    std::this_thread::sleep_for(600ms);
    EXPECT_EQ(ear.heard([&] { return ear.failed; }), std::vector{FaultKind::Busy});
    other.run("ROLLBACK");
    EXPECT_TRUE(thread.waitUntilStored(10s));
    EXPECT_EQ(ear.stored, numbers(1, 3));
    EXPECT_EQ(ear.relieved, 1);
}

TEST(StoreThread, PutsAnImpossibleActAsideAndGoesOn)
{
    const Scratch scratch;
    Ear ear;
    StoreThread thread(furnished(scratch / "bench.mend"), ear.news(), quick);
    Event nowhere = someEvent(2, What::Placed);
    nowhere.place = PlaceId(99);
    thread.append({someEvent(1, What::Done)});
    thread.append({nowhere});
    thread.append({someEvent(3, What::Done)});
    EXPECT_TRUE(thread.waitUntilStored(10s));
    EXPECT_EQ(ear.stored, (std::vector{EventId(1), EventId(3)}));
    EXPECT_EQ(ear.refused, std::vector{EventId(2)});
}

TEST(StoreThread, StopsWritingOnceTheFileIsMovedAndKeepsWhatWasToldF19)
{
    const Scratch scratch;
    Ear ear;
    StoreThread thread(furnished(scratch / "bench.mend"), ear.news(), quick);
    thread.append({someEvent(1, What::Done)});
    EXPECT_TRUE(thread.waitUntilStored(10s));
    std::filesystem::rename(scratch / "bench.mend", scratch / "elsewhere.mend");
    thread.append({someEvent(2, What::Done)});
    EXPECT_FALSE(thread.waitUntilStored(300ms));
    EXPECT_EQ(ear.heard([&] { return ear.failed; }), std::vector{FaultKind::NotFound});
    EXPECT_EQ(thread.unstored(), std::vector{someEvent(2, What::Done)});
    EXPECT_EQ(openOrDie(scratch / "elsewhere.mend", OpenMode::ReadOnly)->allEvents().value().size(), 1U);
    EXPECT_FALSE(std::filesystem::exists(scratch / "bench.mend"));
}

TEST(StoreThread, GoesOnWritingOnceTheFileIsPutBackF19)
{
    const Scratch scratch;
    Ear ear;
    StoreThread thread(furnished(scratch / "bench.mend"), ear.news(), quick);
    std::filesystem::rename(scratch / "bench.mend", scratch / "elsewhere.mend");
    thread.append({someEvent(1, What::Done)});
    EXPECT_FALSE(thread.waitUntilStored(300ms));
    std::filesystem::rename(scratch / "elsewhere.mend", scratch / "bench.mend");
    EXPECT_TRUE(thread.waitUntilStored(10s));
    EXPECT_EQ(ear.heard([&] { return ear.relieved; }), 1);
}

TEST(StoreThread, MovesToAnotherFileAheadOfWhatCannotBeStoredF19)
{
    const Scratch scratch;
    Ear ear;
    std::promise<Outcome> occupied;
    std::promise<Outcome> moved;
    {
        StoreThread thread(furnished(scratch / "bench.mend"), ear.news(), quick);
        thread.append({someEvent(1, What::Done)});
        EXPECT_TRUE(thread.waitUntilStored(10s));
        std::filesystem::remove(scratch / "bench.mend");
        thread.append({someEvent(2, What::Done)});
        EXPECT_FALSE(thread.waitUntilStored(300ms));
        std::ofstream(scratch / "taken.mend") << "something else";
        thread.moveTo(scratch / "taken.mend", [&](const Outcome& outcome) { occupied.set_value(outcome); });
        EXPECT_EQ(occupied.get_future().get().fault().kind, FaultKind::Conflict);
        EXPECT_FALSE(thread.waitUntilStored(100ms)) << "it stays where it was, and what was told stays queued";
        thread.moveTo(scratch / "free.mend", [&](const Outcome& outcome) { moved.set_value(outcome); });
        EXPECT_TRUE(moved.get_future().get().isOk());
        EXPECT_TRUE(thread.waitUntilStored(10s));
        thread.append({someEvent(3, What::Done)});
        EXPECT_TRUE(thread.waitUntilStored(10s));
    }
    EXPECT_EQ(openOrDie(scratch / "free.mend", OpenMode::ReadWrite)->allEvents().value().size(), 3U);
}

namespace {

/// A job that never stops working in its slice before its time is up.
class Slow : public LongJob {
public:
    explicit Slow(std::atomic<int>& slices) : m_slices(slices) {}
    bool slice(Store&, std::chrono::steady_clock::time_point until) override
    {
        std::this_thread::sleep_until(until);
        return ++m_slices >= 10;
    }

private:
    std::atomic<int>& m_slices;
};

} // namespace

TEST(StoreThread, LetsATapGoBetweenTheSlicesOfALongJob)
{
    const Scratch scratch;
    Ear ear;
    std::atomic<int> slices = 0;
    StoreThread thread(furnished(scratch / "bench.mend"), ear.news(), {20ms, 300ms, 50ms});
    thread.start(std::make_unique<Slow>(slices));
    std::this_thread::sleep_for(60ms);
    thread.append({someEvent(1, What::Done)});
    EXPECT_TRUE(thread.waitUntilStored(10s));
    EXPECT_LT(slices, 10) << "the tap waited for the whole job";
    while (slices < 10) {
        std::this_thread::sleep_for(5ms);
    }
}
