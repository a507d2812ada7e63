#include "core/store/storethread.h"

#include <sys/resource.h>
#include <unistd.h>

namespace mend::store {

namespace {

constexpr int asideNiceness = 10;

/// Faults of the act itself: trying again changes nothing.
bool isOfTheAct(const Fault& fault) { return fault.kind == FaultKind::Conflict || fault.kind == FaultKind::BadInput; }

std::vector<EventId> numbersOf(const std::vector<bench::Event>& events)
{
    std::vector<EventId> ids;
    for (const bench::Event& event : events) {
        ids.push_back(event.id);
    }
    return ids;
}

} // namespace

StoreThread::StoreThread(std::unique_ptr<Store> store, StoreNews news, Patience patience)
    : m_store(std::move(store)), m_news(std::move(news)), m_patience(patience), m_thread([this] { run(); })
{
}

StoreThread::~StoreThread()
{
    {
        const std::lock_guard held(m_mutex);
        m_ending = true;
    }
    m_somethingToDo.notify_one();
    m_thread.join();
    m_jobs.clear(); // they hold on to the file
    m_store.reset();
}

void StoreThread::append(std::vector<bench::Event> act) { queue({std::move(act), {}, {}}); }

void StoreThread::write(std::function<Outcome(Store&)> act, std::function<void(const Outcome&)> done)
{
    queue({{}, std::move(act), std::move(done)});
}

void StoreThread::read(std::function<void(Store&)> question)
{
    write([question = std::move(question)](Store& store) -> Outcome {
        question(store);
        return Done{};
    });
}

void StoreThread::start(std::unique_ptr<LongJob> job)
{
    {
        const std::lock_guard held(m_mutex);
        m_jobs.push_back(std::move(job));
    }
    m_somethingToDo.notify_one();
}

void StoreThread::moveTo(std::filesystem::path to, std::function<void(const Outcome&)> done)
{
    {
        const std::lock_guard held(m_mutex);
        m_move = Move{std::move(to), std::move(done)};
    }
    m_somethingToDo.notify_one();
}

void StoreThread::queue(Task task)
{
    {
        const std::lock_guard held(m_mutex);
        m_tasks.push_back(std::move(task));
    }
    m_somethingToDo.notify_one();
}

std::vector<bench::Event> StoreThread::unstored() const
{
    const std::lock_guard held(m_mutex);
    std::vector<bench::Event> events;
    for (const Task& task : m_tasks) {
        events.insert(events.end(), task.events.begin(), task.events.end());
    }
    return events;
}

bool StoreThread::waitUntilStored(std::chrono::milliseconds longest)
{
    std::unique_lock held(m_mutex);
    return m_allStored.wait_for(held, longest, [this] { return m_tasks.empty(); });
}

void StoreThread::run()
{
    std::unique_lock held(m_mutex);
    for (;;) {
        if (m_move) {
            moveNow(held);
        } else if (!m_tasks.empty()) {
            if (!tryFirst(held)) {
                if (m_ending) {
                    return;
                }
                m_somethingToDo.wait_for(held, m_patience.retry, [this] { return m_ending || m_move; });
            }
        } else if (m_ending) {
            return;
        } else if (!m_jobs.empty()) {
            sliceFirstJob(held);
        } else {
            m_somethingToDo.wait(held);
        }
    }
}

void StoreThread::moveNow(std::unique_lock<std::mutex>& held)
{
    const Move move = *std::exchange(m_move, std::nullopt);
    m_jobs.clear();
    held.unlock();
    Outcome outcome = m_store->saveAs(move.to);
    if (outcome) {
        auto opened = Store::open(move.to, OpenMode::ReadWrite);
        if (opened) {
            m_store = opened.takeValue();
        } else {
            outcome = opened.fault();
        }
    }
    if (move.done) {
        move.done(outcome);
    }
    held.lock();
}

/// The first task stays in the queue, and so in sight, until it is over. True when it is.
bool StoreThread::tryFirst(std::unique_lock<std::mutex>& held)
{
    const Task& task = m_tasks.front(); // stays put while others queue behind it
    held.unlock();
    const Outcome outcome = task.act ? task.act(*m_store) : m_store->append(task.events);
    const bool over = outcome.isOk() || isOfTheAct(outcome.fault());
    over ? tellRelief() : tellTrouble(outcome.fault());
    held.lock();
    if (!over) {
        return false;
    }
    const Task finished = std::move(m_tasks.front());
    m_tasks.pop_front();
    held.unlock();
    settle(finished, outcome);
    held.lock();
    if (m_tasks.empty()) {
        m_allStored.notify_all();
    }
    return true;
}

void StoreThread::settle(const Task& task, const Outcome& outcome)
{
    if (task.done) {
        task.done(outcome);
    }
    if (task.events.empty()) {
        return;
    }
    if (outcome.isOk() && m_news.stored) {
        m_news.stored(numbersOf(task.events));
    } else if (!outcome.isOk() && m_news.refused) {
        m_news.refused(task.events, outcome.fault());
    }
}

void StoreThread::tellTrouble(const Fault& fault)
{
    const auto now = Steady::now();
    if (!m_troubleSince) {
        m_troubleSince = now;
    }
    const bool patient = fault.kind == FaultKind::Busy && now - *m_troubleSince < m_patience.tellBusyAfter;
    if (!m_troubleTold && !patient) {
        m_troubleTold = true;
        if (m_news.writeFailed) {
            m_news.writeFailed(fault);
        }
    }
}

void StoreThread::tellRelief()
{
    m_troubleSince.reset();
    if (std::exchange(m_troubleTold, false) && m_news.writesAgain) {
        m_news.writesAgain();
    }
}

void StoreThread::sliceFirstJob(std::unique_lock<std::mutex>& held)
{
    LongJob& job = *m_jobs.front();
    held.unlock();
    const bool over = job.slice(*m_store, Steady::now() + m_patience.slice);
    if (over) {
        doAside(job.afterwards());
    }
    held.lock();
    if (over) {
        m_jobs.pop_front();
    }
}

void StoreThread::doAside(std::function<void()> work)
{
    std::erase_if(m_aside, [](const std::future<void>& running) {
        return running.wait_for(std::chrono::seconds(0)) == std::future_status::ready;
    });
    if (work) {
        m_aside.push_back(std::async(std::launch::async, [work = std::move(work)] {
            // Taps and sounds first; on Linux a priority belongs to a thread.
            ::setpriority(PRIO_PROCESS, static_cast<id_t>(::gettid()), asideNiceness);
            work();
        }));
    }
}

} // namespace mend::store
