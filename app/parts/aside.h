#pragma once

#include <QObject>

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>

namespace mend::parts {

/// Does what takes long (decoding photos, writing papers) one after the other on a thread of its own, so that the
/// Bench answers a tap meanwhile.
class Aside : public QObject {
    Q_OBJECT

public:
    explicit Aside(QObject* parent = nullptr);
    /// What is not begun yet is left; what runs is waited for.
    ~Aside() override;

    using Then = std::function<void()>;
    /// `work` runs on the other thread; what it gives back runs on this object's, if that is still there then.
    void run(std::function<Then()> work);

private:
    void loop();

    std::mutex m_mutex;
    std::condition_variable m_somethingToDo;
    std::deque<std::function<Then()>> m_work;
    bool m_ending = false;
    std::thread m_thread; // last: everything above stands before it runs
};

} // namespace mend::parts
