#include "app/parts/aside.h"

namespace mend::parts {

Aside::Aside(QObject* parent) : QObject(parent), m_thread([this] { loop(); }) {}

Aside::~Aside()
{
    {
        const std::lock_guard held(m_mutex);
        m_ending = true;
        m_work.clear();
    }
    m_somethingToDo.notify_all();
    m_thread.join();
}

void Aside::run(std::function<Then()> work)
{
    {
        const std::lock_guard held(m_mutex);
        m_work.push_back(std::move(work));
    }
    m_somethingToDo.notify_all();
}

void Aside::loop()
{
    std::unique_lock held(m_mutex);
    while (true) {
        m_somethingToDo.wait(held, [this] { return m_ending || !m_work.empty(); });
        if (m_ending) {
            return;
        }
        const std::function<Then()> work = std::move(m_work.front());
        m_work.pop_front();
        held.unlock();
        if (Then then = work()) {
            QMetaObject::invokeMethod(this, std::move(then), Qt::QueuedConnection);
        }
        held.lock();
    }
}

} // namespace mend::parts
