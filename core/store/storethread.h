#pragma once

#include "core/store/store.h"

#include <chrono>
#include <condition_variable>
#include <deque>
#include <functional>
#include <future>
#include <memory>
#include <mutex>
#include <span>
#include <thread>
#include <vector>

namespace mend::store {

/// What the store has to tell; called on its own thread, so the receiver hands it on to its own.
struct StoreNews {
    /// On the disk: the mark "not stored yet" may go.
    std::function<void(std::span<const EventId>)> stored;
    /// Writing does not work at present. Told once until it works again, at once or, where
    /// another program holds the file, after 5 s. What was told stays queued and is retried.
    std::function<void(const Fault&)> writeFailed;
    /// Writing works again.
    std::function<void()> writesAgain;
    /// These can never be stored as they are (see Store::append); the queue goes on without them.
    std::function<void(std::span<const bench::Event>, const Fault&)> refused;
};

/// How patient the store is.
struct Patience {
    std::chrono::milliseconds retry{250};
    std::chrono::milliseconds tellBusyAfter{5000};
    std::chrono::milliseconds slice{20}; ///< the longest that a long job keeps a tap waiting
};

/// Something long, a check or a copy, done in slices between the taps.
class LongJob {
public:
    virtual ~LongJob() = default;
    /// Works until about `until`; true once there is nothing left to do.
    virtual bool slice(Store& store, std::chrono::steady_clock::time_point until) = 0;
    /// What is left to do then without the store: runs on a thread of its own, with low priority.
    virtual std::function<void()> afterwards() { return {}; }
};

/// Gives the bench file a thread of its own, so that no tap ever waits for the disk. Writes are
/// done in the order in which they were told and retried until they succeed; long jobs run in
/// slices while no write waits.
class StoreThread {
public:
    StoreThread(std::unique_ptr<Store> store, StoreNews news, Patience patience = {});
    /// Tries once more what is still queued, closes the file, then lets what runs aside end.
    ~StoreThread();
    StoreThread(const StoreThread&) = delete;
    StoreThread& operator=(const StoreThread&) = delete;

    /// One act, stored whole or not at all.
    void append(std::vector<bench::Event> act);
    /// Any other write, in the same order. `done` hears how it went once it is over: Done, or
    /// the fault of a write that can never succeed.
    void write(std::function<Outcome(Store&)> act, std::function<void(const Outcome&)> done = {});
    /// Asks the file something, after the writes told before.
    void read(std::function<void(Store&)> question);
    void start(std::unique_ptr<LongJob> job);
    /// Goes on in another file: copies everything to `to`, which must be free, opens that, and writes there
    /// what is told and not stored yet. Done before all that waits, for it may wait for just this. Long jobs
    /// end with the old file. On a fault everything stays as it was.
    void moveTo(std::filesystem::path to, std::function<void(const Outcome&)> done = {});

    /// Events told but not on the disk yet, in order.
    std::vector<bench::Event> unstored() const;
    /// Waits until nothing is queued any more, at most so long; false where something still is.
    bool waitUntilStored(std::chrono::milliseconds longest);

private:
    using Steady = std::chrono::steady_clock;
    struct Task {
        std::vector<bench::Event> events;
        std::function<Outcome(Store&)> act;
        std::function<void(const Outcome&)> done;
    };
    struct Move {
        std::filesystem::path to;
        std::function<void(const Outcome&)> done;
    };

    void run();
    void queue(Task task);
    bool tryFirst(std::unique_lock<std::mutex>& held);
    void settle(const Task& task, const Outcome& outcome);
    void tellTrouble(const Fault& fault);
    void tellRelief();
    void sliceFirstJob(std::unique_lock<std::mutex>& held);
    void moveNow(std::unique_lock<std::mutex>& held);
    void doAside(std::function<void()> work);

    std::unique_ptr<Store> m_store; ///< of the store's own thread only
    const StoreNews m_news;
    const Patience m_patience;
    mutable std::mutex m_mutex;
    std::condition_variable m_somethingToDo;
    std::condition_variable m_allStored;
    std::deque<Task> m_tasks;
    std::deque<std::unique_ptr<LongJob>> m_jobs;
    std::optional<Move> m_move;
    bool m_ending = false;
    // Of the store's own thread only.
    std::optional<Steady::time_point> m_troubleSince;
    bool m_troubleTold = false;
    std::vector<std::future<void>> m_aside; ///< what long jobs do afterwards
    std::thread m_thread;                   // last: everything above stands before it runs
};

} // namespace mend::store
