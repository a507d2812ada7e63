#pragma once

#include <QObject>
#include <QSocketNotifier>

namespace mend::service {

/// Tells at once when the machine's wall clock was set, or the machine has woken, so that no window is shown by a
/// wrong clock until the next tick. Built on a timer of the kernel that is cancelled then (timerfd_create(2),
/// TFD_TIMER_CANCEL_ON_SET). Where there is none the tick still finds out, within a minute.
class ClockWatch : public QObject {
    Q_OBJECT

public:
    explicit ClockWatch(QObject* parent = nullptr);
    /// Watches that descriptor, which becomes readable when the clock was set, and closes it in the end.
    explicit ClockWatch(int descriptor, QObject* parent = nullptr);
    ~ClockWatch() override;

    bool isWatching() const { return m_descriptor >= 0; }

Q_SIGNALS:
    void clockSet();

private:
    void arm() const;
    void wasSet();

    int m_descriptor = -1;
    QSocketNotifier m_notifier;
};

} // namespace mend::service
